import { z } from "zod";
import {
  type CountedWork,
  markedStatement,
  type Statement,
  statementsAt,
  statementsOf,
  takenBack,
  type XapiPlace,
} from "@/lib/xapi";
import { paperColumn, resultColumn } from "./columns";
import type { Prisma } from "./generated/client/client";

type Transaction = Prisma.TransactionClient;

/** The workshop as statements name it; also in files, which need no record store. */
export const workshopPlace = (): XapiPlace => ({
  home: (process.env.PUBLIC_URL ?? `http://localhost:${process.env.PORT ?? "3000"}`).replace(/\/+$/, ""),
});

/** Nothing is kept for sending where no record store is configured, or one that cannot be one. */
const isConfigured = (): boolean => "address" in statementsAt(process.env.XAPI_ENDPOINT ?? "");

/** The demo workshop's people are nobody, and no record store is told of them. */
const isTold = async (transaction: Transaction): Promise<boolean> =>
  isConfigured() && (await transaction.demoHistory.count()) === 0;

const ofWork = {
  practice: {
    select: {
      userId: true,
      run: {
        select: {
          sittingId: true,
          sitting: { select: { paperVersion: { select: { paperId: true, content: true } } } },
        },
      },
    },
  },
  observations: true,
} satisfies Prisma.AttemptInclude;
type WorkRow = Prisma.AttemptGetPayload<{ include: typeof ofWork }>;

/** What sections that were marked say of their learners, in the order that is asked for. */
export async function readCountedWork(
  { attempt }: Pick<Transaction, "attempt">,
  attemptIds: readonly string[],
): Promise<readonly CountedWork[]> {
  const rows = await attempt.findMany({ where: { id: { in: [...attemptIds] } }, include: ofWork });
  const found = new Map(rows.map((row) => [row.id, row]));
  return attemptIds.flatMap((id) => {
    const row = found.get(id);
    return row ? [workOf(row)] : [];
  });
}

function workOf(row: WorkRow): CountedWork {
  const { userId, run } = row.practice;
  const { observations } = row;
  const paper = run?.sitting.paperVersion;
  return {
    attemptId: row.id,
    revision: row.reviewRevision,
    practiceId: row.practiceId,
    userId,
    section: row.section,
    handedInAt: row.handedInAt,
    seconds: observations ? secondsIn(observations.value) : null,
    mark: row.reviewedThousandths ?? row.markThousandths,
    passMark: row.passMark,
    isPassed: row.reviewedIsPassed ?? row.isPassed,
    ruleVersion: row.ruleVersion,
    questions: resultColumn.read(row.result).questions?.lines ?? [],
    sat:
      run && paper
        ? { sittingId: run.sittingId, paperId: paper.paperId, paperName: paperColumn.read(paper.content).name }
        : null,
  };
}

/** The time worked, which every version tells alike; null where it is not known. */
const timeSchema = z.object({ seconds: z.number().nullable().catch(null) });
const secondsIn = (value: unknown): number | null => timeSchema.safeParse(value).data?.seconds ?? null;

/** Keeps what sections say that count from now on, in the transaction that makes them count. */
export async function queueCounted(transaction: Transaction, attemptIds: readonly string[], at: Date): Promise<void> {
  if (attemptIds.length === 0 || !(await isTold(transaction))) return;
  const place = workshopPlace();
  const works = await readCountedWork(transaction, attemptIds);
  await queue(
    transaction,
    works.map((work) => ({ userId: work.userId, statements: statementsOf(place, work) })),
    at,
  );
}

/** Takes back what was told of sections that count no longer. */
export async function queueTakenBack(transaction: Transaction, attemptIds: readonly string[], at: Date): Promise<void> {
  if (attemptIds.length === 0 || !(await isTold(transaction))) return;
  const place = workshopPlace();
  const works = await readCountedWork(transaction, attemptIds);
  await queue(
    transaction,
    works.map((work) => ({ userId: null, statements: takenBack(place, work, at, true) })),
    at,
  );
}

/** Puts the mark that counts after a tutor's act in place of the one that was told before it, where one was. */
export async function queueReviewed(transaction: Transaction, attemptId: string, at: Date): Promise<void> {
  if (!(await isTold(transaction))) return;
  const released = { practice: { run: { is: { sitting: { state: "released" as const } } } } };
  if ((await transaction.attempt.count({ where: { id: attemptId, ...released } })) === 0) return;
  const place = workshopPlace();
  const works = await readCountedWork(transaction, [attemptId]);
  await queue(
    transaction,
    works.flatMap((work) => [
      { userId: null, statements: takenBack(place, { ...work, revision: work.revision - 1 }, at, false) },
      { userId: work.userId, statements: [markedStatement(place, work)] },
    ]),
    at,
  );
}

interface Told {
  /** Whom it names, and with whom it goes; null for what takes something back, which names nobody and has to arrive. */
  readonly userId: string | null;
  readonly statements: readonly Statement[];
}

async function queue({ xapiStatement }: Transaction, told: readonly Told[], madeAt: Date): Promise<void> {
  const rows = told.flatMap(({ userId, statements }) =>
    statements.map((statement) => ({
      id: statement.id,
      userId,
      statement: statement as unknown as Prisma.InputJsonValue,
      madeAt,
    })),
  );
  // what waits already is not told twice
  const waiting = await xapiStatement.findMany({
    where: { id: { in: rows.map(({ id }) => id) } },
    select: { id: true },
  });
  const known = new Set(waiting.map(({ id }) => id));
  await xapiStatement.createMany({ data: rows.filter(({ id }) => !known.has(id)) });
}
