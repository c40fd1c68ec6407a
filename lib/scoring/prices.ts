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

/** A choice is sought greedily in every so many rounds: it takes longer than a round. */
const GREEDY_EVERY = 6;
/** By what the step shrinks whenever the bound did not sink. */
const SHRINK = 0.93;
/** Totals are whole numbers: a bound below the next whole number proves a choice best. */
const EPSILON = 1e-6;

/** Whether nothing under this bound can beat a total. */
export function isProved(bound: number, total: number): boolean {
  return Math.floor(bound + EPSILON) <= total;
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
 * gets dearer, one that nobody wants cheaper. On the way it builds choices greedily; `best` is the better of the given
 * one and those. Stops early once the bound proves it.
 */
export function tightenPrices(
  blocks: readonly Block[],
  start: Pick<Prices, "ofCall" | "ofTruth">,
  given: Choice,
  rounds: number,
): { prices: Prices; best: Choice } {
  const ofCall = start.ofCall.slice();
  let lowest: Prices | null = null;
  let best = given;
  let pace = 1;
  for (let round = 0; round < rounds; round++) {
    const { prices, wanted } = priceTruths(blocks, start.ofTruth.length, ofCall);
    if (lowest === null || prices.bound < lowest.bound) lowest = prices;
    else pace *= SHRINK;
    if (round % GREEDY_EVERY === 0) best = better(best, greedyChoice(blocks, prices));
    if (isProved(lowest.bound, best.total)) break;
    const demand = demandOf(wanted, ofCall);
    const squares = demand.reduce((sum, excess) => sum + excess * excess, 0);
    if (squares === 0) break;
    const step = (pace * (prices.bound - best.total)) / squares;
    for (let call = 0; call < ofCall.length; call++) ofCall[call] = Math.max(0, ofCall[call] + step * demand[call]);
  }
  return { prices: lowest!, best };
}

/** The truths' prices under given prices of calls, and the block that each truth wants most. */
function priceTruths(blocks: readonly Block[], truthCount: number, ofCall: Float64Array) {
  const ofTruth = new Float64Array(truthCount);
  const wanted = new Array<Block | null>(truthCount).fill(null);
  for (const block of blocks) {
    let left = block.value;
    for (const piece of block.pieces) left -= ofCall[piece];
    left /= block.target.truths.length;
    for (const truth of block.target.truths) {
      if (left > ofTruth[truth]) {
        ofTruth[truth] = left;
        wanted[truth] = block;
      }
    }
  }
  let bound = 0;
  for (const price of ofTruth) bound += price;
  for (const price of ofCall) bound += price;
  return { prices: { bound, ofTruth, ofCall: ofCall.slice() }, wanted };
}

/** How often each call is wanted, less the once that it can be had; 0 for one that nobody wants and that costs nothing. */
function demandOf(wanted: readonly (Block | null)[], ofCall: Float64Array): Float64Array {
  const demand = new Float64Array(ofCall.length).fill(-1);
  for (const block of wanted) {
    if (!block) continue;
    for (const piece of block.pieces) demand[piece] += 1 / block.target.truths.length;
  }
  return demand.map((excess, call) => (excess < 0 && ofCall[call] === 0 ? 0 : excess));
}

/** Blocks in the order of how nearly they are worth their members' prices, as far as they do not collide. */
function greedyChoice(blocks: readonly Block[], prices: Prices): Choice {
  const left = Float64Array.from(blocks, (block) => leftOver(block, prices));
  const order = Uint32Array.from(blocks, (_, i) => i).sort((i, j) => left[j] - left[i] || i - j);
  const truths = new Uint8Array(prices.ofTruth.length);
  const calls = new Uint8Array(prices.ofCall.length);
  const chosen: Block[] = [];
  let total = 0;
  for (const i of order) {
    const block = blocks[i];
    if (block.target.truths.some((truth) => truths[truth] === 1)) continue;
    if (block.pieces.some((piece) => calls[piece] === 1)) continue;
    for (const truth of block.target.truths) truths[truth] = 1;
    for (const piece of block.pieces) calls[piece] = 1;
    chosen.push(block);
    total += block.value;
  }
  return { total, blocks: chosen };
}

function better(a: Choice, b: Choice): Choice {
  return b.total > a.total ? b : a;
}
