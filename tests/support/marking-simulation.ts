import { imperfection, typesOn } from "../../lib/imperfections";
import type { RandomStream } from "../../lib/random";
import type { Call } from "../../lib/report";
import { DEFAULT_TOLERANCES, type IndicationsResult } from "../../lib/results";
import { markIndications } from "../../lib/scoring";
import type { TruthItem } from "../../lib/specimen";
import { call, exactCall, truthItem } from "./marking-cases";

/** Only a call that names a misalignment can find it, and it lies under everything else. */
const TYPES = typesOn("cap").filter((type) => imperfection(type).family !== "misalignment");
/** Half of the cap's width with its toes, where calls are made, mm. */
const REACH = 10;

/** Marks, shown to thousandths, of a report on the cap face under the default settings. */
export function marksOf(items: readonly TruthItem[], calls: readonly Call[]): number {
  return markCap(items, calls).earned / 1000;
}

export function markCap(items: readonly TruthItem[], calls: readonly Call[]): IndicationsResult {
  return markIndications(["cap"], { items, clutter: [] }, calls, DEFAULT_TOLERANCES);
}

const MOST_DRAWS = 2_000;

/**
 * A cap face as an assessment has it: `count` indications at least 25 mm apart along, or 12 mm across. Refuses a count
 * that finds no room.
 */
export function assessmentFace(random: RandomStream, count: number): TruthItem[] {
  const items: TruthItem[] = [];
  for (let draw = 0; items.length < count; draw++) {
    if (draw === MOST_DRAWS) throw new Error(`no room for ${count} indications`);
    const item = randomTruth(random, `cap-${items.length + 1}`);
    const isApart = items.every(
      (other) =>
        Math.abs(item.across - other.across) >= 12 || item.start - other.end >= 25 || other.start - item.end >= 25,
    );
    if (isApart) items.push(item);
  }
  return items;
}

/** One indication anywhere on the cap face. */
export function randomTruth(random: RandomStream, id: string): TruthItem {
  const type = random.pick(TYPES);
  const { extent, size } = imperfection(type);
  const start = random.uniform(8, 255);
  const end = extent === "point" ? start : Math.min(292, start + random.uniform(4, 45));
  const across = (random.chance(0.5) ? 1 : -1) * random.uniform(5, 8);
  return truthItem({ id, type, start, end, across, size: size === null ? null : random.uniform(0.4, 4) });
}

/** A call made without looking. */
export function blindCall(random: RandomStream, id: string): Call {
  const type = random.pick(TYPES);
  const isPoint = imperfection(type).extent === "point";
  const start = random.uniform(0, 290);
  return call({
    id,
    type,
    start,
    end: isPoint ? null : Math.min(300, start + random.uniform(2, 40)),
    across: random.uniform(-REACH, REACH),
    size: random.uniform(0.2, 4),
  });
}

/** Every find with the reading noise of the gauges: position 0.3 mm along, 0.5 mm across, size 0.1 mm (one sigma). */
export function carefulCall(random: RandomStream, item: TruthItem, id: string): Call {
  const exact = exactCall(item, id);
  const read = (value: number, sigma: number, low: number): number => Math.max(low, random.normal(value, sigma));
  const start = read(item.start, 0.3, 0);
  return {
    ...exact,
    start,
    end: exact.end === null ? null : Math.max(start, read(item.end, 0.3, 0)),
    across: random.normal(item.across, 0.5),
    size: item.size === null ? null : read(item.size, 0.1, 0),
  };
}

/** The same find once more under another type. */
export function underSecondType(random: RandomStream, first: Call): Call {
  const others = TYPES.filter((type) => type !== first.type);
  return { ...first, id: `${first.id}-again`, type: random.pick(others) };
}

export function widened(first: Call, by: number): Call {
  const start = Math.max(0, first.start! - by);
  return { ...first, start, end: Math.min(300, (first.end ?? first.start!) + by) };
}
