import type { LearnerTally, PooledQuestion } from "@/lib/progress";
import type { Section } from "@/lib/results";
import type { RunState } from "@/lib/sittings";
import type { Person } from "@/lib/workshop";
import { database } from "../client";
import { erasedColumn, readErased } from "../erased-column";
import type { Prisma } from "../generated/client/client";
import type { SectionRunModel, SittingModel } from "../generated/client/models";
import { addToPool, readPool, readPooledQuestions } from "../pool";
import { runCourseColumn } from "../run-columns";
import { readTallies } from "../tallies";
import { forgetNames } from "../without-person";
import { type AuditEntry, auditRow } from "./audit";
import { FILE, isSittingOn } from "./file-care";
import { freeForAnybody } from "./next-pieces";

type Transaction = Prisma.TransactionClient;

/** How much is kept of a learner. */
export interface KeptOfLearner {
  readonly classes: number;
  /** Classes of other tutors among those. */
  readonly otherClasses: number;
  /** For practice. */
  readonly handedIn: number;
  readonly open: number;
  /** Sections of sittings: all that they have, those being sat just now, and those whose marks are not released. */
  readonly sections: number;
  readonly beingSat: number;
  readonly unreleased: number;
  /** With gauges and for the eye. */
  readonly drillRounds: number;
  readonly devices: number;
  /** What tutors said to their marks. */
  readonly acts: number;
  /** Statements that wait for the record store. */
  readonly statements: number;
}

const BEING_SAT = { state: { in: ["running", "paused"] } } satisfies Prisma.SectionRunWhereInput;

/** Marked and not told to the learner: the tutors of the sitting are still at them. */
const UNRELEASED = {
  state: { in: ["handedIn", "expired"] },
  sitting: { state: { notIn: ["released", "void"] } },
} satisfies Prisma.SectionRunWhereInput;

/** That of a learner, as one of their tutors is told. */
export async function countKept(userId: string, tutorId: string): Promise<KeptOfLearner> {
  const db = database();
  const forPractice = { userId, run: { is: null } };
  const [
    classes,
    otherClasses,
    handedIn,
    open,
    sections,
    beingSat,
    unreleased,
    gaugeRounds,
    eyeRounds,
    devices,
    acts,
    statements,
  ] = await Promise.all([
    db.classMember.count({ where: { userId } }),
    db.classMember.count({ where: { userId, group: { tutors: { none: { userId: tutorId } } } } }),
    db.practice.count({ where: { ...forPractice, state: "handedIn" } }),
    db.practice.count({ where: { ...forPractice, state: "open" } }),
    db.sectionRun.count({ where: { userId } }),
    db.sectionRun.count({ where: { userId, ...BEING_SAT } }),
    db.sectionRun.count({ where: { userId, ...UNRELEASED } }),
    db.drillRound.count({ where: { userId } }),
    db.eyeRound.count({ where: { userId } }),
    db.session.count({ where: { userId } }),
    db.reviewAct.count({ where: { attempt: { practice: { userId } } } }),
    db.xapiStatement.count({ where: { userId } }),
  ]);
  const drillRounds = gaugeRounds + eyeRounds;
  return {
    classes,
    otherClasses,
    handedIn,
    open,
    sections,
    beingSat,
    unreleased,
    drillRounds,
    devices,
    acts,
    statements,
  };
}

export interface Erasure {
  readonly person: Pick<Person, "id" | "name" | "signInName">;
  /** How the questions of sections that count were answered. */
  readonly questions: ReadonlyMap<string, PooledQuestion>;
  /** That somebody was erased; it does not say who. */
  readonly audit: AuditEntry;
}

/** Why nobody was erased. */
export type NotErased = "being-sat" | "sitting-on" | "marks-unreleased" | "gone";

/** Rolls the transaction back. */
class Refused extends Error {
  constructor(readonly why: NotErased) {
    super(why);
  }
}

/** A record of years has thousands of rows, and what is freed is written over with zeros, ms. */
const PATIENCE = { maxWait: 15_000, timeout: 120_000 };

/**
 * Erases a learner and everything that says who they were, all or nothing. What they did is added to the pool; sittings keep
 * that somebody was there. Nothing while a section of theirs is being sat or its marks are not released, nor while any sitting is
 * on: it takes a second or so, in which the process does nothing else.
 */
