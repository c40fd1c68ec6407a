import { median } from "../../math";
import { columnX } from "../../surface";
import type { Finished, Measured, Range } from "./finished";
import { plateChord } from "./plate-line";
import { columnsIn, gather, type Sounding } from "./sounding";
import { toeNear } from "./toe";

/** How a break in the course of a bead is looked for, mm. */
export interface RidgeSearch {
  readonly range: Range;
  /** Higher or lower than the sound bead by more than this counts. */
  readonly threshold: number;
  readonly bridge: number;
}

const TOE_AVERAGED = 1;
/** The middle of the bead is felt over this share of its width, and evened out over so much along it to both sides, mm. */
const MIDDLE_SHARE = 0.3;
const EVENED_OVER = 0.5;
/** The sound bead on either side: between these distances from what is looked for, mm. */
const SOUND: Range = { from: 4, to: 16 };
const COLUMN_STEP = 4;

/**
 * A lump or notch in the course of a bead. In every column the mean height of the bead's middle (0.3 of its width) above
 * the straight line between the plates at its toes is taken, evened out over 1 mm along; the sound bead is the straight
 * line between the medians of it 4 to 16 mm before and after the range. Size = largest departure from that line up or
 * down; start and end = longest stretch of more than the threshold. Null where there is none.
 */
export function measureRidge(face: Finished, search: RidgeSearch): Measured | null {
  const { strip } = face;
  const { range, threshold, bridge } = search;
  const soundAt = (from: number, to: number): number =>
    median(
      columnsIn(strip, { from, to })
        .filter((_, n) => n % COLUMN_STEP === 0)
        .map((i) => middleOf(face, i).height)
        .filter((height) => !Number.isNaN(height)),
    );
  const before = soundAt(range.from - SOUND.to, range.from - SOUND.from);
  const after = soundAt(range.to + SOUND.from, range.to + SOUND.to);
  const columns = columnsIn(strip, range);
  const raw = columns.map((i) => middleOf(face, i));
  const reach = Math.round(EVENED_OVER * strip.grid.perMm);
  const soundings = raw.map(({ x, y, half }, n): Sounding => {
    const near = raw.slice(Math.max(0, n - reach), n + reach + 1);
    const height = near.reduce((sum, other) => sum + other.height, 0) / near.length;
    const sound = before + ((after - before) * (x - range.from)) / (range.to - range.from);
    return { x, value: Math.abs(height - sound), y, low: y - half, high: y + half };
  });
  return gather(soundings, strip.grid.perMm, threshold, bridge);
}

/** Mean height of the bead's middle in one column over the line between the plates at its toes. */
function middleOf(face: Finished, i: number): { x: number; y: number; half: number; height: number } {
  const { grid, z } = face.strip;
  const x = columnX(grid, i);
  const low = toeNear(face, -1, x, TOE_AVERAGED);
  const high = toeNear(face, 1, x, TOE_AVERAGED);
  const y = (low + high) / 2;
  const half = (high - low) / 2;
  if (Number.isNaN(y)) return { x, y, half, height: Number.NaN };
  const chord = plateChord(face, x, low, high);
  const first = Math.ceil((y - MIDDLE_SHARE * half - grid.y0) * grid.perMm - 0.5);
  const last = Math.floor((y + MIDDLE_SHARE * half - grid.y0) * grid.perMm - 0.5);
  let sum = 0;
  for (let j = first; j <= last; j++) sum += z[j * grid.columns + i] - chord(grid.y0 + (j + 0.5) / grid.perMm);
  return { x, y, half, height: sum / (last - first + 1) };
}
