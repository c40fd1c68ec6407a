import { describe, expect, it } from "vitest";
import { clamp } from "@/lib/math";
import type { TruthItem } from "@/lib/specimen";
import type { FaceWork } from "@/lib/specimen/work";
import type { Face } from "@/lib/weld";
import type { Asked } from "./support/asked-face";
import { type Laying, laidFace } from "./support/laid-face";
import { median, PIXEL, type Side } from "./support/plain-loops";
import { columnAt, heightOf, longestAbove, plateOutside, xOf, yOf } from "./support/plain-strip";

/**
 * What is wrong with the bead's shape, measured a second time by plain loops over the heights. Only the definitions
 * (docstrings of lib/specimen/measure) are common.
 */
interface Value {
  readonly x: number;
  readonly value: number;
}

const columnsOf = (work: FaceWork, from: number, to: number): number[] => {
  const list: number[] = [];
  for (let i = columnAt(work, from); xOf(work, i) < to; i++) list.push(i);
  return list;
};

/** Where run `number` (from 1) begins on the one before it, coming from below: first pixel of it that lies on top. */
function borderBelow(work: FaceWork, number: number, i: number): number {
  const { grid, run } = work.strip;
  let sum = 0;
  let weights = 0;
  [1, 4, 6, 4, 1].forEach((weight, n) => {
    let j = 0;
    while (run[j * grid.columns + i + n - 2] !== number) {
      j++;
      if (j === grid.rows) throw new Error(`run ${number} does not lie in column ${i}`);
    }
    sum += weight * (yOf(work, j) - PIXEL / 2);
    weights += weight;
  });
  return sum / weights;
}

/** Depth of the valley before run `number` in a column: below the middle of the heights 1.1 mm to both sides. */
function valleyAt(work: FaceWork, number: number, i: number): number {
  const x = xOf(work, i);
  const border = borderBelow(work, number, i);
  let most = Number.NEGATIVE_INFINITY;
  for (let j = 0; j < work.strip.grid.rows; j++) {
    const y = yOf(work, j);
    if (y < border - 1 || y > border + 0.6) continue;
    const depth = (heightOf(work, x, y - 1.1) + heightOf(work, x, y + 1.1)) / 2 - heightOf(work, x, y);
    most = Math.max(most, depth);
  }
  return most;
}

/** Sound depth: median 3 to 13 mm beyond the range that was searched. */
function valley(work: FaceWork, number: number, item: TruthItem, range: { from: number; to: number }, bridge: number) {
  const at = (i: number) => valleyAt(work, number, i);
  const beside = [
    ...columnsOf(work, range.from - 13, range.from - 3),
    ...columnsOf(work, range.to + 3, range.to + 13),
  ].map(at);
  const sound = median(beside);
  const values = columnsOf(work, item.start - 3, item.end + 3).map(
    (i): Value => ({ x: xOf(work, i), value: at(i) - sound }),
  );
  return longestAbove(values, 0.22, bridge);
}

/** Outermost pixel of weld metal in the column at x. */
function toeAt(work: FaceWork, side: Side, x: number): number {
  const { grid, run } = work.strip;
  const i = columnAt(work, x);
  for (let j = side > 0 ? grid.rows - 1 : 0; j >= 0 && j < grid.rows; j -= side)
    if (run[j * grid.columns + i] > 0) return yOf(work, j);
  throw new Error(`no weld metal at ${x}`);
}

const meanToe = (work: FaceWork, side: Side, x: number, half: number): number => {
  let sum = 0;
  let count = 0;
  for (let near = x - half; near <= x + half; near += 0.25, count++) sum += toeAt(work, side, near);
  return sum / count;
};

/** Two who take the outermost pixel of a toe a little otherwise differ so much in a width, mm. */
const WIDTH_TOLERANCE = 0.1;

function width(work: FaceWork, item: TruthItem, threshold: number) {
  const at = (x: number) => meanToe(work, 1, x, 1) - meanToe(work, -1, x, 1);
  const along: Value[] = [];
  for (let x = Math.max(8, item.start - 80); x <= Math.min(292, item.end + 80); x++) along.push({ x, value: at(x) });
  const normal = (x: number) => median(along.filter((one) => Math.abs(one.x - x) <= 80).map(({ value }) => value));
  const values: Value[] = [];
  for (let x = item.start - 4; x <= item.end + 4; x += 0.25) values.push({ x, value: Math.abs(at(x) - normal(x)) });
  const above = (least: number) => longestAbove(values, least, 11, 0.25);
  const [most, least] = [above(threshold - WIDTH_TOLERANCE), above(threshold + WIDTH_TOLERANCE)];
  return {
    size: above(threshold).size,
    start: clamp(item.start, most.start, least.start),
    end: clamp(item.end, least.end, most.end),
  };
}

