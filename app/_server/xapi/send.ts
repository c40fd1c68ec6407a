import {
  listWaiting,
  noteRefused,
  noteSent,
  noteTrouble,
  readDelivery,
  readWaitingBehind,
  type WaitingStatement,
} from "@/prisma/stores/xapi";
import { type Answer, post, type Sending } from "./post";

/** Statements that are sent in one request. */
export const BATCH = 50;
/** The pause after the first failure; it doubles with each one that follows, ms. */
const FIRST_PAUSE_MS = 5_000;
const LONGEST_PAUSE_MS = 60 * 60_000;
/** After so many failures in a row a statement may be what the store fails at. */
const LOOKED_INTO_AFTER = 4;

/**
 * Sends what waits, in its order and in batches, until nothing waits or the store cannot be reached; before the end of a pause
 * nothing at all. A statement that was stored whose answer got lost is sent again, which its id makes harmless. Where a batch is
 * refused its statements go one by one, so that only the one at fault is kept back.
 */
export async function sendWaiting(sending: Sending): Promise<void> {
  const { failures, nextTryAt } = await readDelivery();
  if (nextTryAt && nextTryAt > sending.clock()) return;
  let known = failures;
  for (;;) {
    const waiting = await listWaiting(BATCH);
    if (waiting.length === 0) return;
    const trouble = await sendBatch(waiting, sending, known);
    if (trouble !== null) {
      const now = sending.clock();
      const pause = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** known);
      await noteTrouble(trouble, now, known + 1, new Date(now.getTime() + pause));
      return;
    }
    known = 0;
  }
}

/** Sends some statements; answers why it had to stop, or null. */
async function sendBatch(
  waiting: readonly WaitingStatement[],
  sending: Sending,
  failures: number,
): Promise<string | null> {
  const answer = await sendAll(waiting, sending);
  if (answer.kind === "taken") return null;
  const mayBeOfOne =
    answer.kind === "unwanted" ||
    answer.kind === "forbidden" ||
    (answer.kind === "failing" && failures >= LOOKED_INTO_AFTER);
  return mayBeOfOne ? sendSingly(waiting, sending) : answer.reason;
}

async function sendAll(waiting: readonly WaitingStatement[], sending: Sending): Promise<Answer> {
  const answer = await post(
    waiting.map(({ statement }) => statement),
    sending,
  );
  if (answer.kind === "taken") {
    await noteSent(
      waiting.map(({ number }) => number),
      sending.clock(),
    );
  }
  return answer;
}

/**
 * Sends statements one by one. One that is not wanted is kept back; one that the store forbids or fails at only where it takes
 * another, since otherwise it takes none at all and they wait.
 */
async function sendSingly(waiting: readonly WaitingStatement[], sending: Sending): Promise<string | null> {
  const stuck: { readonly number: number; readonly reason: string }[] = [];
  let isOneTaken = false;
  for (const one of waiting) {
    const answer = await sendAll([one], sending);
    if (answer.kind === "trouble") return answer.reason;
    if (answer.kind === "taken") isOneTaken = true;
    else if (answer.kind === "unwanted") await noteRefused(one.number, answer.reason, sending.clock());
    else stuck.push({ number: one.number, reason: answer.reason });
  }
  if (stuck.length === 0) return null;
  // a class that is made void takes more back than a batch holds: what is behind tells whether anything else passes
  const behind = isOneTaken ? null : await readWaitingBehind(waiting[waiting.length - 1].number);
  if (behind) isOneTaken = (await sendAll([behind], sending)).kind === "taken";
  if (!isOneTaken) return stuck[0].reason;
  for (const { number, reason } of stuck) await noteRefused(number, reason, sending.clock());
  return null;
}
