import { RULE } from "../results";
import type { Block } from "./blocks";
import { hullValue, joinedHull, type Placed } from "./placed";
import { ceiling, type Hull } from "./quality";
import type { Target } from "./targets";

/**
 * The pairs and triples of calls on one line that can be part of a best structure. `placed` is in order of start;
 * `rivals` is the number of other truths that could use any of these calls.
 *
 * Left out are blocks worth no more than a smaller one inside them, and blocks worth no more than each of 3 x rivals + 1
 * others that have no call in common: the rivals take at most three calls each, so one of those others is always free.
 */
export function splitBlocks(target: Target, placed: readonly Placed[], rivals: number, price: number): Block[] {
  const spare = spareBlocks(target, placed, RULE.mostInBlock * rivals + 1, price);
  const floor = spare.length > 0 ? Math.min(...spare.map((block) => block.value)) : 0;
  return [...spare, ...worthwhileBlocks(target, placed, floor, price)];
}

/** All pairs and triples worth more than the floor and more than any smaller block inside them. */
function worthwhileBlocks(target: Target, placed: readonly Placed[], floor: number, price: number): Block[] {
  const blocks: Block[] = [];
  const n = placed.length;
  const pairValues = new Int32Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [placed[i], placed[j]];
      const value = hullValue(target, joinedHull(target, a.hull, b.hull), price);
      pairValues[i * n + j] = value;
      if (value > Math.max(floor, a.value, b.value)) blocks.push(blockOf(target, [a, b], value));
    }
  }
  for (let i = 0; i < n; i++) {
    if (ceiling(target, placed[i].hull, RULE.mostInBlock, price) <= floor) continue;
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [placed[i], placed[j]];
      const pair = joinedHull(target, a.hull, b.hull);
      if (ceiling(target, pair, RULE.mostInBlock, price) <= floor) continue;
      for (let k = j + 1; k < n; k++) {
        const c = placed[k];
        const value = hullValue(target, joinedHull(target, pair, c.hull), price);
        if (value <= floor || value <= pairValues[i * n + j] || value <= pairValues[i * n + k]) continue;
        if (value <= pairValues[j * n + k] || value <= Math.max(a.value, b.value, c.value)) continue;
        blocks.push(blockOf(target, [a, b, c], value));
      }
    }
  }
  return blocks;
}

/** `count` good blocks without a call in common, or none if there are not so many. */
function spareBlocks(target: Target, placed: readonly Placed[], count: number, price: number): Block[] {
  let free = [...placed].sort((a, b) => b.value - a.value || a.position - b.position);
  const blocks: Block[] = [];
  while (blocks.length < count) {
    if (free.length === 0) return [];
    let block: Block = blockOf(target, [free[0]], free[0].value);
    let members = [free[0]];
    while (members.length < RULE.mostInBlock) {
      const grown = bestGrowth(target, members, free, price);
      if (grown === null || grown.value <= block.value) break;
      members = grown.members;
      block = blockOf(target, members, grown.value);
    }
    const used = members;
    free = free.filter((piece) => !used.includes(piece));
    if (block.value > 0) blocks.push(block);
    else return [];
  }
  return blocks;
}

function bestGrowth(target: Target, members: readonly Placed[], free: readonly Placed[], price: number) {
  let best: { members: Placed[]; value: number } | null = null;
  for (const piece of free) {
    if (members.includes(piece)) continue;
    const grown = [...members, piece].sort((a, b) => a.position - b.position);
    const hull = grown.slice(1).reduce<Hull>((sum, next) => joinedHull(target, sum, next.hull), grown[0].hull);
    const value = hullValue(target, hull, price);
    if (best === null || value > best.value) best = { members: grown, value };
  }
  return best;
}

function blockOf(target: Target, members: readonly Placed[], value: number): Block {
  return { target, pieces: members.map((piece) => piece.position), value };
}
