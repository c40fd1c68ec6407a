import { imperfection, likeness } from "../../lib/imperfections";
import type { Call } from "../../lib/report";
import type { TruthItem } from "../../lib/specimen";

/**
 * The marking rule written down once more from its text, in plain decimal arithmetic, with every structure tried out:
 * slow, and independent of the code under test. Only for calls that have a place.
 */
export function plainMark(items: readonly TruthItem[], calls: readonly Call[]): number {
  const weights = items.map((item) => (item.neutral ? 0 : imperfection(item.type).weight));
  const total = weights.reduce((a, b) => a + b, 0);
  const indications = weights.filter((weight) => weight > 0).length;
  if (total === 0) {
    const back = bestStructure(items.length, calls.length, (t, r) => value(pick(items, t), pick(calls, r), 0, 15));
    return Math.max(0, 100 - 15 * calls.length + back);
  }
  const lambda = total / indications / 2;
  const best = bestStructure(items.length, calls.length, (t, r) => {
    const weight = t.reduce((sum, i) => sum + weights[i], 0);
    return value(pick(items, t), pick(calls, r), weight, lambda);
  });
  return (100 * Math.max(0, best - lambda * calls.length)) / total;
}

/** Greatest total over all choices of blocks of one truth and 1 to 3 calls, or 2 to 3 truths and one call. */
export function bestStructure(
  truthCount: number,
  callCount: number,
  worthOf: (truths: readonly number[], calls: readonly number[]) => number,
): number {
  const truthSets = subsets(truthCount);
  const callSets = subsets(callCount);
  const blocks: { truths: number; calls: number; value: number }[] = [];
  for (const truths of truthSets) {
    for (const calls of callSets) {
      if (truths.members.length > 1 && calls.members.length > 1) continue;
      const worth = worthOf(truths.members, calls.members);
      if (worth > 0) blocks.push({ truths: truths.bits, calls: calls.bits, value: worth });
    }
  }
  return descend(0, 0, 0);

  function descend(truth: number, takenTruths: number, takenCalls: number): number {
    if (truth === truthCount) return 0;
    let best = descend(truth + 1, takenTruths, takenCalls);
    for (const block of blocks) {
      const isLowest = (block.truths & -block.truths) === 1 << truth;
      if (!isLowest || block.truths & takenTruths || block.calls & takenCalls) continue;
      const rest = descend(truth + 1, takenTruths | block.truths, takenCalls | block.calls);
      best = Math.max(best, block.value + rest);
    }
    return best;
  }
}

function subsets(count: number): { bits: number; members: number[] }[] {
  return Array.from({ length: 1 << count }, (_, bits) => ({
    bits,
    members: Array.from({ length: count }, (_, i) => i).filter((i) => bits & (1 << i)),
  })).filter(({ members }) => members.length >= 1 && members.length <= 3);
}

function pick<T>(all: readonly T[], positions: readonly number[]): T[] {
  return positions.map((position) => all[position]);
}

const ramp = (error: number, tolerance: number, factor: number): number =>
  Math.min(1, Math.max(0, (factor * tolerance - error) / ((factor - 1) * tolerance)));

function value(items: readonly TruthItem[], calls: readonly Call[], weight: number, lambda: number): number {
  const [first] = items;
  if (items.some((item) => item.type !== first.type)) return 0;
  const isPoint = items.length === 1 && imperfection(first.type).extent === "point";
  if (isPoint && calls.length > 1) return 0;
  const start = Math.min(...items.map((item) => item.start));
  const end = Math.max(...items.map((item) => item.end));
  const length = end - start;
  const starts = calls.map((call) => Math.min(call.start!, call.end ?? call.start!));
  const ends = calls.map((call) => Math.max(call.start!, call.end ?? call.start!));
  const [writtenStart, writtenEnd] = [Math.min(...starts), Math.max(...ends)];
  const beside = Math.max(...calls.flatMap((call) => items.map((item) => Math.abs(call.across! - item.across))));
  const gap = Math.max(
    openStretch(
      items.map((item) => [item.start, item.end]),
      start,
      end,
    ),
    openStretch(
      starts.map((a, i) => [a, ends[i]]),
      Math.max(start, writtenStart),
      Math.min(end, writtenEnd),
    ),
  );
  const place =
    ramp(Math.max(0, start - writtenStart, writtenEnd - end), Math.max(8, 0.15 * length), 2.5) *
    ramp(beside, 3, 8 / 3) *
    ramp(gap, 5, 3);
  const alike = Math.min(...calls.map((call) => (call.type === null ? 0 : likeness(first.type, call.type))));
  if (alike === 0 && imperfection(first.type).family === "misalignment") return 0;
  const parts: [share: number, earned: number][] = [
    [0.4, 1],
    [0.25, alike],
    [0.1, ramp(Math.abs(writtenStart - start), Math.max(5, 0.1 * length), 3)],
    [0.05, ramp(beside, 2, 3)],
  ];
  if (!isPoint) parts.push([0.1, ramp(Math.abs(writtenEnd - end), Math.max(5, 0.1 * length), 3)]);
  const trueSizes = items.flatMap((item) => (item.size === null ? [] : [item.size]));
  const sizes = calls.flatMap((call) => (call.size === null ? [] : [call.size]));
  if (trueSizes.length > 0) {
    const size = Math.max(...trueSizes);
    const error = Math.abs(Math.max(...sizes) - size);
    parts.push([0.1, sizes.length === 0 ? 0 : ramp(error, Math.max(0.5, 0.15 * size), 3)]);
  }
  const shares = parts.reduce((sum, [share]) => sum + share, 0);
  const quality = (place * parts.reduce((sum, [share, earned]) => sum + share * earned, 0)) / shares;
  const indications = items.filter((item) => !item.neutral).length;
  const kept = 0.95 ** (calls.length - 1) * 0.85 ** Math.max(0, indications - 1);
  return weight * kept * quality + calls.length * lambda * place;
}

/** Longest stretch from low to high that no extent covers. */
function openStretch(extents: readonly (readonly [number, number])[], low: number, high: number): number {
  const marks = [low, high, ...extents.flat()].filter((x) => x >= low && x <= high).sort((a, b) => a - b);
  let widest = 0;
  let open = 0;
  for (let i = 1; i < marks.length; i++) {
    // A point closes a gap on both of its sides.
    if (extents.some(([a, b]) => a === b && a === marks[i - 1])) open = 0;
    const middle = (marks[i - 1] + marks[i]) / 2;
    open = extents.some(([a, b]) => a <= middle && middle <= b) ? 0 : open + marks[i] - marks[i - 1];
    widest = Math.max(widest, open);
  }
  return widest;
}
