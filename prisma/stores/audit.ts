import { database } from "../client";
import type { Prisma } from "../generated/client/client";

/** Something a tutor, or the operator of the workshop's machine, did: to what, when, and why where a reason was asked for. */
export interface AuditEntry {
  readonly at: Date;
  readonly actorId: string;
  /** Like "add-time". */
  readonly act: string;
  readonly subject: { readonly kind: "sitting" | "run" | "person"; readonly id: string };
  readonly reason: string | null;
  /** What was given with it, such as minutes. */
  readonly details: Readonly<Record<string, string | number>>;
}

/** What was done to a sitting or a section in it. */
export interface SittingEntry extends AuditEntry {
  readonly subject: { readonly kind: "sitting" | "run"; readonly id: string };
}

/** The row of an entry, to be written in the transaction of what it tells of. */
export const auditRow = ({ subject, details, ...entry }: AuditEntry): Prisma.AuditEntryCreateManyInput => ({
  ...entry,
  subjectKind: subject.kind,
  subjectId: subject.id,
  details: { ...details },
});

/** What was done to a sitting and its runs, in the order in which it was done. */
export async function listAudit(subjectIds: readonly string[]): Promise<readonly SittingEntry[]> {
  const rows = await database().auditEntry.findMany({
    where: { subjectKind: { in: ["sitting", "run"] }, subjectId: { in: [...subjectIds] } },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id: _, subjectKind, subjectId, details, ...entry }) => ({
    ...entry,
    subject: { kind: subjectKind === "run" ? "run" : "sitting", id: subjectId },
    details: (details ?? {}) as AuditEntry["details"],
  }));
}

/** What was done that is about one person: to them, to sections of theirs, or to them by name in one of these sittings. */
export async function listAuditOf(
  personId: string,
  sittingIds: readonly string[],
  runIds: readonly string[],
): Promise<readonly AuditEntry[]> {
  const rows = await database().auditEntry.findMany({
    where: {
      OR: [
        { subjectKind: "person", subjectId: personId },
        { subjectKind: "run", subjectId: { in: [...runIds] } },
        {
          subjectKind: "sitting",
          subjectId: { in: [...sittingIds] },
          details: { path: "$.learnerId", equals: personId },
        },
      ],
    },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id: _, subjectKind, subjectId, details, ...entry }) => ({
    ...entry,
    subject: { kind: subjectKind as AuditEntry["subject"]["kind"], id: subjectId },
    details: (details ?? {}) as AuditEntry["details"],
  }));
}