export async function eraseLearner({ person, questions, audit }: Erasure): Promise<"erased" | NotErased> {
  const { id: userId, name, signInName } = person;
  try {
    await database().$transaction(async (transaction) => {
      // holds for this connection: what is freed is zeroed at once, and the file is written anew later
      await transaction.$queryRawUnsafe("PRAGMA secure_delete = ON");
      if ((await transaction.user.count({ where: { id: userId, role: "learner" } })) === 0) throw new Refused("gone");
      const runs = await transaction.sectionRun.findMany({ where: { userId }, include: { sitting: true } });
      if (runs.some(({ state }) => state === "running" || state === "paused")) throw new Refused("being-sat");
      if (await isSittingOn(transaction)) throw new Refused("sitting-on");
      const unreleased = await transaction.sectionRun.count({ where: { userId, ...UNRELEASED } });
      if (unreleased > 0) throw new Refused("marks-unreleased");
      const tallies = await readTallies(transaction, [userId]);
      const tally = tallies.get(userId);
      if (tally) await addToPool(transaction, tally, questions);
      await keepInSittings(transaction, runs);
      await forgetInLogs(transaction, userId, runs);
      await forgetNames(transaction, [userId, name, signInName]);
      const pieces = await transaction.practice.findMany({ where: { userId }, select: { specimenId: true } });
      const waiting = await transaction.nextPiece.findMany({
        where: { userId, waits: true },
        select: { specimenId: true },
      });
      await transaction.user.delete({ where: { id: userId } });
      await transaction.specimen.deleteMany({
        where: { id: { in: pieces.map(({ specimenId }) => specimenId) }, practices: { none: {} } },
      });
      // what was made ahead for them was never shown to anybody
      for (const { specimenId } of waiting) await freeForAnybody(transaction, specimenId);
      await transaction.auditEntry.create({ data: auditRow(audit) });
      const dirty = { dirtySince: audit.at };
      await transaction.fileCare.upsert({ where: { id: FILE }, create: { id: FILE, ...dirty }, update: dirty });
    }, PATIENCE);
    return "erased";
  } catch (error) {
    if (error instanceof Refused) return error.why;
    throw error;
  }
}

type RunRow = SectionRunModel & { readonly sitting: SittingModel };

/** A sitting that has begun keeps that there was one more learner, and how their sections ended. */
async function keepInSittings(transaction: Transaction, runs: readonly RunRow[]): Promise<void> {
  const sittings = new Map(runs.map(({ sitting }) => [sitting.id, sitting]));
  for (const { id, state, erased, revision } of sittings.values()) {
    const hasBegun = state !== "planned" && state !== "open";
    const sections = runs
      .filter(({ sittingId }) => sittingId === id)
      .map(({ section, isBorderline, state: ended, course }) => ({
        section: section as Section,
        isBorderline,
        state: (ended === "handedIn" ? "handed-in" : ended) as RunState,
        isClosed: runCourseColumn.read(course).closedAt !== null,
      }));
    const kept = readErased(erased);
    await transaction.sitting.update({
      where: { id },
      // whoever read the sitting before takes their step again
      data: {
        revision: revision + 1,
        ...(hasBegun && { erased: erasedColumn.write([...kept, { sections }]) }),
      },
    });
  }
}

/** What was done to them stays in the log of the sitting, as done to somebody. */
async function forgetInLogs(transaction: Transaction, userId: string, runs: readonly RunRow[]): Promise<void> {
  const nobody = { reason: null, details: { erased: "yes" } };
  for (const { id, sittingId } of runs) {
    await transaction.auditEntry.updateMany({
      where: { subjectKind: "run", subjectId: id },
      data: { subjectKind: "sitting", subjectId: sittingId, ...nobody },
    });
  }
  await transaction.auditEntry.updateMany({
    where: { subjectKind: "sitting", details: { path: "$.learnerId", equals: userId } },
    data: nobody,
  });
  await transaction.auditEntry.updateMany({
    where: { subjectKind: "person", subjectId: userId },
    data: { subjectId: "erased", ...nobody },
  });
}

/** A learner who has asked to be erased. */
export interface ErasureRequest {
  readonly learner: Pick<Person, "id" | "name" | "signInName">;
  readonly askedAt: Date;
}

/** Keeps that a learner asked; asking again changes nothing. */
export async function requestErasure(userId: string, askedAt: Date): Promise<void> {
  await database().erasureRequest.upsert({ where: { userId }, create: { userId, askedAt }, update: {} });
}

export async function withdrawErasure(userId: string): Promise<void> {
  await database().erasureRequest.deleteMany({ where: { userId } });
}

/** When a learner asked to be erased; null where they did not. */
export async function readErasureRequest(userId: string): Promise<Date | null> {
  const row = await database().erasureRequest.findUnique({ where: { userId } });
  return row?.askedAt ?? null;
}

/** Who of these learners asked to be erased, the earliest first. */
export async function listErasureRequests(userIds: readonly string[]): Promise<readonly ErasureRequest[]> {
  const rows = await database().erasureRequest.findMany({
    where: { userId: { in: [...userIds] } },
    orderBy: [{ askedAt: "asc" }, { userId: "asc" }],
    include: { user: { select: { name: true, username: true } } },
  });
  return rows.map(({ userId, askedAt, user }) => ({
    askedAt,
    learner: { id: userId, name: user.name, signInName: user.username },
  }));
}

/** When somebody was erased, and by whom. */
export async function listErasures(
  atMost: number,
): Promise<readonly { readonly at: Date; readonly actorId: string }[]> {
  return database().auditEntry.findMany({
    where: { act: "erase-learner", subjectKind: "person" },
    orderBy: { id: "desc" },
    take: atMost,
    select: { at: true, actorId: true },
  });
}

/** What everybody who was erased did, added up. */
export const readErasedTally = (): Promise<LearnerTally> => readPool(database());

/** How these questions, or all, were answered by those who were erased, by the id that `itemsOf` knows them by. */
export const readPooledAnswers = (ids?: readonly string[]): Promise<ReadonlyMap<string, PooledQuestion>> =>
  readPooledQuestions(database(), ids);

/** Of how many questions answers of erased learners are kept. */
export const countPooledQuestions = (): Promise<number> => database().pooledQuestion.count();

export async function countErasures(): Promise<number> {
  return database().auditEntry.count({ where: { act: "erase-learner", subjectKind: "person" } });
}
