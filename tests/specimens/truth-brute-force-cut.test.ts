import { describe, expect, it } from "vitest";
import type { TruthItem } from "@/lib/specimen";
import { heightAt, type Surface } from "@/lib/surface";
import { type Asked, type AskedFace, askedFace } from "./support/asked-face";

/**
 * The truth of what is cut, left or made by stops against a second opinion: places and sizes worked out again from the
 * finished patches by plain loops that share no code with the product's measuring. Cracks and slag are found by what an
 * eye goes by (dark, rough, deep; dark and without metal), since the planes the product measures them in are not part
 * of a finished surface.
 */
const PIXEL = 0.125;
const PLACE_TOLERANCE = 0.5;
/** Where the place of an end depends on less than can be told apart, mm. */
const WIDER_TOLERANCE: Readonly<Record<string, number>> = {
  // 0.1 mm deep and 20 mm long: a hundredth of a millimetre in the plate's plane moves its ends this far
  "light-grinding": 1.2,
  // whether a dimple at the ragged border is a cell hangs on 0.02 mm of its depth
  "root-porosity": 1,
  // a hairline tip that covers a quarter of a pixel differs from a ripple's crease only over several pixels
  "longitudinal-crack": 1,
};

interface Opinion {
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size?: number;
}
interface Pixel {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Luminance, roughness and metalness, 0..255. */
  readonly light: number;
  readonly rough: number;
  readonly metal: number;
}
interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

const sorted = (values: number[]) => values.slice().sort((a, b) => a - b);
const median = (values: number[]) => sorted(values)[Math.floor(values.length / 2)];

/** Every pixel of the finished strip in a box. */
function pixels({ strip }: Surface, box: Box): Pixel[] {
  const list: Pixel[] = [];
  const { columns, rows, x0, y0, perMm } = strip.grid;
  for (let j = 0; j < rows; j++) {
    const y = y0 + (j + 0.5) / perMm;
    if (y < box.y0 || y > box.y1) continue;
    for (let i = 0; i < columns; i++) {
      const x = x0 + (i + 0.5) / perMm;
      if (x < box.x0 || x > box.x1) continue;
      const k = j * columns + i;
      const light = 0.21 * strip.albedo[3 * k] + 0.72 * strip.albedo[3 * k + 1] + 0.07 * strip.albedo[3 * k + 2];
      list.push({ x, y, z: strip.height[k], light, rough: strip.finish[3 * k], metal: strip.finish[3 * k + 1] });
    }
  }
  return list;
}

/** Joins pixels whose centres lie at most `bridge` mm apart (plain breadth-first search over all pairs). */
function groups(list: readonly Pixel[], bridge: number): Pixel[][] {
  const rest = new Set(list);
  const found: Pixel[][] = [];
  for (const seed of list) {
    if (!rest.delete(seed)) continue;
    const group = [seed];
    for (let n = 0; n < group.length; n++)
      for (const other of rest)
        if (Math.hypot(other.x - group[n].x, other.y - group[n].y) <= bridge + 1e-6) {
          rest.delete(other);
          group.push(other);
        }
    found.push(group);
  }
  return found.sort((a, b) => b.length - a.length);
}

