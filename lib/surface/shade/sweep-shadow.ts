/**
 * Height up to which each pixel lies in shadow of a far lamp: S(p) = max(z(p), S(one step towards the lamp) - step x tan(elevation)).
 * One pass over the grid away from the lamp; where S exceeds z the pixel is in shadow. (ux, uy) points towards the lamp in
 * grid directions, `fall` is the tangent of the lamp's elevation, `perMm` pixels per mm. Returns S.
 */
export function sweepShadow(
  z: Float32Array,
  columns: number,
  rows: number,
  perMm: number,
  ux: number,
  uy: number,
  fall: number,
): Float32Array {
  const shaded = Float32Array.from(z);
  const byRows = Math.abs(uy) >= Math.abs(ux);
  const main = byRows ? uy : ux;
  const drop = fall / (Math.abs(main) * perMm);
  const lines = byRows ? rows : columns;
  const length = byRows ? columns : rows;
  const lineStep = byRows ? columns : 1;
  const pixelStep = byRows ? 1 : columns;
  const backward = main > 0 ? 1 : -1;
  const shift = (byRows ? ux : uy) / Math.abs(main);
  const whole = Math.floor(shift);
  const share = shift - whole;
  const first = main > 0 ? lines - 2 : 1;
  const safeFrom = Math.max(0, -whole);
  const safeTo = Math.min(length, length - 1 - whole);
  for (let line = first; line >= 0 && line < lines; line -= backward) {
    const here = line * lineStep;
    const before = (line + backward) * lineStep + whole * pixelStep;
    for (let n = safeFrom; n < safeTo; n++) {
      const k = here + n * pixelStep;
      const q = before + n * pixelStep;
      const from = shaded[q] + share * (shaded[q + pixelStep] - shaded[q]) - drop;
      if (from > shaded[k]) shaded[k] = from;
    }
  }
  return shaded;
}
