import { describe, expect, it } from "vitest";
import { PLATE_GRID, renderQuick, renderView, STRIP_GRID } from "@/lib/surface";
import { sweepShadow } from "@/lib/surface/shade/sweep-shadow";

const COLUMNS = 240;
const ROWS = 240;
const PER_MM = 8;

describe("swept shadow", () => {
  // geometry: a post of height h shades the plate for h / tan(elevation) behind it
  for (const azimuth of [0, 30, 90, 135, 200, 315]) {
    it(`a wide ridge lit from ${azimuth} degrees shades h / tan(elevation) behind it`, () => {
      const ux = Math.cos((azimuth * Math.PI) / 180);
      const uy = Math.sin((azimuth * Math.PI) / 180);
      const fall = Math.tan((25 * Math.PI) / 180);
      const z = new Float32Array(COLUMNS * ROWS);
      for (let j = 0; j < ROWS; j++) {
        for (let i = 0; i < COLUMNS; i++) {
          const along = (i - 120) * ux + (j - 120) * uy;
          if (along >= 0 && along < 16) z[j * COLUMNS + i] = 2;
        }
      }
      const shaded = sweepShadow(z, COLUMNS, ROWS, PER_MM, ux, uy, fall);
      let length = 0;
      for (let t = 0.5; t < 12; t += 0.02) {
        const i = Math.round(120 - ux * t * PER_MM);
        const j = Math.round(120 - uy * t * PER_MM);
        if (shaded[j * COLUMNS + i] > 1e-4) length = t;
      }
      expect(length / (2 / fall)).toBeGreaterThan(0.93);
      expect(length / (2 / fall)).toBeLessThan(1.07);
    });
  }
});

function patch(grid: typeof STRIP_GRID) {
  const size = grid.columns * grid.rows;
  const height = new Float32Array(size);
  for (let k = 0; k < size; k++) {
    const x = grid.x0 + ((k % grid.columns) + 0.5) / grid.perMm;
    const y = grid.y0 + (Math.floor(k / grid.columns) + 0.5) / grid.perMm;
    height[k] = 2 * Math.max(0, 1 - ((x - 20) / 4) ** 2 - ((y - 3) / 4) ** 2);
  }
  const columns = grid.columns / 4;
  const rows = grid.rows / 4;
  const values = new Uint8Array(2 * columns * rows).fill(128);
  return {
    grid,
    height,
    albedo: new Uint8Array(3 * size).fill(120),
    finish: new Uint8Array(3 * size).map((_, n) => (n % 3 === 0 ? 160 : 60)),
    brushing: { columns, rows, values },
  };
}

describe("quick drawing", () => {
  it("shows light and shade where the full drawing does, on both faces and turned the same way up", () => {
    for (const face of ["cap", "root"] as const) {
      const surface = {
        face,
        strip: patch({ ...STRIP_GRID, columns: 320 }),
        plate: patch({ ...PLATE_GRID, columns: 160 }),
      };
      const view = { x0: 10, x1: 32, y0: -8, y1: 12, perMm: 8, light: { azimuth: 120, elevation: 25, distance: 1e5 } };
      const quick = renderQuick(surface, view);
      const full = renderView(surface, view);
      expect([quick.width, quick.height]).toEqual([full.width, full.height]);
      let both = 0;
      let squareQuick = 0;
      let squareFull = 0;
      const mean = (pixels: Uint8ClampedArray) =>
        pixels.reduce((sum, v, n) => sum + (n % 4 === 1 ? v : 0), 0) / (pixels.length / 4);
      const meanQuick = mean(quick.pixels);
      const meanFull = mean(full.pixels);
      for (let p = 1; p < full.pixels.length; p += 4) {
        const a = quick.pixels[p] - meanQuick;
        const b = full.pixels[p] - meanFull;
        both += a * b;
        squareQuick += a * a;
        squareFull += b * b;
      }
      expect(both / Math.sqrt(squareQuick * squareFull)).toBeGreaterThan(0.9);
    }
  });
});