function extent(list: readonly Pixel[]): Opinion {
  const xs = list.map((p) => p.x);
  const ys = list.map((p) => p.y);
  return {
    start: Math.min(...xs) - PIXEL / 2,
    end: Math.max(...xs) + PIXEL / 2,
    across: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
}

const boxOf = (item: TruthItem, margin: number): Box => ({
  x0: Math.min(...item.outline.map(([x]) => x)) - margin,
  x1: Math.max(...item.outline.map(([x]) => x)) + margin,
  y0: Math.min(...item.outline.map(([, y]) => y)) - margin,
  y1: Math.max(...item.outline.map(([, y]) => y)) + margin,
});

/** Plane through the medians of the four sides of a frame, so that globules on it do not count. */
function frameLevel(surface: Surface, box: Box): (p: Pixel) => number {
  const frame = pixels(surface, { x0: box.x0 - 2, x1: box.x1 + 2, y0: box.y0 - 2, y1: box.y1 + 2 });
  const side = (keep: (p: Pixel) => boolean) => median(frame.filter(keep).map((p) => p.z));
  const left = side((p) => p.x < box.x0);
  const right = side((p) => p.x > box.x1);
  const low = side((p) => p.y < box.y0);
  const high = side((p) => p.y > box.y1);
  const width = box.x1 - box.x0 + 2;
  const height = box.y1 - box.y0 + 2;
  const x = (box.x0 + box.x1) / 2;
  const y = (box.y0 + box.y1) / 2;
  const level = (left + right + low + high) / 4;
  return (p) => level + ((right - left) * (p.x - x)) / width + ((high - low) * (p.y - y)) / height;
}

type Second = (surface: Surface, item: TruthItem, asked: Asked) => Opinion;

/** One hole: pixels deeper than 35 % of its depth below the median of the metal round it, joined from its bottom. */
function hole(surface: Surface, x: number, y: number, diameter: number): Opinion & { pixels: Pixel[]; depth: number } {
  const reach = 0.95 * diameter;
  const near = pixels(surface, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach });
  const away = (p: Pixel) => Math.hypot(p.x - x, p.y - y);
  const rim = median(near.filter((p) => away(p) > 0.8 * diameter && away(p) < 0.95 * diameter).map((p) => p.z));
  const bottom = near.filter((p) => away(p) < 0.55 * diameter).reduce((a, b) => (b.z < a.z ? b : a));
  const depth = rim - bottom.z;
  const mouth = groups(
    near.filter((p) => rim - p.z > 0.35 * depth && away(p) < 0.75 * diameter),
    1.5 * PIXEL,
  ).find((group) => group.includes(bottom)) as Pixel[];
  const area = mouth.length * PIXEL * PIXEL;
  return { ...extent(mouth), size: 2 * Math.sqrt(area / Math.PI), pixels: mouth, depth };
}

const point = (opinion: Opinion): Opinion => {
  const middle = (opinion.start + opinion.end) / 2;
  return { ...opinion, start: middle, end: middle };
};

const single: Second = (surface, item) => point(hole(surface, item.worst[0], item.worst[1], item.size as number));

const DIRECTIONS = Array.from({ length: 8 }, (_, n) => (n * Math.PI) / 8);

/** How far a place lies below the chords over it in every direction: deep in a hole, nothing in a crease or on a flank. */
function hollowness(surface: Surface, p: Pixel): number {
  const over = (reach: number) =>
    Math.min(
      ...DIRECTIONS.map((angle) => {
        const dx = reach * Math.cos(angle);
        const dy = reach * Math.sin(angle);
        return (heightAt(surface, p.x + dx, p.y + dy) + heightAt(surface, p.x - dx, p.y - dy)) / 2 - p.z;
      }),
    );
  return Math.max(over(0.45), over(0.8), over(1.2));
}

/** All holes in a box: groups of hollow pixels. */
function holesIn(surface: Surface, box: Box, least: number, pixelsAtLeast: number): Opinion[] {
  const deep = pixels(surface, box).filter((p) => hollowness(surface, p) > least);
  return groups(deep, 1.5 * PIXEL)
    .filter((group) => group.length >= pixelsAtLeast)
    .map(extent);
}

const many =
  (least: number, pixelsAtLeast: number): Second =>
  (surface, item) => {
    const found = holesIn(surface, boxOf(item, 1.2), least, pixelsAtLeast);
    const box = boxOf(item, 0);
    const start = Math.min(...found.map((h) => h.start));
    const end = Math.max(...found.map((h) => h.end));
    const largest = item.size === null ? undefined : hole(surface, item.worst[0], item.worst[1], item.size).size;
    return { start, end, across: (box.y0 + box.y1) / 2, size: largest };
  };

/**
 * Dark, rough and deep against the metal within a millimetre: threads of faint pixels that hold at least two which leave no
 * doubt.
 */
