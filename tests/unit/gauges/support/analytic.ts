import type { Heights, SeatingRandom } from "@/lib/gauges";

export type Formula = (x: number, y: number) => number;

/** Heights of a formula over a plate 300 by 150 mm. */
export const plateOf = (formula: Formula): Heights => ({
  heightAt: formula,
  extent: { x0: 0, x1: 300, y0: -75, y1: 75 },
  corner: null,
  underside: null,
});

export const FLAT: Formula = () => 0;
export const bead =
  (height: number, half: number): Formula =>
  (_x, y) =>
    Math.max(0, height * (1 - (y / half) ** 2));
export const groove =
  (depth: number, half: number, at = 0): Formula =>
  (_x, y) =>
    -depth * Math.max(0, 1 - Math.abs(y - at) / half);
export const step =
  (drop: number, at = 0): Formula =>
  (_x, y) =>
    y > at ? 0 : -drop;
/** Half a ball of metal on the plate. */
export const spatter =
  (radius: number, x0: number, y0: number): Formula =>
  (x, y) =>
    Math.sqrt(Math.max(0, radius ** 2 - (x - x0) ** 2 - (y - y0) ** 2));

/**
 * A fillet between plates at 90 degrees, looked at along the bisector: legs on the plates at positive and negative y, and a
 * face that bulges over the line from toe to toe by so much in its middle (a parabola; negative: concave).
 */
export function filletOf(positive: number, negative: number, bulge = 0): Heights {
  const [v1, v0] = [positive / Math.SQRT2, -negative / Math.SQRT2];
  return {
    heightAt: (_x, y) => {
      const share = (y - v0) / (v1 - v0);
      if (share <= 0 || share >= 1) return Math.abs(y);
      const chord = -v0 + (v1 + v0) * share;
      return Math.max(Math.abs(y), chord + 4 * bulge * share * (1 - share));
    },
    extent: { x0: 0, x1: 200, y0: -40, y1: 40 },
    corner: 90,
    underside: null,
  };
}

/** A stream that adds nothing: for what is read apart from seating noise. */
export const STEADY: SeatingRandom = { child: () => ({ normal: (mean) => mean }) };
