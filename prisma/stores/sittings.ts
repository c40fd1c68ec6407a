import type { Book, SectionMark } from "@/lib/practice";
import { EMPTY_REPORT } from "@/lib/report";
import type { Section } from "@/lib/results";
import type { RunState, SectionRun, Sitting } from "@/lib/sittings";
import { database } from "../client";
import { paperColumn, reportColumn } from "../columns";
import { type ErasedLearner, readErased } from "../erased-column";
import type { Prisma } from "../generated/client/client";
import type { SectionRunModel } from "../generated/client/models";
import { runCourseColumn, sittingCourseColumn } from "../run-columns";
import { readHeldSitting } from "./demo-history";
import { marksOf } from "./practices";
import type { SpecimenProgress } from "./specimens";

/** A run as it is stored, with what its practice says of piece and marks. */
export interface StoredRun {
  readonly run: SectionRun;
  readonly learnerName: string;
  readonly revision: number;
  readonly practiceId: string;
  readonly book: Book;
  readonly specimenId: string;
  readonly specimen: SpecimenProgress;
  /** Whether its marks are stored. */
  readonly isMarked: boolean;
  /** One, once it is marked. */
  readonly marks: readonly SectionMark[];
}

export interface StoredSitting {
  readonly sitting: Sitting;
  readonly revision: number;
  readonly groupId: string;
  readonly groupName: string;
  readonly paperId: string;
  readonly paperVersionId: string;
  readonly isForWholeClass: boolean;
  /** Learners who were erased since it began. */
  readonly erased: readonly ErasedLearner[];
  readonly runs: readonly StoredRun[];
}

const withAll = {
  group: { select: { name: true } },
  paperVersion: { select: { paperId: true, content: true } },
  runs: {
    orderBy: [{ user: { name: "asc" as const } }, { userId: "asc" as const }, { id: "asc" as const }],
    include: {
      user: { select: { name: true } },
      practice: {
        select: {
          id: true,
          state: true,
          book: true,
          sequence: true,
          windowId: true,
          savedAt: true,
          reportClosedAt: true,
          specimenId: true,
          specimen: { select: { state: true, stage: true } },
          attempts: { omit: { result: true } },
        },
      },
    },
  },
} satisfies Prisma.SittingInclude;
type SittingRow = Prisma.SittingGetPayload<{ include: typeof withAll }>;

/** A sitting with all its runs. Their reports are left empty, but for the run that is asked for. */
export async function readSitting(id: string, withReportOf?: string): Promise<StoredSitting | null> {
  const row = await database().sitting.findUnique({ where: { id }, include: withAll });
  if (!row) return null;
  const stored = storedOf(row);
  const asked = stored.runs.find(({ run }) => run.id === withReportOf);
  if (!asked) return stored;
  const { report, ...saved } = await database().practice.findUniqueOrThrow({
    where: { id: asked.practiceId },
    select: { report: true, sequence: true, windowId: true, savedAt: true, reportClosedAt: true },
  });
  // the rest of the run is guarded by its revision, which every save raises
  const run: SectionRun = { ...asked.run, report: reportColumn.read(report), ...saved };
  return { ...stored, runs: stored.runs.map((one) => (one === asked ? { ...one, run } : one)) };
}

/** Sittings of a class, of one paper if one is given: the latest planned first. */
export async function listSittingsOf(groupId: string, paperId?: string): Promise<readonly StoredSitting[]> {
  const rows = await database().sitting.findMany({
    where: { groupId, ...(paperId && { paperVersion: { paperId } }) },
    orderBy: [{ plannedAt: "desc" }, { id: "asc" }],
    include: withAll,
  });
  return rows.map(storedOf);
}

/**
 * What changes whenever something changes that a course of a paper in a class is worked out from: revisions and marks. Far
 * cheaper to read than the sittings.
 */
export async function readCourseTrace(groupId: string, paperId: string): Promise<string> {
  const rows = await database().sitting.findMany({
    where: { groupId, paperVersion: { paperId } },
    orderBy: { id: "asc" },
    select: {
      id: true,
      revision: true,
      runs: {
        orderBy: { id: "asc" },
        select: {
          id: true,
          revision: true,
          practice: {
            select: { state: true, attempts: { orderBy: { id: "asc" }, omit: { result: true } } },
          },
        },
      },
    },
  });
  return JSON.stringify(rows);
}

