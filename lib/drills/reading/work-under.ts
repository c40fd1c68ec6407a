import type { FilletUse, Heights } from "../../gauges";
import { ease, type Mm, mix } from "../../math";

/** Wide enough for its ends to lie beyond any picture of a gauge, mm. */
const PLATE = { x0: 0, x1: 120, y0: -250, y1: 250 } as const;
/** Middle of the plate along the weld: where the gauges of the reading drill stand. */
export const MIDDLE: Mm = 60;

/** Work on which a gauge shows a value, as far as the gauge's own body leaves room for it. */
export interface Work {
  readonly heights: Heights;
  /** The furthest that the metal reaches towards the moving part, as a value on the scale, mm. */
  readonly most: Mm;
}

/** A cap with a flat crown, or a groove where the height is negative; the bar of the gauge hangs 8 mm over its feet. */
const cap = (height: Mm): Heights => plate((y) => height * rounded(Math.abs(y), 2, 9));

/** A hollow wide enough for the rod, or a ridge where the depth is negative. */
const hollow = (depth: Mm): Heights => plate((y) => -depth * rounded(Math.abs(y), 1.3, 3.6));

/** Two plates, the one at negative y lower by so much, and a weld between them. */
const misaligned = (drop: Mm): Heights =>
  plate((y) => mix(-drop, 0, ease(4, 16, y)) + (y > 3 && y < 17 ? 2.2 * Math.sin(((y - 3) * Math.PI) / 14) ** 2 : 0));

/** A fillet with a flat face and equal legs. */
const fillet = (leg: Mm): Heights => ({
  heightAt: (_x, y) => Math.max(Math.abs(y), leg / Math.SQRT2),
  extent: PLATE,
  corner: 90,
  underside: null,
});

const plate = (section: (y: Mm) => Mm): Heights => ({
  heightAt: (_x, y) => section(y),
  extent: PLATE,
  corner: null,
  underside: null,
});

/** A plate of that thickness with an edge that jaws reach over. */
const edge = (thickness: Mm): Heights => ({
  ...plate(() => 0),
  extent: { ...PLATE, y1: 14 },
  underside: () => -thickness,
});

/** 1 up to `flat`, from there down to 0 at `end`. */
const rounded = (from: Mm, flat: Mm, end: Mm): number => (from <= flat ? 1 : 1 - ease(flat, end, from));

export const WORK: Readonly<
  Record<
    "height-gauge" | "depth-gauge" | "hook-gauge" | "caliper" | FilletUse,
    { readonly most: Mm; readonly of: (size: Mm) => Heights }
  >
> = {
  "height-gauge": { most: 7, of: cap },
  "depth-gauge": { most: 8, of: hollow },
  "hook-gauge": { most: 10, of: misaligned },
  caliper: { most: 40, of: edge },
  leg: { most: 20, of: fillet },
  // a throat of 14 has legs of 19.8, and the shoulders stand on the plates from 21 on
  throat: { most: 14, of: (throat) => fillet(throat * Math.SQRT2) },
};
