import { assignMost } from "./assignment";
import type { Block } from "./blocks";
import { components } from "./components";
import { type Choice, isProved, leftOver, type Prices, tightenPrices } from "./prices";

const ROUNDS_AT_ROOT = 100;
const ROUNDS_BELOW = 20;

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
  return search(blocks, { ofTruth: new Float64Array(truthCount), ofCall: new Float64Array(callCount) }, choice);
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

/**
 * Branch and bound. Prices are tightened for what is left at every branch, and blocks that cannot be part of anything
 * better than the best choice so far are dropped. Then the truth with the fewest blocks is decided: one of them, or none.
 */
function search(blocks: readonly Block[], start: Pick<Prices, "ofCall" | "ofTruth">, first: Choice): Choice {
  let best = first;
  descend(blocks, start, { total: 0, blocks: [] }, ROUNDS_AT_ROOT);
  return best;

  function descend(left: readonly Block[], from: typeof start, taken: Choice, rounds: number): void {
    const needed = { total: best.total - taken.total, blocks: [] };
    const { prices, best: found } = tightenPrices(left, from, needed, rounds);
    if (found !== needed) best = joined(taken, found);
    const isHopeless = (block: Block): boolean =>
      isProved(taken.total + prices.bound + leftOver(block, prices), best.total);
    if (isProved(taken.total + prices.bound, best.total)) return;
    const hopeful = left.filter((block) => !isHopeless(block));
    const truth = scarcestTruth(hopeful);
    if (truth === null) return;
    const options = hopeful.filter((block) => block.target.truths.includes(truth));
    options.sort((a, b) => leftOver(b, prices) - leftOver(a, prices));
    for (const block of options) {
      if (isHopeless(block)) break;
      const rest = hopeful.filter((other) => !collide(block, other));
      descend(rest, withoutTaken(prices, block), joined(taken, { total: block.value, blocks: [block] }), ROUNDS_BELOW);
    }
    const without = hopeful.filter((block) => !block.target.truths.includes(truth));
    descend(without, prices, taken, ROUNDS_BELOW);
  }
}

function joined(a: Choice, b: Choice): Choice {
  return { total: a.total + b.total, blocks: [...a.blocks, ...b.blocks] };
}

function collide(a: Block, b: Block): boolean {
  return (
    a.target.truths.some((truth) => b.target.truths.includes(truth)) ||
    a.pieces.some((piece) => b.pieces.includes(piece))
  );
}

/** The prices without those of a block's calls: they are no longer for sale. */
function withoutTaken(prices: Prices, block: Block): Prices {
  const ofCall = prices.ofCall.slice();
  for (const piece of block.pieces) ofCall[piece] = 0;
  return { ...prices, ofCall };
}

/** The truth that the fewest blocks stand for, or null without blocks. */
function scarcestTruth(blocks: readonly Block[]): number | null {
  const counts = new Map<number, number>();
  for (const block of blocks) for (const truth of block.target.truths) counts.set(truth, (counts.get(truth) ?? 0) + 1);
  let scarcest: number | null = null;
  for (const [truth, count] of counts) if (scarcest === null || count < counts.get(scarcest)!) scarcest = truth;
  return scarcest;
}
