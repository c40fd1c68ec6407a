import { clamp, ease, mix, tabulate } from "../../math";
import { columnX, type Grid, gradient1, gradientRow, nearestRow, rowsBetween, rowY } from "../../surface";
import { type Field, mixBetween, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { WELD_TONES as TONES } from "./tones";

/** Wear of the prepared edges: waver of the corner, its rounding, and nicks; mm. */
const CORNER = { waver: 0.05, wavelength: 30, rounding: 0.06, roundedOver: 0.15 };

/** Cuts the joint as it lay open before the last runs: walls from the plates' edges down to the level below. */
export function cutGroove(work: FaceWork): void {
  const { strip, plan } = work;
  const seed = work.random.child("groove").seed();
  const floorOf = levelBetweenPlates(work);
  const lines = linesOf(strip.grid, seed);
  const rows = rowsBetween(strip.grid, [-plan.groove - 1, plan.groove + 1]);
  for (let j = rows.first; j < rows.end; j++) cutRow(work, lines, floorOf, seed, j);
}

/** No more than this of the floor's unevenness is seen above its level, mm. */
const FLOOR = { uneven: 0.12, most: 0.15 };

function cutRow(work: FaceWork, lines: Lines, floorOf: Level, seed: number, j: number): void {
  const { grid, z, parent, brush } = work.strip;
  const { groove, wallSlope, fill } = work.plan;
  const isRoot = work.face === "root";
  const y = rowY(grid, j);
  const corner = y < 0 ? lines.minus : lines.plus;
  const { uneven, worn } = lines;
  gradientRow(grid, y, 2, 1.45, seed + 3, uneven);
  gradientRow(grid, y, 1.3, 0.5, seed + 7, worn);
  for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
    const inside = groove + corner[i] - Math.abs(y);
    if (inside < -0.15) continue;
    const wall = parent[k] - Math.max(0, inside) * wallSlope;
    const level = floorOf(i, y) + fill[i];
    // a floor well below the wall does not show
    const floor = wall - level > FLOOR.most ? level : level + FLOOR.uneven * uneven[i];
    // further inside than this nothing is left of the rounding
    const rounding =
      inside > 6 * CORNER.roundedOver ? 0 : CORNER.rounding * Math.exp(-((inside / CORNER.roundedOver) ** 2));
    z[k] = Math.min(z[k], Math.max(wall, floor) - rounding);
    if (inside >= -0.1 && inside <= 0.5) z[k] -= nick(inside, lines.nicked[i] + 0.3 * worn[i]);
    if (inside <= 0) continue;
    const share = ease(0, 0.12, inside);
    brush[k] *= 1 - share;
    if (wall > floor) paintWall(work.strip, k, clamp(0.5 + 0.6 * worn[i] + lines.cut[i], 0, 1), share);
    else paintFloor(work.strip, k, share, isRoot);
  }
}

/** What is the same across the joint, a value per column. */
interface Lines {
  /** Waver of both corners, mm. */
  readonly minus: Float32Array;
  readonly plus: Float32Array;
  readonly nicked: Float32Array;
  readonly cut: Float32Array;
  /** Noise of the row being cut: of its floor, and of nicks and cut faces. */
  readonly uneven: Float64Array;
  readonly worn: Float64Array;
}

function linesOf(grid: Grid, seed: number): Lines {
  const along = (wavelength: number, own: number, height: number) =>
    tabulate(grid.columns, (i) => height * gradient1(columnX(grid, i) / wavelength, own));
  return {
    minus: along(CORNER.wavelength, seed, CORNER.waver),
    plus: along(CORNER.wavelength, seed + 1, CORNER.waver),
    nicked: along(2.3, seed + 8, 1),
    cut: along(6, seed + 9, 0.4),
    uneven: new Float64Array(grid.columns),
    worn: new Float64Array(grid.columns),
  };
}

/** Depth of a nick in the corner, mm. */
const nick = (inside: number, nicked: number): number =>
  0.07 * ease(0.25, 0.6, nicked) * Math.exp(-(((inside - 0.12) / 0.2) ** 2));

/** A height, mm, at column i and y mm across. */
type Level = (i: number, y: number) => number;

/** Plates' level across the joint, mm at column i: a slope from one edge to the other where they stand at different heights. */
export function levelBetweenPlates(work: FaceWork): Level {
  const { strip, plan } = work;
  const { grid, parent } = strip;
  const low = edgeRow(grid, -plan.groove);
  const high = edgeRow(grid, plan.groove);
  return (i, y) => mix(parent[low + i], parent[high + i], clamp((y + plan.groove) / (2 * plan.groove), 0, 1));
}

const edgeRow = (grid: Grid, y: number): number => nearestRow(grid, y) * grid.columns;

/** Cut and ground faces: oxide and steel in patches. */
function paintWall(strip: Field, k: number, cut: number, share: number): void {
  mixBetween(strip, k, TONES.oxidePale, TONES.steel, 0.65 * cut, 0.55, 0.4, share);
}

/** Oxide; at the bottom of an open root slag. */
function paintFloor(strip: Field, k: number, share: number, isRoot: boolean): void {
  mixMaterial(strip, k, TONES.oxide, 0.65, 0.25, share);
  if (isRoot) mixMaterial(strip, k, TONES.slag, 0.8, 0, 0.8);
}