const crack: Second = (surface, item, asked) => {
  const list = pixels(surface, boxOf(item, 0.6));
  const sure = new Set<Pixel>();
  const faint = list.filter((p) => {
    const round = list.filter((q) => Math.abs(q.x - p.x) < 0.8 && Math.abs(q.y - p.y) < 0.8);
    const light = p.light / median(round.map((q) => q.light));
    const rough = p.rough - median(round.map((q) => q.rough));
    const drop = median(round.map((q) => q.z)) - p.z;
    if (light < 0.8 && rough > 10 && drop > 0.008) sure.add(p);
    return light < 0.93 && rough > 2 && drop > 0.003;
  });
  const threads = groups(faint, 1.5 * PIXEL).filter((group) => group.filter((p) => sure.has(p)).length >= 2);
  const opinion = extent(groups(threads.flat(), 6)[0]);
  return asked.type === "longitudinal-crack" ? opinion : point(opinion);
};

/** Dark, smooth and hardly metal; a thin film on the cap, brushed metal, lets more of it be seen than on the dull root. */
const slag: Second = (surface, item) => {
  const most = item.face === "cap" ? { metal: 70, rough: 115, light: 85 } : { metal: 30, rough: 110, light: 75 };
  const film = pixels(surface, boxOf(item, 1.5)).filter(
    (p) => p.metal < most.metal && p.rough < most.rough && p.light < most.light,
  );
  return extent(groups(film, 1.5)[0]);
};

const below =
  (least: number): Second =>
  (surface, item) => {
    const frame = boxOf(item, 2);
    const level = frameLevel(surface, frame);
    const list = pixels(surface, frame);
    const cut = list.filter((p) => level(p) - p.z > least);
    return { ...extent(groups(cut, 5)[0]), size: Math.max(...cut.map((p) => level(p) - p.z)) };
  };

/** Plate line of one side at x by the median of all pairwise slopes (Theil 1950, Sen 1968). */
function plate(surface: Surface, side: number, x: number, from: number, to: number): (y: number) => number {
  const points: [number, number][] = [];
  for (let out = from; out <= to; out += 0.4)
    for (const dx of [-0.5, 0, 0.5]) points.push([side * out, heightAt(surface, x + dx, side * out)]);
  const slopes: number[] = [];
  for (let a = 0; a < points.length; a++)
    for (let b = a + 3; b < points.length; b++) {
      const run = points[b][0] - points[a][0];
      if (Math.abs(run) > 1.5) slopes.push((points[b][1] - points[a][1]) / run);
    }
  const slope = median(slopes);
  const level = median(points.map(([y, z]) => z - slope * y));
  return (y) => level + slope * y;
}

const globules: Second = (surface, item, asked) => {
  const side = Math.sign(item.across);
  const near = Math.min(...item.outline.map(([, y]) => y * side));
  const lines = new Map<number, { plate: (y: number) => number; toe: number }>();
  const lineAt = (x: number) => {
    const known = lines.get(x);
    if (known) return known;
    const line = plate(surface, side, x, near + 2, near + 8);
    // from the middle of the weld outwards, the first place that is down on the plate
    let out = 2;
    while (heightAt(surface, x, side * out) - line(side * out) > 0.12) out += 0.05;
    const made = { plate: line, toe: out };
    lines.set(x, made);
    return made;
  };
  const box = { x0: asked.x - 4, x1: asked.x + asked.length + 4, y0: side < 0 ? -23 : 0, y1: side < 0 ? 0 : 23 };
  const raised = pixels(surface, box).filter((p) => {
    const { plate: line, toe } = lineAt(p.x);
    return p.y * side > toe + 0.6 && p.z - line(p.y) > 0.1;
  });
  return extent(groups(raised, 4)[0]);
};

const burnt: Second = (surface, item) => {
  const box = boxOf(item, 1);
  const x = item.start;
  const low = plate(surface, -1, x, 7, 13);
  const high = plate(surface, 1, x, 7, 13);
  const chord = (y: number) => low(-6) + ((high(6) - low(-6)) * (y + 6)) / 12;
  const deep = pixels(surface, box).filter((p) => chord(p.y) - p.z > 0.6);
  return point(extent(groups(deep, 0.3)[0]));
};

