import type { CountedWork, Statement } from "@/lib/xapi";
import { database } from "../client";
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
  });
}

/** Keeps a statement that the record store will not have, with its reason, and out of the way of the others. */
export async function noteRefused(number: number, reason: string, at: Date): Promise<void> {
  await database().$transaction(async (transaction) => {
    await transaction.xapiStatement.updateMany({ where: { number }, data: { state: "refused", reason } });
    await note(transaction, { lastErrorAt: at, lastError: reason, failures: 0, nextTryAt: null });
  });
}

/** Keeps that nothing could be sent, and when it is tried again. */
export async function noteTrouble(reason: string, at: Date, failures: number, nextTryAt: Date): Promise<void> {
  await database().$transaction((transaction) =>
    note(transaction, { lastErrorAt: at, lastError: reason, failures, nextTryAt }),
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
  /** Why statements were refused, and how many for each reason. */
  readonly refused: readonly { readonly reason: string; readonly count: number }[];
}

/** What is in the queue, without saying of whom. */
export async function readQueue(): Promise<Queue> {
  const { xapiStatement } = database();
  const [waiting, first, refused] = await Promise.all([
    xapiStatement.count({ where: { state: "waiting" } }),
    xapiStatement.findFirst({ where: { state: "waiting" }, orderBy: { number: "asc" }, select: { madeAt: true } }),
    xapiStatement.groupBy({ by: ["reason"], where: { state: "refused" }, _count: true, orderBy: { reason: "asc" } }),
  ]);
  return {
    waiting,
    waitingSince: first?.madeAt ?? null,
    refused: refused.map(({ reason, _count }) => ({ reason: reason ?? "", count: _count })),
  };
}

/** Lets everything be tried at once, what was refused as well. */
export async function tryAgain(): Promise<void> {
  await database().$transaction(async (transaction) => {
    await transaction.xapiStatement.updateMany({
      where: { state: "refused" },
      data: { state: "waiting", reason: null },
    });
    await transaction.xapiDelivery.updateMany({ where: { id: DELIVERY }, data: { failures: 0, nextTryAt: null } });
  });
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
