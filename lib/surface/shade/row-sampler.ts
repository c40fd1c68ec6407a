import type { Patch } from "../surface";
import { createPlanes, type SheetPlanes } from "./sheet";
import { LINEAR_OF_BYTE } from "./tone";

/** Reads one row of a patch at any place and scale into row buffers as long as the picture is wide. */
export interface RowSampler {
  readonly planes: SheetPlanes;
  read(y: number): void;
}

const bounded = (index: number, count: number): number => (index < 0 ? 0 : index >= count ? count - 1 : index);

/** Weights of four samples around a place t past the second: a smooth B-spline, or Catmull-Rom, which passes through the samples. */
function cubicWeights(t: number, smooth: boolean): readonly [number, number, number, number] {
  const r = 1 - t;
  if (smooth) {
    const near = (3 * t * t * t - 6 * t * t + 4) / 6;
    return [(r * r * r) / 6, near, (3 * r * r * r - 6 * r * r + 4) / 6, (t * t * t) / 6];
  }
  return [
    t * (-0.5 + t * (1 - 0.5 * t)),
    1 + t * t * (-2.5 + 1.5 * t),
    t * (0.5 + t * (2 - 1.5 * t)),
    t * t * (-0.5 + 0.5 * t),
  ];
}

/** Heights are read with a smooth cubic when magnified, so that no facets show; materials between the nearest four. */
export function rowSampler(patch: Patch, open: Float32Array, x0: number, perMm: number, width: number): RowSampler {
  const { grid, height, albedo, finish, brushing } = patch;
  const { columns, rows } = grid;
  const smooth = perMm > 1.05 * grid.perMm;
  const planes = createPlanes(width);
  const columnAt = Float32Array.from(
    { length: width },
    (_, i) => (x0 + (i + 0.5) / perMm - grid.x0) * grid.perMm - 0.5,
  );
  const from = bounded(Math.floor(columnAt[0]) - 1, columns);
  const to = bounded(Math.ceil(columnAt[width - 1]) + 2, columns);
  const span = to - from + 1;
  const taps = new Int32Array(4 * width);
  const weights = new Float32Array(4 * width);
  const coarse = new Int32Array(2 * width);
  const coarseShare = new Float32Array(width);
  for (let i = 0; i < width; i++) {
    const whole = Math.floor(columnAt[i] + 1e-4);
    const four = cubicWeights(Math.max(0, columnAt[i] - whole), smooth);
    for (let n = 0; n < 4; n++) {
      taps[4 * i + n] = bounded(whole - 1 + n, columns) - from;
      weights[4 * i + n] = four[n];
    }
    const block = ((columnAt[i] + 0.5) / columns) * brushing.columns - 0.5;
    coarse[2 * i] = bounded(Math.floor(block), brushing.columns);
    coarse[2 * i + 1] = bounded(Math.floor(block) + 1, brushing.columns);
    coarseShare[i] = block - Math.floor(block);
  }
  const line = createPlanes(span);
  const brushLine = { cosine: new Float32Array(brushing.columns), sine: new Float32Array(brushing.columns) };

  function readLine(y: number): void {
    const place = (y - grid.y0) * grid.perMm - 0.5;
    const whole = Math.floor(place + 1e-4);
    const t = Math.max(0, place - whole);
    const [w0, w1, w2, w3] = cubicWeights(t, smooth);
    const q0 = bounded(whole - 1, rows) * columns + from;
    const q1 = bounded(whole, rows) * columns + from;
    const q2 = bounded(whole + 1, rows) * columns + from;
    const q3 = bounded(whole + 2, rows) * columns + from;
    const s = 1 - t;
    for (let i = 0; i < span; i++) {
      line.z[i] = w0 * height[q0 + i] + w1 * height[q1 + i] + w2 * height[q2 + i] + w3 * height[q3 + i];
      line.open[i] = s * open[q1 + i] + t * open[q2 + i];
      const a = 3 * (q1 + i);
      const b = 3 * (q2 + i);
      line.red[i] = s * LINEAR_OF_BYTE[albedo[a]] + t * LINEAR_OF_BYTE[albedo[b]];
      line.green[i] = s * LINEAR_OF_BYTE[albedo[a + 1]] + t * LINEAR_OF_BYTE[albedo[b + 1]];
      line.blue[i] = s * LINEAR_OF_BYTE[albedo[a + 2]] + t * LINEAR_OF_BYTE[albedo[b + 2]];
      line.rough[i] = (s * finish[a] + t * finish[b]) / 255;
      line.metal[i] = (s * finish[a + 1] + t * finish[b + 1]) / 255;
      line.brush[i] = (s * finish[a + 2] + t * finish[b + 2]) / 255;
    }
    const block = ((place + 0.5) / rows) * brushing.rows - 0.5;
    const p0 = bounded(Math.floor(block), brushing.rows) * brushing.columns;
    const p1 = bounded(Math.floor(block) + 1, brushing.rows) * brushing.columns;
    const share = block - Math.floor(block);
    for (let i = 0; i < brushing.columns; i++) {
      const { values } = brushing;
      brushLine.cosine[i] = ((1 - share) * values[2 * (p0 + i)] + share * values[2 * (p1 + i)] - 128) / 127;
      brushLine.sine[i] = ((1 - share) * values[2 * (p0 + i) + 1] + share * values[2 * (p1 + i) + 1] - 128) / 127;
    }
  }

  function read(y: number): void {
    readLine(y);
    for (let i = 0, w = 0; i < width; i++, w += 4) {
      const b = taps[w + 1];
      const c = taps[w + 2];
      planes.z[i] =
        weights[w] * line.z[taps[w]] +
        weights[w + 1] * line.z[b] +
        weights[w + 2] * line.z[c] +
        weights[w + 3] * line.z[taps[w + 3]];
      const place = columnAt[i];
      const t = Math.max(0, place - Math.floor(place + 1e-4));
      planes.red[i] = line.red[b] + t * (line.red[c] - line.red[b]);
      planes.green[i] = line.green[b] + t * (line.green[c] - line.green[b]);
      planes.blue[i] = line.blue[b] + t * (line.blue[c] - line.blue[b]);
      planes.rough[i] = line.rough[b] + t * (line.rough[c] - line.rough[b]);
      planes.metal[i] = line.metal[b] + t * (line.metal[c] - line.metal[b]);
      planes.brush[i] = line.brush[b] + t * (line.brush[c] - line.brush[b]);
      planes.open[i] = line.open[b] + t * (line.open[c] - line.open[b]);
      const left = coarse[2 * i];
      const right = coarse[2 * i + 1];
      const u = coarseShare[i];
      planes.cosine[i] = brushLine.cosine[left] + u * (brushLine.cosine[right] - brushLine.cosine[left]);
      planes.sine[i] = brushLine.sine[left] + u * (brushLine.sine[right] - brushLine.sine[left]);
    }
  }
  return { planes, read };
}