/** Crest line along the run: the largest height within 1.5 mm of the run's middle, column by column. */
const restart: Second = (surface, item, asked) => {
  const crest = (x: number) => {
    let top = -99;
    for (const p of pixels(surface, { x0: x - 0.01, x1: x + 0.01, y0: item.across - 1.5, y1: item.across + 1.5 }))
      top = Math.max(top, p.z);
    return top;
  };
  const columns = (from: number, to: number) => {
    const list: { x: number; z: number }[] = [];
    for (let i = Math.round(from / PIXEL - 0.5); i <= Math.round(to / PIXEL - 0.5); i++)
      list.push({ x: (i + 0.5) * PIXEL, z: crest((i + 0.5) * PIXEL) });
    return list;
  };
  const own = [...columns(asked.x - 24, asked.x - 12), ...columns(asked.x + 12, asked.x + 24)];
  const level = own.reduce((sum, c) => sum + c.z, 0) / own.length;
  const sign = asked.variant === "gap" ? -1 : 1;
  const near = columns(asked.x - 9, asked.x + 9).map(({ x, z }) => ({ x, height: sign * (z - level) }));
  const top = near.reduce((a, b) => (b.height > a.height ? b : a));
  let first = near.indexOf(top);
  let last = first;
  while (first > 0 && near[first - 1].height > top.height / 2) first--;
  while (last < near.length - 1 && near[last + 1].height > top.height / 2) last++;
  const middle = (near[first].x + near[last].x) / 2;
  return { start: middle, end: middle, across: item.across, size: top.height };
};

const SECOND: Readonly<Record<string, Second>> = {
  "surface-pore": single,
  "crater-pipe": single,
  "clustered-porosity": many(0.12, 3),
  "root-porosity": many(0.13, 6),
  "longitudinal-crack": crack,
  "transverse-crack": crack,
  "crater-crack": crack,
  "slag-residue": slag,
  "stray-arc": below(0.08),
  "grinding-mark": below(0.08),
  "chipping-mark": below(0.08),
  "light-grinding": below(0.06),
  spatter: globules,
  "burn-through": burnt,
  "poor-restart": restart,
  "sound-stop": restart,
};

/** Types whose truth has a size that the second opinion works out, and how far the two may lie apart, mm. */
const SIZE_TOLERANCE: Readonly<Record<string, number>> = {
  // A mouth is read at 35 % of the depth below the rim; the two rims are read on other rings, and one pixel more or less
  // all round the mouth is 0.125 mm.
  "surface-pore": 0.13,
  "crater-pipe": 0.13,
  "clustered-porosity": 0.13,
  "grinding-mark": 0.05,
  "light-grinding": 0.05,
  "chipping-mark": 0.05,
  "poor-restart": 0.05,
  "sound-stop": 0.05,
};

/** On the back of a bead the two rings of a large hole lie at different heights: a tenth of its mouth. */
const PER_MOUTH = 0.1;

interface Case {
  readonly seed: string;
  readonly face: "cap" | "root";
  readonly asked: readonly Asked[];
}

