import { isImperfectionType } from "@/lib/imperfections";
import {
  addSections,
  EMPTY_LEARNER_TALLY,
  type LearnerInOrder,
  type LearnerTally,
  NEW_IN_ORDER,
  overviewOf,
  PROGRESS_VERSION,
  type SectionObservations,
  takenIn,
} from "@/lib/progress";
import { Prisma } from "./generated/client/client";
import type { SectionTallyModel, TypeTallyModel } from "./generated/client/models";
import { learnerColumn, overviewColumn, sectionTallyColumn, typeTallyColumn } from "./progress-columns";

type Transaction = Prisma.TransactionClient;

/** A marked section that counts for its learner's progress from now on. */
export interface CountedSection {
  readonly attemptId: string;
  readonly userId: string;
  readonly handedInAt: Date;
  /** Null where they could not be made out: then everything of the learner is built anew. */
  readonly observations: SectionObservations | null;
}

/**
 * Adds sections to the tallies of their learners and takes them into the learner model, in the transaction that makes them count.
 * What has to be built anew anyway is left to that, which reads these sections too; so is the model of a learner where a section
 * comes to count after one that was handed in later.
 */
export async function countSections(transaction: Transaction, sections: readonly CountedSection[]): Promise<void> {
  const current: string[] = [];
  const byLearner = byUser(sections);
  for (const userId of [...byLearner.keys()].sort()) {
    const own = byLearner.get(userId) ?? [];
    if (await isToBeAddedTo(transaction, userId, own)) current.push(userId);
  }
  const tallies = await readTallies(transaction, current);
  const added = current.map((userId) => {
    const observed = (byLearner.get(userId) ?? []).flatMap(({ observations }) => observations ?? []);
    return [userId, addSections(tallies.get(userId) ?? EMPTY_LEARNER_TALLY, observed)] as const;
  });
  await writeTallies(transaction, added);
  for (const userId of current) await takeIn(transaction, userId, byLearner.get(userId) ?? []);
}

async function takeIn(transaction: Transaction, userId: string, sections: readonly CountedSection[]): Promise<void> {
  const { learner } = await transaction.learnerProgress.findUniqueOrThrow({ where: { userId } });
  const placed = sections.flatMap(({ attemptId: id, handedInAt, observations }) =>
    observations ? [{ id, at: handedInAt.getTime(), observations }] : [],
  );
  await writeLearner(transaction, userId, learner === null ? null : takenIn(learnerColumn.read(learner), placed));
}

/** Keeps what the learner model knows; null where it has to be built anew. */
export async function writeLearner(
  transaction: Transaction,
  userId: string,
  learner: LearnerInOrder | null,
): Promise<void> {
  const column = learner ? learnerColumn.write(learner) : Prisma.DbNull;
  await transaction.learnerProgress.update({ where: { userId }, data: { learner: column } });
}

/** Counts the change, and says whether the learner's tallies are of everything that counted before it. */
async function isToBeAddedTo(
  transaction: Transaction,
  userId: string,
  sections: readonly CountedSection[],
): Promise<boolean> {
  const { version, revision } = await transaction.learnerProgress.upsert({
    where: { userId },
    create: { userId, revision: 1 },
    update: { revision: { increment: 1 } },
  });
  const isComplete = sections.every(({ observations }) => observations !== null);
  const isFirst = revision === 1 && version === "" && !(await hasOthers(transaction, userId, sections));
  const isCurrent = isComplete && (isFirst || version === PROGRESS_VERSION);
  const next = isCurrent ? PROGRESS_VERSION : "";
  if (next !== version) await transaction.learnerProgress.update({ where: { userId }, data: { version: next } });
  if (isFirst && isCurrent) await writeLearner(transaction, userId, NEW_IN_ORDER);
  return isCurrent;
}

async function hasOthers(transaction: Transaction, userId: string, sections: readonly CountedSection[]) {
  const id = { notIn: sections.map(({ attemptId }) => attemptId) };
  return (await transaction.attempt.findFirst({ where: { id, practice: { userId } }, select: { id: true } })) !== null;
}

/** Takes the tallies of learners away, so that they are built anew from what counts then. */
export async function forgetTallies(transaction: Transaction, userIds: readonly string[]): Promise<void> {
  for (const userId of [...new Set(userIds)].sort()) {
    await transaction.learnerProgress.upsert({
      where: { userId },
      create: { userId, revision: 1 },
      update: { version: "", revision: { increment: 1 }, learner: Prisma.DbNull },
    });
    await writeTallies(transaction, [[userId, EMPTY_LEARNER_TALLY]]);
  }
}

/** The tallies of learners as they are stored. */
export async function readTallies(
  { sectionTally, typeTally }: Pick<Transaction, "sectionTally" | "typeTally">,
  userIds: readonly string[],
): Promise<ReadonlyMap<string, LearnerTally>> {
  if (userIds.length === 0) return new Map();
  const where = { userId: { in: [...userIds] } };
  const [sections, types] = [await sectionTally.findMany({ where }), await typeTally.findMany({ where })];
  const [ofSections, ofTypes] = [byUser(sections), byUser(types)];
  return new Map(userIds.map((id) => [id, tallyOf(ofSections.get(id) ?? [], ofTypes.get(id) ?? [])]));
}

/** Rows by the learner that they are of. */
function byUser<Row extends { readonly userId: string }>(rows: readonly Row[]): ReadonlyMap<string, readonly Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    const own = found.get(row.userId);
    if (own) own.push(row);
    else found.set(row.userId, [row]);
  }
  return found;
}

const tallyOf = (sections: readonly SectionTallyModel[], types: readonly TypeTallyModel[]): LearnerTally => ({
  sections: Object.fromEntries(sections.map(({ section, value }) => [section, sectionTallyColumn.read(value)])),
  types: Object.fromEntries(
    types.flatMap(({ type, value }) => (isImperfectionType(type) ? [[type, typeTallyColumn.read(value)]] : [])),
  ),
});

/** Puts tallies in place of what is stored of the same learners, whose progress is noted already. */
export async function writeTallies(
  transaction: Transaction,
  tallies: readonly (readonly [userId: string, tally: LearnerTally])[],
): Promise<void> {
  if (tallies.length === 0) return;
  const where = { userId: { in: tallies.map(([userId]) => userId) } };
  await transaction.sectionTally.deleteMany({ where });
  await transaction.typeTally.deleteMany({ where });
  await transaction.sectionTally.createMany({ data: tallies.flatMap(([userId, tally]) => sectionRows(userId, tally)) });
  await transaction.typeTally.createMany({ data: tallies.flatMap(([userId, tally]) => typeRows(userId, tally)) });
  for (const [userId, tally] of tallies) {
    const overview = overviewColumn.write(overviewOf(tally));
    await transaction.learnerProgress.update({ where: { userId }, data: { overview } });
  }
}

const sectionRows = (userId: string, { sections }: LearnerTally): Prisma.SectionTallyCreateManyInput[] =>
  entriesOf(sections).map(([section, tally]) => ({ userId, section, value: sectionTallyColumn.write(tally) }));

const typeRows = (userId: string, { types }: LearnerTally): Prisma.TypeTallyCreateManyInput[] =>
  entriesOf(types).map(([type, tally]) => ({ userId, type, value: typeTallyColumn.write(tally) }));

const entriesOf = <Name extends string, T>(record: { readonly [name in Name]?: T }) =>
  Object.entries(record) as [Name, T][];
