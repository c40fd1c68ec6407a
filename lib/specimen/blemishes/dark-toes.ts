import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1, gradient2, nearestRow, rowY } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import { drawEnds, type Envelope, unevenEnvelope } from "../imperfections/uneven-ends";
import { weldBorder } from "../imperfections/weld-border";
import { forColumns } from "../runs/edit";
import type { FaceWork } from "../work";
import { type BlemishHabit, TOE_OXIDE } from "./blemish-habits";
import { BLEMISH_TONES as TONES } from "./tones";

/** Length of a stretch, mm, and the darkest and faintest. */
const STRETCH = { usual: 20, sigma: 0.6, least: 8, most: 60, dark: [0.25, 0.95] } as const;
/** The crease never lies deeper than this below the plates, mm: undercut begins at 0.1 mm. */
const DEEPEST = 0.04;

interface DarkToe {
  readonly side: 1 | -1;
  readonly from: number;
  readonly to: number;
  readonly dark: number;
  readonly crease: number;
  readonly envelope: Envelope;
  readonly seed: number;
}

/** Here and there a sound toe is a fine dark line with a crease too shallow to be undercut. */
export function darkenToes(work: FaceWork, habit: BlemishHabit, random: RandomStream): void {
  for (const side of [-1, 1] as const) {
    const draw = random.child(`side ${side}`);
    const border = weldBorder(work, side);
    for (let n = Math.round(draw.uniform(...habit.darkToes)); n > 0; n--)
      darken(work, border, drawToe(work, side, habit, draw));
  }
}

function drawToe(work: FaceWork, side: 1 | -1, habit: BlemishHabit, random: RandomStream): DarkToe {
  const length = clamp(random.logNormal(STRETCH.usual, STRETCH.sigma), STRETCH.least, STRETCH.most);
  const from = random.uniform(4, work.joint.length - 4 - length);
  const ends = drawEnds(random, length, [1, 3], [3, 9]);
  return {
    side,
    from,
    to: from + length,
    dark: TOE_OXIDE[work.joint.process] * random.uniform(...STRETCH.dark),
    crease: random.uniform(...habit.toeCrease),
    envelope: unevenEnvelope(from, from + length, ends, 0.9, random.seed()),
    seed: random.seed(),
  };
}

function darken(work: FaceWork, border: Float32Array, toe: DarkToe): void {
  forColumns(work.strip.grid, toe.from, toe.to, (i, x) => {
    if (!Number.isNaN(border[i])) darkenColumn(work.strip, toe, i, x, border[i]);
  });
}

/** One column of pixels across the toe, which lies at y = `at`. */
function darkenColumn(strip: Field, toe: DarkToe, i: number, x: number, at: number): void {
  const { grid, z, parent, clean } = strip;
  const { side, seed, dark } = toe;
  const weight =
    toe.envelope(x) * clamp(0.7 + 0.8 * fractal1(x / 6.1, seed, 3, 0.6) + 0.3 * gradient1(x / 0.9, seed + 1), 0, 1.1);
  if (weight < 0.03) return;
  const middle = 0.02 + 0.06 * gradient1(x / 1.5, seed + 2);
  const half = 0.06 + 0.14 * weight * (0.7 + 0.8 * gradient1(x / 2.6, seed + 3));
  const first = nearestRow(grid, at - 1);
  const last = nearestRow(grid, at + 1);
  for (let j = first; j <= last; j++) {
    const k = j * grid.columns + i;
    if (clean[k] > 0.05) continue;
    const y = rowY(grid, j);
    const out = (y - at) * side - middle;
    const off = Math.abs(out);
    const near = ease(out > 0 ? 0.95 : 0.6, 0.05, off);
    if (near > 0) {
      const breath = near * weight * clamp(0.4 + 0.8 * gradient2(x / 1.5, y / 0.7, seed + 4), 0, 1);
      mixColour(strip, k, TONES.toeBreath, 0.36 * dark * breath);
    }
    const line = ease(1.5, 0.4, off / half) * Math.min(1, 1.2 * weight);
    if (line <= 0) continue;
    const room = Math.max(0, z[k] - parent[k] + DEEPEST);
    z[k] -= Math.min(toe.crease * line, room);
    mixMaterial(strip, k, TONES.toeLine, 0.55, 0.15, 0.9 * line * dark * Math.min(1, 0.35 + 0.75 * weight));
  }
}
