import { z } from "zod";
import type { ClassMember } from "@/lib/classes";
import { SECTIONS, type Section } from "@/lib/results";
import { courseRule, newSitting, nextFor, type Paper } from "@/lib/sittings";
import { listMembers } from "@/prisma/stores/classes";
import { readPaper, takePaperVersion } from "@/prisma/stores/papers";
import { createSitting } from "@/prisma/stores/sitting-changes";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { problemsByField } from "../input-problem";
import { outlookOfPiece } from "../outlook-of-piece";
import { requireClassInUse } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { auditEntry } from "../sittings/audit-entry";
import { coursesOfClass } from "../sittings/courses-of-class";
import { type Expected, orderPiece, runOn } from "../sittings/new-run";

const PLANNED_AT = "plannedAt: a day and a time with its zone, for example 2026-03-02T09:00:00Z";

const inputSchema = z.strictObject({
  classId: z.string({ error: "classId: the id of a class" }),
  paperId: z.string({ error: "paperId: the id of a paper" }),
  plannedAt: z.iso.datetime({ offset: true, error: PLANNED_AT }),
  /** "class": whoever is in the class, and every section; "due": what each of them still has to sit of the paper. */
  who: z.enum(["class", "due"], { error: "who: class, or due" }),
  /** Only these of them. */
  learnerIds: z.array(z.string(), { error: "learnerIds: a list of ids" }).min(1, "learnerIds: at least one").optional(),
  /** Only these sections of the paper. */
  sections: z
    .array(z.enum(SECTIONS), { error: `sections: a list of ${SECTIONS.join(", ")}` })
    .min(1, "sections: at least one")
    .optional(),
});

/**
 * A tutor sets the paper, as it stands now, for a class at a time. A piece is ordered for everybody expected and every
 * section, or one for all where the paper says so; answered with the sitting's id.
 */
export async function planSitting(caller: Caller, input: unknown, specimens: SpecimenSource) {
  const parsed = inputSchema.safeParse(input);
  // who may not plan for the class learns nothing of what else was wrong
  const own = await requireClassInUse(caller, parsed.data?.classId ?? classIdOf(input));
  if (!own.ok) return own;
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { classId, paperId, plannedAt, who, learnerIds, sections } = parsed.data;
  const now = caller.clock();
  const kept = await readPaper(paperId);
  if (!kept || kept.archivedAt) return refuse("no-such-paper");

  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const unknown = learnerIds?.find((id) => !members.some(({ person }) => person.id === id));
  if (unknown !== undefined) {
    return refuse("invalid-input", { fields: { learnerIds: `learnerIds: members of the class; ${unknown} is none` } });
  }
  const chosen = members.filter(({ person }) => learnerIds?.includes(person.id) ?? true);
  const due = who === "due" ? await sectionsDue(classId, paperId, kept.current.paper) : null;
  const isAsked = ({ section }: Expected) => sections?.includes(section) ?? true;
  const asked = (paper: Paper) => expectedOf(chosen, paper, due).filter(isAsked);
  if (asked(kept.current.paper).length === 0) return refuse("nobody-expected");

  const unmakable = await whyUnmakable(kept.current.paper, asked(kept.current.paper), specimens);
  if (unmakable) return refuse("invalid-input", { fields: { paperId: unmakable } });

  const version = await takePaperVersion(paperId, now);
  if (!version) return refuse("no-such-paper");
  const { paper } = version;
  // looking ahead takes seconds, in which it may have been saved once more
  const late = await whyUnmakable(paper, asked(paper), specimens);
  if (late) return refuse("invalid-input", { fields: { paperId: late } });
  const shared = new Map<Section, string>();
  const runs = [];
  for (const one of asked(paper)) {
    const specimenId = shared.get(one.section) ?? (await orderPiece(paper, one.section, specimens, false));
    if (paper.forms === "same") shared.set(one.section, specimenId);
    runs.push(runOn(one, version, specimenId, now));
  }
  const sitting = newSitting({ id: randomId(), paper, plannedAt: new Date(plannedAt) });
  const subject = { kind: "sitting", id: sitting.id } as const;
  await createSitting({
    sitting,
    groupId: classId,
    paperVersionId: version.id,
    isForWholeClass: who === "class" && learnerIds === undefined && sections === undefined,
    createdAt: now,
    runs,
    audit: auditEntry(own.actor, now, "plan", subject, { plannedAt, sections: runs.length }),
  });
  return { ok: true, id: sitting.id } as const;
}

/** Why a piece of the paper that asks for types would never be made, which would show only when a learner waits for it; null where all can be. */
async function whyUnmakable(
  paper: Paper,
  expected: readonly Expected[],
  specimens: SpecimenSource,
): Promise<string | null> {
  for (const { section, piece } of paper.sections.filter((one) =>
    expected.some((run) => run.section === one.section),
  )) {
    if (!piece.types) continue;
    const { refusal } = await outlookOfPiece({ section, piece }, specimens);
    if (refusal) {
      return `paperId: a paper whose pieces can be made. The ${section} of ${paper.name} cannot: ${refusal}. Change in the paper what it must have, or what it is made to.`;
    }
  }
  return null;
}

function classIdOf(input: unknown): string {
  const { classId } = (typeof input === "object" && input !== null ? input : {}) as { classId?: unknown };
  return typeof classId === "string" ? classId : "";
}

/** By learner, what they have to sit next; a parallel piece is given by its own sitting. */
async function sectionsDue(
  classId: string,
  paperId: string,
  paper: Paper,
): Promise<ReadonlyMap<string, readonly Section[]>> {
  const courses = await coursesOfClass(classId, paperId, courseRule(paper));
  return new Map(
    [...courses].map(([userId, course]) => [
      userId,
      nextFor(course).due.flatMap(({ section, why }) => (why === "parallel-piece" ? [] : [section])),
    ]),
  );
}

/** Everybody with every section that they are to sit, with their extra time. */
function expectedOf(
  members: readonly ClassMember[],
  { sections }: Paper,
  due: ReadonlyMap<string, readonly Section[]> | null,
): readonly Expected[] {
  return members.flatMap(({ person, timeFactor }) =>
    sections
      .filter(({ section }) => due === null || (due.get(person.id)?.includes(section) ?? true))
      .map(({ section }) => ({ userId: person.id, section, factor: timeFactor, isBorderline: false })),
  );
}