function unevenness(work: FaceWork, from: number, to: number) {
  /** Mean of the toe as laid over 4 mm to both sides. */
  const toe = (side: Side, x: number) => {
    const edge = side < 0 ? work.toeMinus : work.toePlus;
    let sum = 0;
    let count = 0;
    for (let i = columnAt(work, x - 4 + 1e-6); i <= columnAt(work, x + 4 + 1e-6); i++, count++) sum += edge[i];
    return sum / count;
  };
  const lane = (share: number) => {
    const heights: Value[] = [];
    for (let x = from - 8; x <= to + 8; x += 0.5) {
      const [low, high] = [toe(-1, x), toe(1, x)];
      heights.push({ x, value: heightOf(work, x, (low + high) / 2 + (share * (high - low)) / 2) });
    }
    return heights;
  };
  const lanes = Array.from({ length: 11 }, (_, n) => lane(-0.8 + 0.16 * n));
  const values: Value[] = [];
  for (let n = 16; n + 16 < lanes[0].length; n++) {
    const spreads = lanes.map((heights) => {
      const near = heights.slice(n - 16, n + 17);
      const slope =
        near.reduce((sum, { value }, m) => sum + value * (m - 16), 0) /
        near.reduce((sum, _, m) => sum + (m - 16) ** 2, 0);
      const flat = near.map(({ value }, m) => value - slope * (m - 16)).sort((a, b) => a - b);
      return flat[Math.round(0.95 * 32)] - flat[Math.round(0.05 * 32)];
    });
    values.push({ x: lanes[0][n].x, value: median(spreads) });
  }
  return longestAbove(values, 0.7, 4, 0.5);
}

/** Angle of the flank from 0.12 mm above the plate to 0.6 mm inside, degrees. */
function flankAt(work: FaceWork, side: Side, x: number, toe: number): number {
  const line = plateOutside(work, side, x, toe);
  const rise = (y: number) => heightOf(work, x, y) - line(y);
  for (let y = toe + side * 3; y * side > 0; y -= side * 0.02) {
    if (rise(y) < 0.12 || rise(y - side * 0.375) <= rise(y)) continue;
    return (Math.atan2(rise(y - side * 0.6) - 0.12, 0.6) * 180) / Math.PI;
  }
  throw new Error(`no flank at ${x}`);
}

function steepToe(work: FaceWork, side: Side, from: number, to: number) {
  const raw: Value[] = [];
  for (let x = from - 1; x <= to + 1; x += PIXEL)
    raw.push({ x, value: flankAt(work, side, x, meanToe(work, side, x, 3)) });
  const values = raw.slice(8, raw.length - 8).map(({ x }, n): Value => {
    const near = raw.slice(n, n + 17);
    return { x, value: near.reduce((sum, { value }) => sum + value, 0) / near.length };
  });
  return longestAbove(values, 60, 4);
}

const ask = (type: Asked["type"], x: number, length: number, severity: number, more: Partial<Asked> = {}): Asked => ({
  type,
  x,
  length,
  severity,
  ...more,
});

/** A sound valley is looked at just outside the stretch that was searched: it begins about this far outside the asked one, mm; an undercut's ends run out slowly. */
const SEARCHED_BEYOND = { "inter-run-fusion": 1.8, "inter-run-undercut": 3 };

describe.each<[seed: string, laying: Laying]>([
  ["bead 1", { runs: 2, direction: 1 }],
  ["bead 2", { runs: 3, direction: -1 }],
  ["bead 3", { runs: 5, direction: 1 }],
])("between runs, %s %o", (seed, laying) => {
  const later = (laying.runs as number) - 1;
  const asked = [
    ask("inter-run-fusion", 30, 14, 0.6, { run: later }),
    ask("inter-run-undercut", 80, 24, 0.6, { run: 1, side: -1 }),
    ask("inter-run-fusion", 140, 30, 1.2, { run: 1 }),
    ask("inter-run-undercut", 210, 40, 1.1, { run: later }),
  ];
  const { work, after } = laidFace(seed, "cap", asked, laying);

  it.each(asked.map((request, n) => [request.type, request.x, n] as const))(
    "%s at %d is where and as deep as plain loops find it",
    (_, __, n) => {
      const item = after[n] as TruthItem;
      const { x, length, run, severity } = asked[n];
      const beyond = SEARCHED_BEYOND[item.type as keyof typeof SEARCHED_BEYOND];
      const range = { from: x - beyond, to: x + length + beyond };
      const second = valley(work, (run as number) + 1, item, range, item.type === "inter-run-fusion" ? 3 : 2);
      expect(Math.abs((item.size as number) - second.size)).toBeLessThan(0.05);
      expect(Math.abs(item.start - second.start)).toBeLessThan(0.5);
      expect(Math.abs(item.end - second.end)).toBeLessThan(0.5);
      expect(item.neutral).toBe(false);
      expect((item.size as number) / severity).toBeGreaterThan(0.75);
      expect((item.size as number) / severity).toBeLessThan(1.25);
      expect(
        Math.abs(borderBelow(work, (run as number) + 1, columnAt(work, item.worst[0])) - item.worst[1]),
      ).toBeLessThan(1.1);
    },
  );
});

it("finds nothing between runs where there is one run only", () => {
  const asked = [ask("inter-run-fusion", 60, 20, 1), ask("inter-run-undercut", 160, 20, 0.8)];
  const { work, sound, after } = laidFace("bead 1", "cap", asked, { runs: 1 });
  expect(after).toEqual([null, null]);
  expect(work.strip.z.every((height, k) => height === sound[k])).toBe(true);
});

