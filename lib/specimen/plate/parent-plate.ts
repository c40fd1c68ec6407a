import { clamp, ease } from "../../math";
import { columnX, hash01, noiseRows, rowY, type WriteRow, withGridRoom } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { parentHeight } from "../parent";
import type { FaceWork, Look } from "../work";
import { layCleaned } from "./cleaned-plate";
import { layHandlingScratches } from "./handling-scratches";
import { patchesOf } from "./patches";
import { plateNoiseRows, plateSeed } from "./plate-noise";
import { type Springing, springing } from "./sprung-scale";
import { PLATE_TONES as TONES } from "./tones";

/** Parent plates of the joint with mill scale and its lost flakes, or blasted or pickled, with rust and handling scratches; fills the strip's shared noise. */
export function layParentPlate(work: FaceWork): void {
  for (const field of patchesOf(work)) withGridRoom(() => layPatch(work, field));
  layHandlingScratches(work);
}

/** The noise of one row of a patch, one value per column. */
const LINES = ["blotch", "blotchFine", "micro", "flake", "streak", "zone", "long", "short"] as const;
/** Where the joint is cut out of the plates nothing of their skin is left: the weld wants this noise there, the height the waves. */
const LINES_CUT_AWAY = ["micro", "long", "short"] as const;
/** Waver and nicks of the edges stay within this, mm. */
const LEFT_OF_EDGE = 1.5;
type Lines = Readonly<Record<(typeof LINES)[number], Float32Array>>;

/** Row by row: most of the noise is wanted only here, and a row of it stays in the processor's cache. */
function layPatch(work: FaceWork, field: Field): void {
  const { grid } = field;
  const seed = plateSeed(work);
  const write: Readonly<Record<keyof Lines, WriteRow>> = {
    ...plateNoiseRows(work, field),
    streak: noiseRows(grid, 110, 4.2, seed + 6, 2, 0.6),
    zone: noiseRows(grid, 70, 55, seed + 8, 2),
    long: noiseRows(grid, 44, 44, seed + 1),
    short: noiseRows(grid, 9, 9, seed + 2),
  };
  const line = () => new Float32Array(grid.columns);
  const lines: Lines = {
    blotch: line(),
    blotchFine: line(),
    micro: line(),
    flake: line(),
    streak: line(),
    zone: line(),
    long: line(),
    short: line(),
  };
  const { plate, rust } = work.look;
  const sprung = springing(work, grid);
  field.metal.fill(SCALE_METAL);
  const cutAway = work.plan.groove - LEFT_OF_EDGE;
  for (let j = 0; j < grid.rows; j++) {
    const isCutAway = Math.abs(rowY(grid, j)) < cutAway;
    for (const name of isCutAway ? LINES_CUT_AWAY : LINES) write[name](j, lines[name], 0);
    if (field === work.strip) keepNoise(work, lines, j * grid.columns);
    layParent(work, field, lines, j);
    if (isCutAway) {
      leaveBare(field, j);
      continue;
    }
    if (plate === "mill-scale") layScale(field, lines, sprung, j, rust, seed + 9);
    else layCleaned(field, lines, j, plate, rust, seed + 9);
    shadeRow(field, j, work.look);
  }
}

function keepNoise({ noise }: FaceWork, lines: Lines, at: number): void {
  noise.blotch.set(lines.blotch, at);
  noise.blotchFine.set(lines.blotchFine, at);
  noise.micro.set(lines.micro, at);
  noise.flake.set(lines.flake, at);
}

/** Untextured height: the joint's geometry, straight along x, and the rolling waves of the plate. */
function layParent(work: FaceWork, field: Field, { long, short }: Lines, j: number): void {
  const { grid, parent } = field;
  const y = rowY(grid, j);
  const last = grid.columns - 1;
  const start = parentHeight(work.face, work.joint, work.plates, columnX(grid, 0), y);
  const rise = (parentHeight(work.face, work.joint, work.plates, columnX(grid, last), y) - start) / last;
  for (let i = 0, k = j * grid.columns; i <= last; i++, k++) {
    parent[k] = start + rise * i + 0.035 * long[i] + 0.01 * short[i];
  }
}

/** Where the joint is cut out there is no skin. */
function leaveBare({ grid, z, parent, red, green, blue, rough }: Field, j: number): void {
  const from = j * grid.columns;
  const end = from + grid.columns;
  z.set(parent.subarray(from, end), from);
  for (const plane of [red, green, blue, rough]) plane.fill(0, from, end);
}

