import { toHalf } from "./half-float";

/** Reach (mm), weight, free depth-over-reach and limit of the three scales at which a hollow loses sky. */
const SKY_SCALES = [
  { reach: 0.22, weight: 0.55, free: 0.1, limit: 1.6 },
  { reach: 0.7, weight: 0.95, free: 0.14, limit: 1.5 },
  { reach: 2.2, weight: 1, free: 0.1, limit: 1.2 },
] as const;

/** Packs height, slopes and open sky of a height field as half floats, four to a pixel. */
export function packRelief(height: Float32Array, columns: number, rows: number, perMm: number): Uint16Array {
  const sky = openSky(height, columns, rows, perMm);
  const relief = new Uint16Array(4 * columns * rows);
  for (let j = 0; j < rows; j++) {
    const above = j > 0 ? columns : 0;
    const below = j < rows - 1 ? columns : 0;
    const acrossScale = perMm / (above && below ? 2 : 1);
    for (let i = 0, k = j * columns; i < columns; i++, k++) {
      const left = i > 0 ? 1 : 0;
      const right = i < columns - 1 ? 1 : 0;
      relief[4 * k] = toHalf(height[k]);
      relief[4 * k + 1] = toHalf(((height[k + right] - height[k - left]) * perMm) / (left + right));
      relief[4 * k + 2] = toHalf((height[k + below] - height[k - above]) * acrossScale);
      relief[4 * k + 3] = toHalf(sky[k]);
    }
  }
  return relief;
}

/** Share of ambient light that reaches each pixel: a pixel below its smoothed surroundings loses some, a ridge gains a little. */
function openSky(height: Float32Array, columns: number, rows: number, perMm: number): Float32Array {
  const sky = new Float32Array(height.length).fill(1);
  for (const { reach, weight, free, limit } of SKY_SCALES) {
    const around = smoothed(height, columns, rows, Math.max(1, Math.round(reach * perMm)));
    for (let k = 0; k < sky.length; k++) {
      const depth = (around[k] - height[k]) / reach;
      if (depth <= 0) {
        sky[k] *= 1 + 0.1 * Math.min(-depth, 0.8);
      } else {
        const felt = depth > free ? Math.min(depth - 0.5 * free, limit) : (0.5 * depth * depth) / free;
        sky[k] /= 1 + weight * felt;
      }
    }
  }
  return sky;
}

/** Two passes of a box of half width `radius` pixels along rows and columns; borders repeat. */
function smoothed(values: Float32Array, columns: number, rows: number, radius: number): Float32Array {
  let from = values;
  for (let pass = 0; pass < 2; pass++) {
    const across = new Float32Array(values.length);
    for (let j = 0; j < rows; j++) slideBox(from, across, j * columns, 1, columns, radius);
    const done = new Float32Array(values.length);
    slideColumns(across, done, columns, rows, radius);
    from = done;
  }
  return from;
}

function slideBox(from: Float32Array, to: Float32Array, start: number, stride: number, count: number, radius: number) {
  const last = count - 1;
  const width = 2 * radius + 1;
  let sum = from[start] * (radius + 1);
  for (let n = 1; n <= radius; n++) sum += from[start + Math.min(n, last) * stride];
  for (let n = 0; n < count; n++) {
    to[start + n * stride] = sum / width;
    sum += from[start + Math.min(n + radius + 1, last) * stride] - from[start + Math.max(n - radius, 0) * stride];
  }
}

/** The same down the columns, a whole row at a time: memory is read in order. */
function slideColumns(from: Float32Array, to: Float32Array, columns: number, rows: number, radius: number) {
  const last = rows - 1;
  const width = 2 * radius + 1;
  const sum = new Float64Array(columns);
  for (let i = 0; i < columns; i++) sum[i] = from[i] * (radius + 1);
  for (let n = 1; n <= radius; n++) {
    const row = Math.min(n, last) * columns;
    for (let i = 0; i < columns; i++) sum[i] += from[row + i];
  }
  for (let j = 0; j < rows; j++) {
    const row = j * columns;
    const entering = Math.min(j + radius + 1, last) * columns;
    const leaving = Math.max(j - radius, 0) * columns;
    for (let i = 0; i < columns; i++) {
      to[row + i] = sum[i] / width;
      sum[i] += from[entering + i] - from[leaving + i];
    }
  }
}