describe.each<[face: Face, seed: string, laying: Laying]>([
  ["cap", "bead 4", { runs: 1, direction: 1 }],
  ["cap", "bead 5", { runs: 4, direction: -1 }],
  ["root", "bead 6", { runs: 1, direction: -1 }],
])("irregular width, %s %s %o", (face, seed, laying) => {
  const sizes = face === "cap" ? [3, 3.8, 5] : [2.3, 2.8, 3.5];
  const asked = sizes.map((severity, n) => ask("irregular-width", 25 + 90 * n, 34 + 8 * n, severity));
  const { work, after } = laidFace(seed, face, asked, laying);

  it.each([0, 1, 2])("number %d changes its width where and as much as plain loops find it", (n) => {
    const item = after[n] as TruthItem;
    const second = width(work, item, face === "cap" ? 2 : 1.3);
    expect(Math.abs((item.width as number) - second.size)).toBeLessThan(0.4);
    expect(Math.abs(item.start - second.start)).toBeLessThan(1);
    expect(Math.abs(item.end - second.end)).toBeLessThan(1);
    expect(item.neutral).toBe(false);
  });
});

describe.each<[seed: string, laying: Laying]>([
  ["bead 7", { runs: 1, direction: -1 }],
  ["bead 8", { runs: 3, direction: 1 }],
])("irregular surface, %s %o", (seed, laying) => {
  const asked = [ask("irregular-surface", 40, 30, 1.2), ask("irregular-surface", 150, 50, 1.6)];
  const { work, after } = laidFace(seed, "cap", asked, laying);

  it.each([0, 1])("number %d is uneven where plain loops find it", (n) => {
    const item = after[n] as TruthItem;
    const second = unevenness(work, item.start - 3.75, item.end + 3.75);
    expect(Math.abs(item.start - second.start)).toBeLessThanOrEqual(1);
    expect(Math.abs(item.end - second.end)).toBeLessThanOrEqual(1);
    expect(item.neutral).toBe(false);
  });
});

describe.each<[seed: string, laying: Laying]>([
  ["bead 9", { runs: 1, direction: 1 }],
  ["bead 10", { runs: 3, direction: -1 }],
])("incorrect weld toe, %s %o", (seed, laying) => {
  const asked = [ask("incorrect-weld-toe", 35, 24, 1.35, { side: -1 }), ask("incorrect-weld-toe", 150, 50, 1.6)];
  const { work, after } = laidFace(seed, "cap", asked, laying);

  it.each([0, 1])("number %d is steep where plain loops find it", (n) => {
    const item = after[n] as TruthItem;
    const second = steepToe(work, asked[n].side ?? 1, item.start - 4, item.end + 4);
    expect(Math.abs(item.start - second.start)).toBeLessThan(1);
    expect(Math.abs(item.end - second.end)).toBeLessThan(1);
    expect(item.neutral).toBe(false);
  });
});

describe("three sizes", () => {
  type Measured = (item: TruthItem, work: FaceWork) => number;
  /** Where the three lie on one face, from the smallest to the largest: each is alone within 40 mm. */
  const PLACES = [30, 125, 220];
  const onOneFace = (type: Asked["type"], severities: readonly number[], laying: Laying, measured: Measured) => {
    const asked = severities.map((severity, n) => ask(type, PLACES[n], 40, severity));
    const { work, after } = laidFace("bead sizes", "cap", asked, laying);
    return after.map((item) => measured(item as TruthItem, work));
  };
  /** At the same place of the same bead, whose own waves come on top. */
  const atOnePlace = (type: Asked["type"], severities: readonly number[], laying: Laying, measured: Measured) =>
    severities.map((severity) => {
      const { work, after } = laidFace("bead sizes", "cap", [ask(type, 120, 40, severity)], laying);
      return measured(after[0] as TruthItem, work);
    });
  const grows = (sizes: readonly number[]) => {
    expect(sizes[1]).toBeGreaterThan(sizes[0]);
    expect(sizes[2]).toBeGreaterThan(sizes[1]);
  };

  it.each([2, 3, 5])("of what lies between %d runs come out in order", (runs) => {
    grows(onOneFace("inter-run-fusion", [0.5, 0.8, 1.3], { runs }, (item) => item.size as number));
    grows(onOneFace("inter-run-undercut", [0.45, 0.65, 0.95], { runs }, (item) => item.size as number));
  });

  it.each([1, 3])("of an irregular width or surface and of a steep toe come out in order, %d runs", (runs) => {
    grows(onOneFace("irregular-width", [3, 3.8, 5], { runs }, (item) => item.width as number));
    grows(
      atOnePlace(
        "irregular-surface",
        [1, 1.3, 1.8],
        { runs },
        (item, work) => unevenness(work, item.start + 0.25, item.end).size,
      ),
    );
    grows(
      onOneFace(
        "incorrect-weld-toe",
        [1.25, 1.45, 1.7],
        { runs },
        (item, work) => steepToe(work, 1, item.start, item.end).size,
      ),
    );
  });
});
