import type { CountedWork, Statement } from "@/lib/xapi";
import { database, PATIENCE } from "../client";
import type { Prisma } from "../generated/client/client";
import { readCountedWork } from "../xapi-outbox";

/** A statement that waits to be sent. */
export interface WaitingStatement {
  readonly number: number;
  readonly statement: Statement;
}

/** The statements that have waited longest, in the order in which they were made. */
export async function listWaiting(atMost: number): Promise<readonly WaitingStatement[]> {
  const rows = await database().xapiStatement.findMany({
    where: { state: "waiting" },
    orderBy: { number: "asc" },
    take: atMost,
    select: { number: true, statement: true },
  });
  return rows.map(({ number, statement }) => ({ number, statement: statement as unknown as Statement }));
}

/** The first one behind a number that tells of somebody, rather than takes something back; null where none waits. */
export async function readWaitingBehind(number: number): Promise<WaitingStatement | null> {
  const row = await database().xapiStatement.findFirst({
    where: { state: "waiting", number: { gt: number }, userId: { not: null } },
    orderBy: { number: "asc" },
    select: { number: true, statement: true },
  });
  return row && { number: row.number, statement: row.statement as unknown as Statement };
}

const DELIVERY = "delivery";

const note = (
  transaction: Prisma.TransactionClient,
  create: Omit<Prisma.XapiDeliveryCreateInput, "id">,
  update: Prisma.XapiDeliveryUpdateInput = create,
) => transaction.xapiDelivery.upsert({ where: { id: DELIVERY }, create: { id: DELIVERY, ...create }, update });

/** Takes statements out of the queue that the record store has. */
export async function noteSent(numbers: readonly number[], at: Date): Promise<void> {
  await database().$transaction(async (transaction) => {
    const { count } = await transaction.xapiStatement.deleteMany({ where: { number: { in: [...numbers] } } });
    const well = { lastSuccessAt: at, failures: 0, nextTryAt: null };
    await note(transaction, { ...well, sent: count }, { ...well, sent: { increment: count } });
  }, PATIENCE);
}

/** Keeps a statement that the record store will not have, with its reason, and out of the way of the others. */
export async function noteRefused(number: number, reason: string, at: Date): Promise<void> {
  await database().$transaction(async (transaction) => {
    await transaction.xapiStatement.updateMany({ where: { number }, data: { state: "refused", reason } });
    await note(transaction, { lastErrorAt: at, lastError: reason, failures: 0, nextTryAt: null });
  }, PATIENCE);
}

/** Keeps that nothing could be sent, and when it is tried again. */
export async function noteTrouble(reason: string, at: Date, failures: number, nextTryAt: Date): Promise<void> {
  await database().$transaction(
    (transaction) => note(transaction, { lastErrorAt: at, lastError: reason, failures, nextTryAt }),
    PATIENCE,
  );
}

/** How sending goes. */
export interface Delivery {
  readonly sent: number;
  readonly lastSuccessAt: Date | null;
  readonly lastErrorAt: Date | null;
  readonly lastError: string | null;
  readonly failures: number;
  readonly nextTryAt: Date | null;
}

export async function readDelivery(): Promise<Delivery> {
  const row = await database().xapiDelivery.findUnique({ where: { id: DELIVERY }, omit: { id: true } });
  return row ?? { sent: 0, lastSuccessAt: null, lastErrorAt: null, lastError: null, failures: 0, nextTryAt: null };
}

export interface Queue {
  readonly waiting: number;
  readonly waitingSince: Date | null;
  readonly refused: readonly RefusedAs[];
}

/** How many statements were refused with one status of HTTP, and one or two of the reasons that were given. */
export interface RefusedAs {
  readonly status: string;
  readonly count: number;
  readonly reasons: readonly string[];
}

/** What is in the queue, without saying of whom. */
export async function readQueue(): Promise<Queue> {
  const { xapiStatement } = database();
  const [waiting, first, refused] = await Promise.all([
    xapiStatement.count({ where: { state: "waiting" } }),
    xapiStatement.findFirst({ where: { state: "waiting" }, orderBy: { number: "asc" }, select: { madeAt: true } }),
    readRefused(),
  ]);
  return { waiting, waitingSince: first?.madeAt ?? null, refused };
}

/** A reason may name the statement, so that there are as many as there are statements: they are added up by their status. */
async function readRefused(): Promise<readonly RefusedAs[]> {
  const rows = await database().$queryRaw<
    { readonly status: string; readonly count: number | bigint; readonly first: string; readonly last: string }[]
  >`SELECT SUBSTR("reason", 1, 3) AS "status", COUNT(*) AS "count", MIN("reason") AS "first", MAX("reason") AS "last"
    FROM "XapiStatement" WHERE "state" = 'refused' GROUP BY SUBSTR("reason", 1, 3) ORDER BY 1`;
  return rows.map(({ status, count, first, last }) => ({
    status,
    count: Number(count),
    reasons: first === last ? [first] : [first, last],
  }));
}

/** Lets everything be tried at once, what was refused as well. */
export async function tryAgain(): Promise<void> {
  await database().$transaction(async (transaction) => {
    await transaction.xapiStatement.updateMany({
      where: { state: "refused" },
      data: { state: "waiting", reason: null },
    });
    await transaction.xapiDelivery.updateMany({ where: { id: DELIVERY }, data: { failures: 0, nextTryAt: null } });
  }, PATIENCE);
}

/** What these marked sections say of their learners. */
export const readWork = (attemptIds: readonly string[]): Promise<readonly CountedWork[]> =>
  readCountedWork(database(), attemptIds);

/**
 * The sections that count of a learner, the earliest first: practice, and of sittings what is released and not void; of all
 * classes, or of some.
 */
export async function listCountedAttempts(
  userId: string,
  groupIds: readonly string[] | null,
): Promise<readonly string[]> {
  const rows = await database().attempt.findMany({
    where: {
      practice: {
        userId,
        OR: [
          { run: { is: null } },
          {
            run: {
              is: {
                state: { in: ["handedIn", "expired"] },
                sitting: { state: "released", ...(groupIds && { groupId: { in: [...groupIds] } }) },
              },
            },
          },
        ],
      },
    },
    orderBy: [{ handedInAt: "asc" }, { id: "asc" }],
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}
