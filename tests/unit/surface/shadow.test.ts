import { describe, expect, it } from "vitest";
import { type Grid, type Patch, PLATE_GRID, renderView, STRIP_GRID, type Surface } from "@/lib/surface";

type Shape = (x: number, y: number) => number;

/** Heights over part of the usual grids: a flat grey plate with a shape on it. */
function patchOf(grid: Grid, shape: Shape): Patch {
  const size = grid.columns * grid.rows;
  const height = new Float32Array(size);
  for (let j = 0, k = 0; j < grid.rows; j++) {
    for (let i = 0; i < grid.columns; i++, k++) {
      height[k] = shape(grid.x0 + (i + 0.5) / grid.perMm, grid.y0 + (j + 0.5) / grid.perMm);
    }
  }
  const columns = grid.columns / 4;
  const rows = grid.rows / 4;
  return {
    grid,
    height,
    albedo: new Uint8Array(3 * size).fill(140),
    finish: new Uint8Array(3 * size).map((_, n) => (n % 3 === 0 ? 230 : 0)),
    brushing: { columns, rows, values: new Uint8Array(2 * columns * rows).fill(128) },
  };
}

function surfaceOf(shape: Shape, face: Surface["face"] = "cap"): Surface {
  return {
    face,
    strip: patchOf({ ...STRIP_GRID, columns: 60 * 8 }, shape),
    plate: patchOf({ ...PLATE_GRID, columns: 60 * 4 }, shape),
  };
}

const FAR = 100_000;
const VIEW = { x0: 0, x1: 60, y0: -8, y1: 8, perMm: 8 };

/** Brightness along the row nearest to y of a picture under a far lamp, divided by that of an open plate. */
function rowUnder(surface: Surface, flat: Surface, azimuth: number, elevation: number, y: number): number[] {
  const light = { azimuth, elevation, distance: FAR, ambient: 0 };
  const picture = renderView(surface, { ...VIEW, light });
  const open = renderView(flat, { ...VIEW, light });
  const j = Math.round((VIEW.y1 - y) * VIEW.perMm - 0.5);
  return Array.from({ length: picture.width }, (_, i) => {
    const p = 4 * (j * picture.width + i) + 1;
    return picture.pixels[p] / open.pixels[p];
  });
}

/** Where the brightness passes a share of the open plate's, mm, looked for from x on. */
function edgeOf(row: readonly number[], from: number, half: number): number {
  for (let i = Math.round(from * VIEW.perMm); i < row.length - 1; i++) {
    if (row[i] < half && row[i + 1] >= half) {
      return (i + 0.5 + (half - row[i]) / (row[i + 1] - row[i])) / VIEW.perMm;
    }
  }
  throw new Error("no edge of a shadow");
}

/** Screen value at half the torch's light, relative to full light. */
function halfLight(flat: Surface, elevation: number): number {
  const light = { azimuth: 180, elevation, distance: FAR, ambient: 0 };
  const whole = renderView(flat, { ...VIEW, light });
  const half = renderView(flat, { ...VIEW, light: { ...light, power: 1.7 } });
  const p = 4 * (60 * whole.width + 200) + 1;
  return half.pixels[p] / whole.pixels[p];
}

const flat = surfaceOf(() => 0);

