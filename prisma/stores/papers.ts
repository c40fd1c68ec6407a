import { isDeepStrictEqual } from "node:util";
import type { Criteria } from "@/lib/criteria";
import type { Section } from "@/lib/results";
import type { KeptPaper, Paper, PaperVersion } from "@/lib/sittings";
import { database } from "../client";
import { paperColumn, paperCriteriaColumn } from "../columns";
import type { PaperModel, PaperVersionModel } from "../generated/client/models";

/** The criteria of every section of a paper, whole. */
type PaperCriteria = Readonly<Partial<Record<Section, Criteria>>>;

/** What a version says. */
interface Content {
  readonly paper: Paper;
  readonly criteria: PaperCriteria;
}

const columnsOf = ({ paper, criteria }: Content) => ({
  content: paperColumn.write(paper),
  criteria: paperCriteriaColumn.write(criteria),
});

const withCurrent = {
  owner: { select: { name: true } },
  versions: { orderBy: { number: "desc" }, take: 1 },
} as const;

export interface PaperToCreate extends Content {
  readonly id: string;
  readonly versionId: string;
  readonly ownerId: string;
  readonly createdAt: Date;
}

/** Stores a new paper with its version 1. */
export async function createPaper({ id, versionId, ownerId, createdAt, ...content }: PaperToCreate): Promise<void> {
  await database().paper.create({
    data: {
      id,
      ownerId,
      createdAt,
      updatedAt: createdAt,
      versions: { create: { id: versionId, number: 1, savedAt: createdAt, ...columnsOf(content) } },
    },
  });
}

export async function readPaper(id: string): Promise<KeptPaper | null> {
  const row = await database().paper.findUnique({ where: { id }, include: withCurrent });
  return row && keptPaperOf(row);
}

/** Every paper of the workshop, the one last saved first; also those that are put away. */
export async function listPapers(): Promise<readonly KeptPaper[]> {
  const rows = await database().paper.findMany({
    orderBy: [{ updatedAt: "desc" }, { id: "asc" }],
    include: withCurrent,
  });
  return rows.map(keptPaperOf);
}

export interface PaperEdit extends Content {
  readonly id: string;
  /** When the paper was saved that the edit started from. */
  readonly seen: Date;
  /** Later than that. */
  readonly updatedAt: Date;
  /** For the new version, should the present one be in use. */
  readonly versionId: string;
}

/**
 * Stores what a paper says, unless another save came in between: then false. A version that no sitting has taken is written
 * over; one that is in use stays as it is, and a new one with the next number becomes the present one. A save that changes
 * nothing makes no version.
 */
export async function updatePaper({ id, seen, updatedAt, versionId, ...content }: PaperEdit): Promise<boolean> {
  return database().$transaction(async (transaction) => {
    const { count } = await transaction.paper.updateMany({ where: { id, updatedAt: seen }, data: { updatedAt } });
    if (count === 0) return false;
    const present = await transaction.paperVersion.findFirstOrThrow({
      where: { paperId: id },
      orderBy: { number: "desc" },
    });
    if (isDeepStrictEqual(contentOf(present), content)) return true;
    // the condition again: a sitting may have taken the version meanwhile
    const overwritten = await transaction.paperVersion.updateMany({
      where: { id: present.id, usedAt: null },
      data: { savedAt: updatedAt, ...columnsOf(content) },
    });
    if (overwritten.count === 1) return true;
    await transaction.paperVersion.create({
      data: {
        id: versionId,
        paperId: id,
        number: present.number + 1,
        savedAt: updatedAt,
        ...columnsOf(content),
      },
    });
    return true;
  });
}

/** Puts a paper away, or takes it back with null; false where there is none. Its versions and what uses them are left alone. */
export async function archivePaper(id: string, archivedAt: Date | null): Promise<boolean> {
  const { count } = await database().paper.updateMany({ where: { id }, data: { archivedAt } });
  return count === 1;
}

/** A version with everything that a sitting needs of it. */
export interface WholePaperVersion extends PaperVersion {
  readonly paperId: string;
  readonly criteria: PaperCriteria;
}

/**
 * Takes the present version of a paper for a sitting: from then on that version is never changed. Null where there is no such
 * paper.
 */
export async function takePaperVersion(paperId: string, at: Date): Promise<WholePaperVersion | null> {
  return database().$transaction(async (transaction) => {
    const present = await transaction.paperVersion.findFirst({ where: { paperId }, orderBy: { number: "desc" } });
    if (!present) return null;
    await transaction.paperVersion.updateMany({ where: { id: present.id, usedAt: null }, data: { usedAt: at } });
    const row = await transaction.paperVersion.findUniqueOrThrow({ where: { id: present.id } });
    return wholeVersionOf(row);
  });
}

/** A version by its own id, whatever came after it. */
export async function readPaperVersion(id: string): Promise<WholePaperVersion | null> {
  const row = await database().paperVersion.findUnique({ where: { id } });
  return row && wholeVersionOf(row);
}

function contentOf({ content, criteria }: PaperVersionModel): Content {
  return { paper: paperColumn.read(content), criteria: paperCriteriaColumn.read(criteria) };
}

type PaperRow = PaperModel & {
  readonly owner: { readonly name: string } | null;
  readonly versions: readonly PaperVersionModel[];
};

function keptPaperOf({ id, owner, versions, createdAt, updatedAt, archivedAt }: PaperRow): KeptPaper {
  return { id, current: versionOf(versions[0]), madeBy: owner?.name ?? null, createdAt, updatedAt, archivedAt };
}

function versionOf({ id, number, content, savedAt, usedAt }: PaperVersionModel): PaperVersion {
  return { id, number, paper: paperColumn.read(content), savedAt, usedAt };
}

function wholeVersionOf(row: PaperVersionModel): WholePaperVersion {
  return { ...versionOf(row), paperId: row.paperId, ...contentOf(row) };
}
