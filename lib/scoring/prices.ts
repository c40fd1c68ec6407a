import type { Block } from "./blocks";

/** A choice of blocks that share no truth and no call. */
export interface Choice {
  readonly total: number;
  readonly blocks: readonly Block[];
}

/**
 * Prices of calls and the truths' prices that follow from them: a block is never worth more than the prices of its
 * members together, so their sum (`bound`) is an upper bound of every choice (linear-programming duality).
 */
export interface Prices {
  readonly bound: number;
  readonly ofTruth: Float64Array;
  readonly ofCall: Float64Array;
}

const ROUNDS = 100;
/** Totals are whole numbers: a bound below the next whole number proves a choice best. */
const EPSILON = 1e-6;

/** Whether nothing under this bound can beat a total. */
export function isProved(bound: number, total: number): boolean {
  return Math.floor(bound + EPSILON) <= total;
}

/** What each truth of a block has left when the calls are paid, in equal shares. */
export function leftPerTruth(block: Block, ofCall: Float64Array): number {
  let left = block.value;
  for (const piece of block.pieces) left -= ofCall[piece];
  return left / block.target.truths.length;
}

/** By how much a block is worth more than its members' prices together; 0 or less where the prices are a bound. */
export function leftOver(block: Block, prices: Prices): number {
  let left = block.value;
  for (const truth of block.target.truths) left -= prices.ofTruth[truth];
  for (const piece of block.pieces) left -= prices.ofCall[piece];
  return left;
}

/**
 * Lowers the bound from given prices of calls by subgradient steps (Held and Karp): a call that several truths want
 * gets dearer, one that nobody wants cheaper. On the way it builds choices greedily and keeps the best.
 */
export function tightenPrices(
  blocks: readonly Block[],
  truthCount: number,
  start: Float64Array,
  best: Choice,
): { prices: Prices; best: Choice } {
  const ofCall = start.slice();
  let lowest: Prices | null = null;
  let bestSoFar = best;
  let pace = 1;
  for (let round = 0; round < ROUNDS; round++) {
    const { prices, wanted } = priceTruths(blocks, truthCount, ofCall);
    if (lowest === null || prices.bound < lowest.bound) lowest = prices;
    else pace *= 0.93;
    bestSoFar = better(bestSoFar, greedyChoice(blocks, prices));
    if (isProved(lowest.bound, bestSoFar.total)) break;
    const demand = demandOf(wanted, ofCall.length);
    const squares = demand.reduce((sum, excess, call) => sum + (excess < 0 && ofCall[call] === 0 ? 0 : excess ** 2), 0);
    if (squares === 0) break;
    const step = (pace * (prices.bound - bestSoFar.total)) / squares;
    for (let call = 0; call < ofCall.length; call++) ofCall[call] = Math.max(0, ofCall[call] + step * demand[call]);
  }
  return { prices: lowest!, best: bestSoFar };
}

/** The truths' prices under given prices of calls, and the block that each truth wants most. */
function priceTruths(blocks: readonly Block[], truthCount: number, ofCall: Float64Array) {
  const ofTruth = new Float64Array(truthCount);
  const wanted = new Array<Block | null>(truthCount).fill(null);
  for (const block of blocks) {
    const left = leftPerTruth(block, ofCall);
    for (const truth of block.target.truths) {
      if (left > ofTruth[truth]) {
        ofTruth[truth] = left;
        wanted[truth] = block;
      }
    }
  }
  const bound = ofTruth.reduce((a, b) => a + b, 0) + ofCall.reduce((a, b) => a + b, 0);
  return { prices: { bound, ofTruth, ofCall: ofCall.slice() }, wanted };
}

/** How often each call is wanted, less the once that it can be had. */
function demandOf(wanted: readonly (Block | null)[], callCount: number): Float64Array {
  const demand = new Float64Array(callCount).fill(-1);
  for (const block of wanted) {
    if (!block) continue;
    for (const piece of block.pieces) demand[piece] += 1 / block.target.truths.length;
  }
  return demand;
}

/** Blocks in the order of how nearly they are worth their members' prices, as far as they do not collide. */
function greedyChoice(blocks: readonly Block[], prices: Prices): Choice {
  const left = new Map(blocks.map((block) => [block, leftOver(block, prices)]));
  const sorted = [...blocks].sort((a, b) => left.get(b)! - left.get(a)!);
  const truths = new Set<number>();
  const calls = new Set<number>();
  const chosen: Block[] = [];
  for (const block of sorted) {
    if (block.target.truths.some((truth) => truths.has(truth)) || block.pieces.some((piece) => calls.has(piece)))
      continue;
    for (const truth of block.target.truths) truths.add(truth);
    for (const piece of block.pieces) calls.add(piece);
    chosen.push(block);
  }
  return { total: chosen.reduce((sum, block) => sum + block.value, 0), blocks: chosen };
}

export function better(a: Choice, b: Choice): Choice {
  return b.total > a.total ? b : a;
}
