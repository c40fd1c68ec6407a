import { clamp, tabulate } from "../../math";
import { columnX, type Grid, gradient1, value1 } from "../../surface";
import type { HeatHabit } from "../runs";
import type { FaceWork } from "../work";
import type { HeatLine } from "./heat-line";

/** How the hand spread the heat along one side, per column of the strip: it hurries and dwells, and the torch leans over. */
export interface HeatHand {
  /** Distance of a colour from the toe against the usual, 0.4..2.3. */
  readonly reach: Float32Array;
  /** Strength of the colours, 0.12..1.2. */
  readonly vivid: Float32Array;
}

/** The more evenly a process heats, the more of what is seen along the weld comes from the hand, and the less from tearing. */
export function heatHand(work: FaceWork, { heat }: HeatLine, { even }: HeatHabit, seed: number): HeatHand {
  const { grid } = work.strip;
  const loose = 0.25 + 0.9 * even;
  const dwelt = 1 + even;
  const at = (wave: number, own: number) =>
    tabulate(grid.columns, (i) => gradient1(columnX(grid, i) / wave, seed + own));
  const [slow, quick, faint, fainter] = [at(41, 1), at(12.5, 2), at(34, 3), at(9, 4)];
  const reach = tabulate(grid.columns, (i) => {
    const wide = 1 + loose * (0.75 * slow[i] + 0.3 * quick[i]) + dwelt * (heat[i] - 1);
    return clamp(wide, 0.4, 2.3);
  });
  const vivid = tabulate(grid.columns, (i) => {
    const strong = 1 + loose * (1.3 * faint[i] + 0.6 * fainter[i] + 0.05) + 0.8 * even * (heat[i] - 1);
    return clamp(strong, 0.12, 1.2);
  });
  return { reach, vivid };
}

/** Entries of a profile across the brush and how many there are to a mm: longer than any plate is wide, or it begins again. */
const WIRES = { count: 4096, perMm: 12 } as const;

/** The wire brush went along the weld when it was done: what its wires wiped away, 0..1, in streaks that lean a little. */
export interface Wiped {
  readonly profile: Float32Array;
  /** Place in the profile at y = 0, per column. */
  readonly shift: Float32Array;
}

/** What the wires of one side's brush left, across it; the same in every patch. */
export const wiresOf = (seed: number): Float32Array =>
  tabulate(WIRES.count, (n) => {
    const at = n / WIRES.perMm;
    return clamp(0.45 + 0.8 * value1(at / 0.34, seed) + 0.6 * value1(at / 1.3, seed + 1), 0, 1);
  });

export function wireWiped(grid: Grid, profile: Float32Array, seed: number): Wiped {
  const shift = tabulate(grid.columns, (i) => {
    const x = columnX(grid, i);
    return WIRES.perMm * (150 + 0.09 * x + 2.2 * gradient1(x / 27, seed + 2));
  });
  return { profile, shift };
}

/** Share that was wiped away at height y in column i. */
export const wipedAt = ({ profile, shift }: Wiped, i: number, y: number): number =>
  profile[(shift[i] + WIRES.perMm * y) & (WIRES.count - 1)];
