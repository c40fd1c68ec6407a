import { clamp } from "../../math";
import { gradient2 } from "../noise";
import type { Surface } from "../surface";
import { LAMP_HALF_ANGLE, type Lamp } from "./light";

/** The bench lies this far below the upper side of the plate, mm. */
const DROP = 10;
/** Dark painted steel, linear light. */
const DARK = [0.021, 0.0235, 0.0255] as const;
const LIGHT = [0.047, 0.051, 0.054] as const;

export interface BenchTop {
  /** mm by which (x, y) lies outside the plate; 0 or less on it. */
  outside(x: number, y: number): number;
  /** Linear colour of the bench as lit, written into `out`. */
  shade(x: number, y: number, lamp: Lamp, out: Float32Array): void;
}

/** The bench around a plate, with the plate's soft shadow on it. */
export function benchTop(surface: Surface): BenchTop {
  const { grid } = surface.plate;
  const x1 = grid.x0 + grid.columns / grid.perMm;
  const y1 = grid.y0 + grid.rows / grid.perMm;
  const outside = (x: number, y: number) => Math.max(grid.x0 - x, x - x1, grid.y0 - y, y - y1);

  /** Share of the lamp not hidden by the edge of the plate: seven rays over the width of the lamp. */
  function lit(x: number, y: number, ux: number, uy: number, slope: number): number {
    let sum = 0;
    for (let n = -3; n <= 3; n++) {
      const turn = (n / 3.5) * LAMP_HALF_ANGLE;
      const enters = distanceToPlate(x, y, ux - uy * turn, uy + ux * turn);
      if (enters === Number.POSITIVE_INFINITY) sum++;
      else
        sum += clamp(
          0.5 + (0.5 * (Math.atan(slope) - Math.atan(DROP / Math.max(0.01, enters)))) / LAMP_HALF_ANGLE,
          0,
          1,
        );
    }
    return sum / 7;
  }

  function distanceToPlate(x: number, y: number, ux: number, uy: number): number {
    let enters = 0;
    let leaves = Number.POSITIVE_INFINITY;
    for (const [place, step, low, high] of [
      [x, ux, grid.x0, x1],
      [y, uy, grid.y0, y1],
    ]) {
      if (Math.abs(step) < 1e-9) {
        if (place < low || place > high) return Number.POSITIVE_INFINITY;
        continue;
      }
      const a = (low - place) / step;
      const b = (high - place) / step;
      enters = Math.max(enters, Math.min(a, b));
      leaves = Math.min(leaves, Math.max(a, b));
    }
    return enters < leaves ? enters : Number.POSITIVE_INFINITY;
  }

  function shade(x: number, y: number, lamp: Lamp, out: Float32Array): void {
    const dx = lamp.x - x;
    const dy = lamp.y - y;
    const dz = lamp.z + DROP;
    const flat = Math.hypot(dx, dy) || 1e-6;
    const far = Math.hypot(flat, dz);
    const away = outside(x, y);
    const direct =
      lamp.power *
      ((lamp.distance * lamp.distance) / (far * far)) *
      (dz / far) *
      lit(x, y, dx / flat, dy / flat, dz / flat);
    // the plate hides half of the workshop from the bench right beside it
    const ambient = lamp.ambient * (1 - 0.62 * Math.exp(-away / 4) - 0.25 * Math.exp(-away / 0.8));
    const wear = clamp(
      0.45 +
        0.35 * gradient2(x / 31, y / 23, 5) +
        0.2 * gradient2(x / 7, y / 5, 6) +
        0.16 * gradient2(x / 1.3, y / 0.9, 7),
      0,
      1,
    );
    for (let c = 0; c < 3; c++) {
      const albedo = DARK[c] + (LIGHT[c] - DARK[c]) * wear;
      out[c] = albedo * (direct / Math.PI + 1.6 * ambient) + 0.004 * ambient;
    }
  }
  return { outside, shade };
}