const CASES: readonly Case[] = [
  {
    seed: "second opinion a",
    face: "cap",
    asked: [
      { type: "surface-pore", x: 22, length: 0, severity: 1 },
      { type: "surface-pore", x: 45, length: 0, severity: 2.3 },
      { type: "clustered-porosity", x: 65, length: 9, severity: 1.1 },
      { type: "clustered-porosity", x: 95, length: 16, severity: 1.8 },
      { type: "crater-pipe", x: 150, length: 0, severity: 1.2 },
      { type: "crater-pipe", x: 205, length: 0, severity: 1.9 },
      { type: "sound-stop", x: 260, length: 0, severity: 0.3 },
    ],
  },
  {
    seed: "second opinion b",
    face: "cap",
    asked: [
      { type: "longitudinal-crack", variant: "centre", x: 18, length: 30, severity: 0.14 },
      { type: "longitudinal-crack", variant: "toe", x: 62, length: 24, severity: 0.16 },
      { type: "longitudinal-crack", variant: "haz", x: 100, length: 28, severity: 0.15, side: -1 },
      { type: "transverse-crack", x: 145, length: 0, severity: 8 },
      { type: "slag-residue", variant: "toe", x: 165, length: 12, severity: 1.2 },
      { type: "slag-residue", variant: "toe", x: 190, length: 20, severity: 1.8, side: -1 },
      { type: "crater-crack", x: 250, length: 0, severity: 5 },
    ],
  },
  {
    seed: "second opinion c",
    face: "cap",
    asked: [
      { type: "stray-arc", x: 20, length: 6, severity: 0.3 },
      { type: "stray-arc", x: 45, length: 12, severity: 0.5, side: -1 },
      { type: "spatter", x: 75, length: 20, severity: 0.8 },
      { type: "grinding-mark", x: 115, length: 16, severity: 0.35 },
      { type: "grinding-mark", x: 150, length: 26, severity: 0.75, side: -1 },
      { type: "chipping-mark", x: 195, length: 5, severity: 0.3 },
      { type: "chipping-mark", x: 215, length: 10, severity: 0.55, side: -1 },
      { type: "light-grinding", x: 245, length: 20, severity: 0.12 },
    ],
  },
  {
    seed: "second opinion d",
    face: "cap",
    asked: [
      { type: "poor-restart", variant: "hump", x: 60, length: 0, severity: 1.4 },
      { type: "poor-restart", variant: "gap", x: 130, length: 0, severity: 1.6 },
      { type: "poor-restart", variant: "hump", x: 200, length: 0, severity: 2.1 },
      { type: "spatter", x: 240, length: 28, severity: 1.2, side: -1 },
    ],
  },
  {
    seed: "second opinion e",
    face: "root",
    asked: [
      { type: "burn-through", x: 30, length: 0, severity: 5 },
      { type: "burn-through", x: 62, length: 0, severity: 7.5 },
      { type: "root-porosity", x: 85, length: 10, severity: 0.8 },
      { type: "root-porosity", x: 115, length: 20, severity: 1.2 },
      { type: "longitudinal-crack", variant: "centre", x: 150, length: 24, severity: 0.16 },
      { type: "slag-residue", variant: "toe", x: 185, length: 12, severity: 1.3 },
      { type: "poor-restart", variant: "hump", x: 240, length: 0, severity: 2 },
    ],
  },
  {
    seed: "second opinion f",
    face: "root",
    asked: [
      { type: "surface-pore", x: 25, length: 0, severity: 1.4 },
      { type: "transverse-crack", x: 50, length: 0, severity: 5 },
      { type: "crater-crack", x: 100, length: 0, severity: 3.4 },
      { type: "poor-restart", variant: "gap", x: 170, length: 0, severity: 1.8 },
      { type: "grinding-mark", x: 200, length: 20, severity: 0.5 },
      { type: "stray-arc", x: 250, length: 8, severity: 0.4 },
    ],
  },
];

const made = new Map<Case, AskedFace>();
const faceOf = (one: Case): AskedFace => {
  const face = made.get(one) ?? askedFace(one.seed, one.face, one.asked);
  made.set(one, face);
  return face;
};

describe.each(CASES)("truth of the $face face of seed $seed", (one) => {
  it.each(one.asked.map((asked, n) => ({ name: `${asked.type} ${asked.variant ?? ""}`, n, asked })))(
    "agrees with the second opinion on $name at $asked.x mm",
    ({ n, asked }) => {
      const { surface, found } = faceOf(one);
      const item = found[n];
      if (!item) throw new Error(`nothing was found of ${asked.type} at ${asked.x}`);
      const second = SECOND[asked.type](surface, item, asked);
      const tolerance = WIDER_TOLERANCE[asked.type] ?? PLACE_TOLERANCE;
      expect(Math.abs(second.start - item.start), "start").toBeLessThan(tolerance);
      expect(Math.abs(second.end - item.end), "end").toBeLessThan(tolerance);
      expect(Math.abs(second.across - item.across), "across").toBeLessThan(PLACE_TOLERANCE);
      if (item.size !== null) {
        expect(Math.abs((second.size as number) - item.size), "size").toBeLessThan(
          asked.type === "surface-pore"
            ? Math.max(SIZE_TOLERANCE[asked.type], PER_MOUTH * item.size)
            : SIZE_TOLERANCE[asked.type],
        );
      }
    },
  );
});
