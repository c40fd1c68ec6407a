import { clamp, ease } from "../../math";
import { fractal2, gradient2, hash01 } from "../../surface";

/** What a place looks like where scale flakes off in layers. */
export interface Flaking {
  /** Layers that lie there, 0 bare metal; a fraction at the thin edge of the lowest. */
  readonly layers: number;
  /** Distance behind the edge of the topmost layer, mm. */
  readonly behind: number;
  /** How far that edge has lifted, 0..1. */
  readonly lifted: number;
  /** Number 0..1 of the topmost layer's flake, and distance from the crack round it, mm. */
  readonly own: number;
  readonly crack: number;
}

/** Size of the flakes of each layer from the lowest up, mm. */
const FLAKES = [3.4, 2.3, 1.5] as const;
/** How much thicker it must be for one layer more. */
const STEP = 0.3;

/** Distance to the nearest crack of a crust that broke into angular flakes of mean size `size` mm, and the flake's number. */
function flakeAt(x: number, y: number, size: number, seed: number): { crack: number; own: number } {
  const u = x / size + 0.4 * fractal2(x / (0.9 * size), y / (0.9 * size), seed + 5, 3, 0.6);
  const v = y / (0.8 * size) + 0.4 * fractal2(x / (0.9 * size), y / (0.9 * size), seed + 6, 3, 0.6);
  // squares of the distances to the nearest two middles
  let first = 81;
  let second = 81;
  let own = 0;
  for (let j = Math.floor(v) - 1; j <= Math.floor(v) + 1; j++)
    for (let i = Math.floor(u) - 1; i <= Math.floor(u) + 1; i++) {
      const du = u - i - hash01(i, j, seed);
      const dv = v - j - hash01(i, j, seed + 1);
      const away = du * du + dv * dv;
      if (away < first) {
        second = first;
        first = away;
        own = hash01(i, j, seed + 2);
      } else if (away < second) second = away;
    }
  return { crack: 0.5 * (Math.sqrt(second) - Math.sqrt(first)) * size, own };
}

/**
 * Layers of scale at a place where it would be `thick` (below 0 none, 1 all of them): each layer ends a little before the one
 * below it, along cracks or ragged, and flakes of it have come off.
 */
export function flakingAt(x: number, y: number, thick: number, seed: number): Flaking {
  const ragged = 0.12 * fractal2(x / 2.2, y / 1.8, seed + 31, 4, 0.62) + 0.05 * gradient2(x / 0.4, y / 0.4, seed + 32);
  let found: Flaking = { layers: 0, behind: 0, lifted: 0, own: 0, crack: 1 };
  for (let n = 0; n < FLAKES.length; n++) {
    const { crack, own } = flakeAt(x, y, FLAKES[n], seed + 100 * n);
    // a flake comes off whole: the border follows the cracks as often as the thickness
    const loose = 0.34 * (own - 0.5) * ease(0, 0.25, crack + 0.02);
    const over = thick - n * STEP - 0.04 + 1.5 * ragged - loose;
    if (over <= 0) break;
    const behind = Math.min(over * 2.6, n > 0 || own > 0.6 ? crack + over : 9);
    const lifted =
      clamp(1.2 * gradient2(x / 2.6, y / 2.6, seed + 40 + n) + 0.5 * (own - 0.3), 0, 1) * ease(0.55, 0, behind);
    found = { layers: n + Math.min(1, over / (n > 0 ? 0.09 : 0.24)), behind, lifted, own, crack };
  }
  return found;
}
