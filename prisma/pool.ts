import { isImperfectionType } from "@/lib/imperfections";
import {
  addPieceTallies,
  addPooledQuestions,
  addTypeTallies,
  type LearnerTally,
  type PooledQuestion,
  pooledQuestionSchema,
} from "@/lib/progress";
import { column } from "./columns";
import type { Prisma } from "./generated/client/client";
import type { PooledSectionModel } from "./generated/client/models";
import { sectionTallyColumn, typeTallyColumn } from "./progress-columns";

type Transaction = Prisma.TransactionClient;

const pooledQuestionColumn = column(pooledQuestionSchema);

/** Adds what somebody did to the pool of everybody who was erased, without who or when. */
export async function addToPool(
  transaction: Transaction,
  { sections, types }: LearnerTally,
  questions: ReadonlyMap<string, PooledQuestion>,
): Promise<void> {
  for (const [section, tally] of Object.entries(sections) as [PooledSectionModel["section"], never][]) {
    const before = await transaction.pooledSection.findUnique({ where: { section } });
    const sum = before ? addPieceTallies(sectionTallyColumn.read(before.value), tally) : tally;
    const value = sectionTallyColumn.write(sum);
    await transaction.pooledSection.upsert({ where: { section }, create: { section, value }, update: { value } });
  }
  for (const [type, tally] of Object.entries(types)) {
    const before = await transaction.pooledType.findUnique({ where: { type } });
    const sum = before ? addTypeTallies(typeTallyColumn.read(before.value), tally) : tally;
    const value = typeTallyColumn.write(sum);
    await transaction.pooledType.upsert({ where: { type }, create: { type, value }, update: { value } });
  }
  for (const [id, answers] of questions) {
    const before = await transaction.pooledQuestion.findUnique({ where: { id } });
    const sum = before ? addPooledQuestions(pooledQuestionColumn.read(before.value), answers) : answers;
    const value = pooledQuestionColumn.write(sum);
    await transaction.pooledQuestion.upsert({ where: { id }, create: { id, value }, update: { value } });
  }
}

/** The pool as a tally like that of a learner. */
export async function readPool({
  pooledSection,
  pooledType,
}: Pick<Transaction, "pooledSection" | "pooledType">): Promise<LearnerTally> {
  const [sections, types] = [await pooledSection.findMany(), await pooledType.findMany()];
  return {
    sections: Object.fromEntries(sections.map(({ section, value }) => [section, sectionTallyColumn.read(value)])),
    types: Object.fromEntries(
      types.flatMap(({ type, value }) => (isImperfectionType(type) ? [[type, typeTallyColumn.read(value)]] : [])),
    ),
  };
}

/** How questions were answered by those who were erased, by the id of the question. */
export async function readPooledQuestions(
  { pooledQuestion }: Pick<Transaction, "pooledQuestion">,
  ids?: readonly string[],
): Promise<ReadonlyMap<string, PooledQuestion>> {
  const rows = await pooledQuestion.findMany(ids && { where: { id: { in: [...ids] } } });
  return new Map(rows.map(({ id, value }) => [id, pooledQuestionColumn.read(value)]));
}