/** No two plates take in light alike: darker and paler ones, bluish and brownish ones. */
function shadeRow({ grid, red, green, blue }: Field, j: number, { plateLight, plateBlue }: Look): void {
  const warm = plateLight * (1 - 0.07 * plateBlue);
  const cold = plateLight * (1 + 0.08 * plateBlue);
  for (let k = j * grid.columns, end = k + grid.columns; k < end; k++) {
    red[k] *= warm;
    green[k] *= plateLight;
    blue[k] *= cold;
  }
}

const SCALE_METAL = 0.2;
/** Over this much of the noise the edge of a flake breaks down, and the scale before it is lifted. */
const BREAK = 0.035;
const { scaleDark, scalePale, scaleBrown } = TONES;

function layScale(
  field: Field,
  lines: Lines,
  springs: Springing,
  j: number,
  rustiness: number,
  grainSeed: number,
): void {
  const { z, parent, red, green, blue, rough } = field;
  const { blotch, blotchFine, micro, flake, streak, zone } = lines;
  const { columns } = field.grid;
  const { large, small, rolled } = springs;
  const here = springs.row(rowY(field.grid, j));
  for (let i = 0, k = j * columns; i < columns; i++, k++) {
    const grain = hash01(k, 1, grainSeed) - 0.5;
    const fine = micro[i];
    const spot = blotchFine[i];
    // sharp-edged flakes of scale have sprung off, a few large ones and many small; what lies below is a little lower
    const loose = springs.columns[i] + here + 0.75 * zone[i] + rolled * streak[i] + 0.04 * fine;
    const ofLarge = flake[i] + loose - large;
    const ofSmall = 0.8 * spot - 0.3 * flake[i] + 0.7 * loose - small;
    const inside = ofLarge > ofSmall ? ofLarge : ofSmall;
    const lost = inside <= 0 ? 0 : inside >= BREAK ? 1 : inside / BREAK;
    z[k] = parent[k] + 0.016 * (1 - lost) + 0.007 * fine * (0.5 + lost) + 0.005 * spot + 0.004 * grain;
    const pale = clamp(0.45 + 0.5 * blotch[i] + 0.3 * streak[i] + 0.35 * zone[i], 0, 1);
    const warm = 0.55 * spot + 0.25 * blotch[i] + 0.8 * zone[i];
    const brown = warm > 0.05 ? 0.4 * ease(0.05, 0.6, warm) : 0;
    const speck = 1 + 0.15 * fine + 0.1 * spot + 0.2 * grain;
    red[k] = speck * tinted(scaleDark[0], scalePale[0], scaleBrown[0], pale, brown);
    green[k] = speck * tinted(scaleDark[1], scalePale[1], scaleBrown[1], pale, brown);
    blue[k] = speck * tinted(scaleDark[2], scalePale[2], scaleBrown[2], pale, brown);
    rough[k] = 0.47 + 0.12 * spot + 0.1 * fine;
    if (lost > 0) {
      // one that has just sprung off is bright, an old one as dull as the scale
      const fresh = Math.max(0, Math.min(1, 0.5 + 0.9 * blotch[i] - 0.9 * zone[i]));
      mixMaterial(field, k, TONES.bareSteel, 0.56, 0.32, lost * Math.max(0, 0.08 + 0.26 * fresh + 0.14 * fine));
    } else if (inside > -BREAK) {
      // round it the scale stands off and catches the light
      z[k] += 0.008 * (1 + inside / BREAK);
    }
    const rust = rustAt(rustiness, lost, fine, spot, zone[i]);
    if (rust > 0.01) {
      mixMaterial(field, k, fine > 0.15 ? TONES.rustPale : TONES.rust, 0.85, 0.02, rust * 0.6);
      z[k] += 0.012 * rust * fine;
    }
  }
}

const tinted = (dark: number, pale: number, brown: number, share: number, brownShare: number): number => {
  const grey = dark + (pale - dark) * share;
  return grey + (brown - grey) * brownShare;
};

/** Rust begins as pin points where the scale is gone or cracked, and joins to a bloom only on a neglected plate. */
function rustAt(rustiness: number, lost: number, micro: number, blotchFine: number, zone: number): number {
  const blooming = 0.75 * blotchFine + 0.45 * zone + 0.12 * lost;
  const pointed = micro + 0.3 * zone - 0.1 + 0.16 * lost;
  const least = 0.5 - 0.3 * rustiness;
  // most of a plate has neither
  if (blooming <= least && pointed <= 0.42) return 0;
  const bloom = ease(least, 0.85, blooming);
  const points = ease(0.42, 0.62, pointed);
  return rustiness * Math.max(bloom * (0.6 + 0.5 * micro), 0.55 * points);
}
