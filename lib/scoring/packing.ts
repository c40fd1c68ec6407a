import { assignMost } from "./assignment";
import type { Block } from "./blocks";
import { components } from "./components";
import { better, type Choice, isProved, leftOver, leftPerTruth, type Prices, tightenPrices } from "./prices";

/**
 * The best structure: the blocks of greatest total value that share no truth and no call. Exact: where the one-to-one
 * assignment's prices do not already prove it best, branch and bound under tightened prices does.
 */
export function bestBlocks(blocks: readonly Block[], truthCount: number, callCount: number): Block[] {
  return components(blocks).flatMap((group) => [...bestOfGroup(group, truthCount, callCount).blocks]);
}

function bestOfGroup(blocks: readonly Block[], truthCount: number, callCount: number): Choice {
  const one = blocks[0].target.truths[0];
  if (blocks.every((block) => block.target.truths.length === 1 && block.target.truths[0] === one)) {
    const dearest = blocks.reduce((a, b) => (b.value > a.value ? b : a));
    return { total: dearest.value, blocks: [dearest] };
  }
  const { choice, prices } = bestOneToOne(blocks, truthCount, callCount);
  if (blocks.every((block) => leftOver(block, prices) <= 0)) return choice;
  const tight = tightenPrices(blocks, truthCount, prices.ofCall, choice);
  if (isProved(tight.prices.bound, tight.best.total)) return tight.best;
  return search(blocks, tight.prices, tight.best);
}

/** Best choice among blocks of one truth and one call, with the prices that prove it. */
function bestOneToOne(blocks: readonly Block[], truthCount: number, callCount: number) {
  const truths = [...new Set(blocks.flatMap((block) => block.target.truths))];
  const calls = [...new Set(blocks.flatMap((block) => block.pieces))];
  const rowOf = new Map(truths.map((truth, row) => [truth, row]));
  const columnOf = new Map(calls.map((call, column) => [call, column]));
  const values = truths.map(() => new Array<number>(calls.length).fill(0));
  const blockAt = new Map<number, Block>();
  for (const block of blocks) {
    if (block.target.truths.length > 1 || block.pieces.length > 1) continue;
    const [row, column] = [rowOf.get(block.target.truths[0])!, columnOf.get(block.pieces[0])!];
    values[row][column] = block.value;
    blockAt.set(row * calls.length + column, block);
  }
  const assignment = assignMost(values);
  const chosen = assignment.columnOf.flatMap((column, row) =>
    column < 0 ? [] : [blockAt.get(row * calls.length + column)!],
  );
  const ofTruth = new Float64Array(truthCount);
  const ofCall = new Float64Array(callCount);
  truths.forEach((truth, row) => {
    ofTruth[truth] = assignment.rowPrices[row];
  });
  calls.forEach((call, column) => {
    ofCall[call] = assignment.columnPrices[column];
  });
  const prices: Prices = { bound: assignment.total, ofTruth, ofCall };
  return { choice: { total: assignment.total, blocks: chosen }, prices };
}

interface Option {
  readonly block: Block;
  /** What each of its truths has left when the calls are paid. */
  readonly left: number;
}

/**
 * Branch and bound. The truth with the fewest open options is decided next: one of its blocks, or nothing. A branch is
 * left when even the prices of what is still free cannot beat the best choice so far.
 */
function search(blocks: readonly Block[], prices: Prices, start: Choice): Choice {
  let best = start;
  const hopeful = blocks.filter((block) => !isProved(prices.bound + leftOver(block, prices), best.total));
  const truths = [...new Set(hopeful.flatMap((block) => block.target.truths))];
  const options = new Map<number, Option[]>(truths.map((truth) => [truth, []]));
  for (const block of hopeful) {
    const option = { block, left: leftPerTruth(block, prices.ofCall) };
    for (const truth of block.target.truths) options.get(truth)!.push(option);
  }
  for (const list of options.values()) list.sort((a, b) => b.left - a.left);
  const takenTruths = new Set<number>();
  const takenCalls = new Uint8Array(prices.ofCall.length);
  const chosen: Block[] = [];
  descend(
    0,
    prices.ofCall.reduce((a, b) => a + b, 0),
  );
  return best;

  function isOpen({ block }: Option): boolean {
    for (const piece of block.pieces) if (takenCalls[piece]) return false;
    for (const truth of block.target.truths) if (takenTruths.has(truth)) return false;
    return true;
  }

  function descend(total: number, freeCalls: number): void {
    let bound = total + freeCalls;
    let next: { truth: number; open: Option[] } | null = null;
    for (const truth of truths) {
      if (takenTruths.has(truth)) continue;
      const open = options.get(truth)!.filter(isOpen);
      if (open.length === 0) continue;
      bound += Math.max(0, open[0].left);
      if (next === null || open.length < next.open.length) next = { truth, open };
    }
    if (next === null) {
      best = better(best, { total, blocks: [...chosen] });
      return;
    }
    if (isProved(bound, best.total)) return;
    const rest = bound - Math.max(0, next.open[0].left);
    for (const { block, left } of next.open) {
      if (isProved(rest + Math.max(0, left), best.total)) break;
      take(block, total, freeCalls);
    }
    if (!isProved(rest, best.total)) {
      takenTruths.add(next.truth);
      descend(total, freeCalls);
      takenTruths.delete(next.truth);
    }
  }

  function take(block: Block, total: number, freeCalls: number): void {
    let rest = freeCalls;
    for (const truth of block.target.truths) takenTruths.add(truth);
    for (const piece of block.pieces) {
      takenCalls[piece] = 1;
      rest -= prices.ofCall[piece];
    }
    chosen.push(block);
    descend(total + block.value, rest);
    chosen.pop();
    for (const piece of block.pieces) takenCalls[piece] = 0;
    for (const truth of block.target.truths) takenTruths.delete(truth);
  }
}