describe("shadow under a far lamp", () => {
  // expected lengths are plain trigonometry, h / tan(elevation); the lamp has a size, so half light is where its middle sets.
  // Tolerance 9 % (the march reads filtered heights at geometric steps) or half a pixel of the strip.
  for (const step of [0.5, 2, 4]) {
    for (const elevation of [15, 22, 30, 45]) {
      it(`a step of ${step} mm at ${elevation} degrees`, () => {
        const stepped = surfaceOf((x) => (x < 20 ? step : 0));
        const row = rowUnder(stepped, flat, 180, elevation, 0.5);
        const length = edgeOf(row, 20.3, halfLight(flat, elevation)) - 20;
        const expected = step / Math.tan((elevation * Math.PI) / 180);
        expect(Math.abs(length - expected)).toBeLessThan(Math.max(0.09 * expected, 0.0625));
      });
    }
  }

  it.each([
    [1, 3],
    [0.4, 1],
  ])("a dome %f mm high on a foot of radius %f mm casts a shadow as long as the tangent to it", (high, radius) => {
    const dome = surfaceOf((x, y) => high * Math.max(0, 1 - ((x - 20) ** 2 + (y - 0.0625) ** 2) / radius ** 2));
    const elevation = 18;
    const slope = Math.tan((elevation * Math.PI) / 180);
    // tangent line of slope -tan to z = h (1 - u^2/r^2): touches at u = r^2 tan / 2h and meets the plate at u/2 + h / tan
    const touch = (radius ** 2 * slope) / (2 * high);
    const expected = touch + (high * (1 - touch ** 2 / radius ** 2)) / slope;
    const row = rowUnder(dome, flat, 180, elevation, 0.0625);
    const darkest = Math.round((20 + expected * 0.8) * VIEW.perMm);
    const found = edgeOf(row, darkest / VIEW.perMm - 0.5, halfLight(flat, elevation)) - 20;
    expect(found / expected).toBeGreaterThan(0.94);
    expect(found / expected).toBeLessThan(1.06);
  });

  it("penumbra grows with the height of what casts it", () => {
    const widths = [0.5, 2, 4].map((step) => {
      const row = rowUnder(
        surfaceOf((x) => (x < 20 ? step : 0)),
        flat,
        180,
        18,
        0.5,
      );
      return edgeOf(row, 20.3, 0.9) - edgeOf(row, 20.3, 0.35);
    });
    expect(widths[1]).toBeGreaterThan(2 * widths[0]);
    expect(widths[2]).toBeGreaterThan(1.5 * widths[1]);
  });

  it("falls away from the lamp as it is seen on the screen, on both faces", () => {
    for (const face of ["cap", "root"] as const) {
      const stepped = surfaceOf((_, y) => (Math.abs(y) < 3 ? 2 : 0), face);
      const picture = renderView(stepped, { ...VIEW, light: { azimuth: 90, elevation: 25, distance: FAR } });
      const at = (row: number) => picture.pixels[4 * (row * picture.width + 240) + 1];
      const middle = picture.height / 2;
      // lamp at the top of the screen: shade just below the ridge, light just above it
      expect(at(middle + 3.6 * 8)).toBeLessThan(0.6 * at(middle - 3.6 * 8));
    }
  });
});

describe("pictures", () => {
  it("no step where strip and plate patch meet", () => {
    const waves = surfaceOf((x, y) => 0.3 * Math.sin(x / 3) * Math.cos(y / 4));
    const view = { x0: 5, x1: 55, y0: 20, y1: 32, perMm: 8 };
    const picture = renderView(waves, { ...view, light: { azimuth: 60, elevation: 30 } });
    const jump = (row: number) => {
      let sum = 0;
      for (let i = 0; i < picture.width; i++) {
        const p = 4 * (row * picture.width + i) + 1;
        sum += picture.pixels[p] - picture.pixels[p + 4 * picture.width];
      }
      return sum / picture.width;
    };
    const jumps = Array.from({ length: picture.height - 12 }, (_, n) => Math.abs(jump(n + 5)));
    const seam = (view.y1 - 26) * view.perMm;
    const around = jumps.slice(seam - 5 - 4, seam - 5 + 16);
    expect(Math.max(...around)).toBeLessThan(1.2);
  });

  it("draws the same pixels twice and has a lit bench with the plate's shadow", () => {
    const view = { x0: -8, x1: 68, y0: -83, y1: 83, perMm: 2, light: { azimuth: 135, elevation: 35, distance: 400 } };
    const first = renderView(flat, view);
    expect(renderView(flat, view).pixels).toEqual(first.pixels);
    const at = (x: number, y: number) =>
      first.pixels[4 * (Math.round((view.y1 - y) * 2) * first.width + Math.round((x - view.x0) * 2)) + 1];
    expect(at(62, 0)).toBeLessThan(0.7 * at(-6, 0));
  });
});
