import { beforeAll, describe, expect, it } from "vitest";
import type { Asked } from "./support/asked-face";
import { type LaidFace, laidFace } from "./support/laid-face";
import { type Extent, extent, groups, type Place } from "./support/pixel-groups";
import { PIXEL } from "./support/plain-loops";

/**
 * Truth of cracks, holes and gas tracks against a second opinion that knows what the product does not: the surface before
 * the cut. What was taken away pixel by pixel, or gapes, is grouped and measured by plain loops of its own.
 */
/** One pixel of extent more or less at either end, and a tip that thins out over several. */
const EXTENT_TOLERANCE = 0.75;
/** A mouth is read at 35 % of the depth; one pixel more or less all round it. */
const MOUTH_TOLERANCE = 0.13;

interface Spot extends Place {
  readonly value: number;
}
type Box = Pick<Extent, "start" | "end" | "low" | "high">;
interface Opinion extends Extent {
  readonly size?: number;
}

/** Pixels within a box whose value exceeds a limit. */
function spots({ work }: LaidFace, values: ArrayLike<number>, box: Box, over: number): Spot[] {
  const { columns, rows, x0, y0, perMm } = work.strip.grid;
  const found: Spot[] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const value = values[j * columns + i];
      const x = x0 + (i + 0.5) / perMm;
      const y = y0 + (j + 0.5) / perMm;
      if (value > over && x > box.start && x < box.end && y > box.low && y < box.high) found.push({ x, y, value });
    }
  return found;
}

const boxOf = (asked: Asked): Box => {
  const reach = asked.length > 0 ? 3 : 9;
  return { start: asked.x - reach, end: asked.x + asked.length + reach, low: -20, high: 20 };
};

const removed = ({ sound, work }: LaidFace): Float32Array => sound.map((z, k) => z - work.strip.z[k]);

const cracked =
  (bridge: number) =>
  (face: LaidFace, asked: Asked): Opinion =>
    extent(groups(spots(face, face.work.strip.crack, boxOf(asked), 0.25), bridge)[0]);

/** Every hole at least 0.1 mm deep: connected pixels cut away, its mouth where more than 35 % of its depth is gone. */
function holes(face: LaidFace, asked: Asked): Opinion {
  const cut = groups(spots(face, removed(face), boxOf(asked), 0.04), 1.5 * PIXEL);
  const mouths = cut
    .map((group) => ({ group, depth: Math.max(...group.map(({ value }) => value)) }))
    .filter(({ depth }) => depth >= 0.12)
    .flatMap(({ group, depth }) =>
      groups(
        group.filter(({ value }) => value > 0.35 * depth),
        1.5 * PIXEL,
      ),
    )
    .sort((a, b) => b.length - a.length);
  const all = extent(mouths.flat());
  return { ...all, size: 2 * Math.sqrt((mouths[0].length * PIXEL * PIXEL) / Math.PI) };
}

const tracks =
  (bridge: number) =>
  (face: LaidFace, asked: Asked): Opinion =>
    extent(groups(spots(face, removed(face), boxOf(asked), 0.12), bridge)[0]);

const SECOND: Readonly<Record<string, (face: LaidFace, asked: Asked) => Opinion>> = {
  "surface-pore": holes,
  "fine-pore": holes,
  "linear-porosity": holes,
  "surface-porosity": holes,
  "elongated-cavity": tracks(2.5),
  "worm-hole": tracks(5),
  "radiating-cracks": cracked(2.5),
  "crater-crack": cracked(2.5),
  "transverse-crack": cracked(2.5),
  "longitudinal-crack": cracked(2.5),
  "branching-cracks": cracked(2.5),
  "disconnected-cracks": cracked(6),
};

const CASES: readonly { seed: string; face: "cap" | "root"; asked: readonly Asked[] }[] = [
  {
    seed: "cavities",
    face: "cap",
    asked: [
      { type: "linear-porosity", x: 15, length: 14, severity: 0.6 },
      { type: "linear-porosity", x: 40, length: 30, severity: 1.5 },
      { type: "surface-porosity", x: 82, length: 22, severity: 0.7 },
      { type: "surface-porosity", x: 115, length: 40, severity: 1.3 },
      { type: "elongated-cavity", x: 168, length: 5, severity: 0.8 },
      { type: "elongated-cavity", x: 185, length: 11, severity: 1.8 },
      { type: "worm-hole", variant: "single", x: 208, length: 8, severity: 0.6 },
      { type: "worm-hole", variant: "several", x: 230, length: 16, severity: 1 },
      { type: "fine-pore", x: 260, length: 0, severity: 0.32 },
      { type: "surface-pore", x: 275, length: 0, severity: 0.7 },
    ],
  },
  {
    seed: "cracks",
    face: "cap",
    asked: [
      { type: "radiating-cracks", x: 22, length: 0, severity: 4 },
      { type: "radiating-cracks", x: 48, length: 0, severity: 11 },
      { type: "disconnected-cracks", x: 68, length: 9, severity: 0.12 },
      { type: "disconnected-cracks", x: 92, length: 23, severity: 0.18 },
      { type: "branching-cracks", x: 128, length: 12, severity: 0.1 },
      { type: "branching-cracks", x: 154, length: 30, severity: 0.18 },
      { type: "crater-crack", variant: "across", x: 222, length: 0, severity: 4 },
      { type: "longitudinal-crack", variant: "centre", x: 242, length: 18, severity: 0.09 },
      { type: "transverse-crack", x: 278, length: 0, severity: 3.2 },
    ],
  },
  {
    seed: "root side",
    face: "root",
    asked: [
      { type: "linear-porosity", x: 15, length: 12, severity: 0.6 },
      { type: "elongated-cavity", x: 42, length: 8, severity: 1.2 },
      { type: "radiating-cracks", x: 72, length: 0, severity: 4.5 },
      { type: "disconnected-cracks", x: 92, length: 15, severity: 0.16 },
      { type: "branching-cracks", x: 124, length: 20, severity: 0.14 },
      { type: "crater-crack", variant: "along", x: 195, length: 0, severity: 3 },
      { type: "crater-crack", variant: "star", x: 250, length: 0, severity: 3.5 },
    ],
  },
];

describe.each(CASES)("truth on the $face face of seed $seed", ({ seed, face, asked }) => {
  let laid: LaidFace;
  beforeAll(() => {
    laid = laidFace(seed, face, asked);
  }, 60_000);

  it.each(asked.map((one, n) => ({ ...one, n })))("agrees with the second opinion on $type at $x mm", (one) => {
    const item = laid.after[one.n];
    if (!item) throw new Error(`nothing was found of ${one.type} at ${one.x}`);
    const second = SECOND[one.type](laid, one);
    const isPoint = item.start === item.end;
    const middle = (second.start + second.end) / 2;
    expect(Math.abs((isPoint ? middle : second.start) - item.start), "start").toBeLessThan(EXTENT_TOLERANCE);
    expect(Math.abs((isPoint ? middle : second.end) - item.end), "end").toBeLessThan(EXTENT_TOLERANCE);
    expect(Math.abs(second.across - item.across), "across").toBeLessThan(EXTENT_TOLERANCE);
    if (item.size !== null)
      expect(Math.abs((second.size as number) - item.size), "mouth").toBeLessThan(MOUTH_TOLERANCE);
  });

  it("finds nothing where nothing has been cut yet", () => {
    expect(laid.before).toEqual(asked.map(() => null));
  });
});