/** The classes in whose sittings a learner has a section. */
export async function listClassesSatIn(userId: string): Promise<readonly string[]> {
  const rows = await database().sitting.findMany({
    where: { runs: { some: { userId } } },
    distinct: "groupId",
    select: { groupId: true },
  });
  return rows.map(({ groupId }) => groupId);
}

/** Sittings that a learner has a section in, or may come to with their class: the latest planned first. */
export async function listSittingsFor(userId: string): Promise<readonly StoredSitting[]> {
  const isMember = { members: { some: { userId, leftAt: null } } };
  const rows = await database().sitting.findMany({
    where: {
      OR: [
        { runs: { some: { userId } } },
        { isForWholeClass: true, state: { in: ["planned", "open", "running", "paused"] }, group: isMember },
      ],
    },
    orderBy: [{ plannedAt: "desc" }, { id: "asc" }],
    include: withAll,
  });
  return rows.map(storedOf);
}

/**
 * Sittings that the clock can change, and those with sections that are closed and not marked; not the one that the demo's past
 * is being written in, whose clock is another.
 */
export async function listSittingsToSweep(): Promise<readonly string[]> {
  const rows = await database().sitting.findMany({
    where: {
      OR: [
        { state: { in: ["running", "paused"] } },
        { runs: { some: { state: { in: ["handedIn", "expired"] }, practice: { state: "open" } } } },
      ],
    },
    select: { id: true },
  });
  // only now: it is held before it begins
  const held = await readHeldSitting();
  return rows.flatMap(({ id }) => (id === held ? [] : [id]));
}

/** The class of a sitting. */
export async function readGroupOfSitting(id: string): Promise<string | null> {
  const row = await database().sitting.findUnique({ where: { id }, select: { groupId: true } });
  return row?.groupId ?? null;
}

/** An open sitting that begins within so long keeps the machine for those in it. */
const SOON_MS = 2 * 3_600_000;

/** Whether somebody has sections to sit or under way in a sitting that goes on or soon begins. */
export async function isInSitting(userId: string, now: Date): Promise<boolean> {
  const soon = new Date(now.getTime() + SOON_MS);
  const run = await database().sectionRun.findFirst({
    where: {
      userId,
      state: { in: ["waiting", "running", "paused"] },
      sitting: { OR: [{ state: { in: ["running", "paused"] } }, { state: "open", plannedAt: { lte: soon } }] },
    },
    select: { id: true },
  });
  return run !== null;
}

function storedOf(row: SittingRow): StoredSitting {
  return {
    sitting: {
      id: row.id,
      paper: paperColumn.read(row.paperVersion.content),
      state: row.state,
      plannedAt: row.plannedAt,
      ...sittingCourseColumn.read(row.course),
    },
    revision: row.revision,
    groupId: row.groupId,
    groupName: row.group.name,
    paperId: row.paperVersion.paperId,
    paperVersionId: row.paperVersionId,
    isForWholeClass: row.isForWholeClass,
    erased: readErased(row.erased),
    runs: row.runs.map(storedRunOf),
  };
}

function storedRunOf(row: SittingRow["runs"][number]): StoredRun {
  const { practice } = row;
  const { sequence, windowId, savedAt, reportClosedAt } = practice;
  return {
    run: {
      id: row.id,
      userId: row.userId,
      section: row.section as Section,
      isBorderline: row.isBorderline,
      state: STATE_OF[row.state],
      ...runCourseColumn.read(row.course),
      liveWindowId: row.liveWindowId,
      report: EMPTY_REPORT,
      sequence,
      windowId,
      savedAt,
      reportClosedAt,
    },
    learnerName: row.user.name,
    revision: row.revision,
    practiceId: practice.id,
    book: practice.book,
    specimenId: practice.specimenId,
    specimen: practice.specimen,
    isMarked: practice.state === "handedIn",
    marks: marksOf(practice.attempts),
  };
}

const STATE_OF: Readonly<Record<SectionRunModel["state"], RunState>> = {
  waiting: "waiting",
  running: "running",
  paused: "paused",
  handedIn: "handed-in",
  expired: "expired",
  void: "void",
};
