import { clamp, ease, mix } from "../../math";
import { forEachPixel, type Grid, gradient1, gradient2, nearestRow } from "../../surface";
import { type Colour, mixMaterial } from "../field";
import { between } from "../imperfections/tones";
import type { FaceWork } from "../work";
import { WELD_TONES as TONES } from "./tones";

/** Wear of the prepared edges: waver of the corner, its rounding, and nicks; mm. */
const CORNER = { waver: 0.05, wavelength: 30, rounding: 0.06, roundedOver: 0.15 };

/** Cuts the joint as it lay open before the last runs: walls from the plates' edges down to the level below. */
export function cutGroove(work: FaceWork): void {
  const { strip, plan } = work;
  const seed = work.random.child("groove").seed();
  const isRoot = work.face === "root";
  const floorOf = levelBetweenPlates(work);
  const box = { x0: -1, x1: work.joint.length + 1, y0: -plan.groove - 1, y1: plan.groove + 1 };
  forEachPixel(strip.grid, box, (k, x, y, i) => {
    const inside = insideCorner(x, y, plan.groove, seed);
    if (inside < -0.15) return;
    const wall = strip.parent[k] - Math.max(0, inside) * plan.wallSlope;
    const floor = floorOf(i, y) + plan.fill[i] + 0.12 * gradient2(x / 2, y / 1.45, seed + 3);
    const rounding = CORNER.rounding * Math.exp(-((inside / CORNER.roundedOver) ** 2));
    strip.z[k] = Math.min(strip.z[k], Math.max(wall, floor) - rounding);
    strip.z[k] -= nick(x, y, inside, seed);
    if (inside > 0) paintPreparation(work, k, x, y, inside, wall > floor, isRoot, seed);
  });
}

/** Distance inside the nearer corner of the joint, mm; negative on the plate. */
function insideCorner(x: number, y: number, groove: number, seed: number): number {
  const side = y < 0 ? 0 : 1;
  return groove + CORNER.waver * gradient1(x / CORNER.wavelength, seed + side) - Math.abs(y);
}

function nick(x: number, y: number, inside: number, seed: number): number {
  if (inside < -0.1 || inside > 0.5) return 0;
  const share = ease(0.25, 0.6, gradient1(x / 2.3, seed + 8) + 0.3 * gradient2(x / 1.3, y / 0.5, seed + 7));
  return 0.07 * share * Math.exp(-(((inside - 0.12) / 0.2) ** 2));
}

/** Plates' level across the joint, mm at column i: a slope from one edge to the other where they stand at different heights. */
export function levelBetweenPlates(work: FaceWork): (i: number, y: number) => number {
  const { strip, plan } = work;
  const { grid, parent } = strip;
  const low = edgeRow(grid, -plan.groove);
  const high = edgeRow(grid, plan.groove);
  return (i, y) => mix(parent[low + i], parent[high + i], clamp((y + plan.groove) / (2 * plan.groove), 0, 1));
}

const edgeRow = (grid: Grid, y: number): number => nearestRow(grid, y) * grid.columns;

/** Cut and ground faces: oxide and steel in patches; at the bottom of an open root slag. */
function paintPreparation(
  work: FaceWork,
  k: number,
  x: number,
  y: number,
  inside: number,
  onWall: boolean,
  isRoot: boolean,
  seed: number,
): void {
  const share = ease(0, 0.12, inside);
  const cut = clamp(0.5 + 0.6 * gradient2(x / 1.3, y / 0.5, seed + 7) + 0.4 * gradient1(x / 6, seed + 9), 0, 1);
  const wall: Colour = between(TONES.oxidePale, TONES.steel, 0.65 * cut);
  mixMaterial(work.strip, k, onWall ? wall : TONES.oxide, onWall ? 0.55 : 0.65, onWall ? 0.4 : 0.25, share);
  work.strip.brush[k] *= 1 - share;
  if (isRoot && !onWall) mixMaterial(work.strip, k, TONES.slag, 0.8, 0, 0.8);
}
