import { clamp, ease, mix } from "../../math";
import { noiseRows, rowsBetween, rowY, type WriteRow, withGridRoom } from "../../surface";
import { type Colour, type Field, mixMaterial } from "../field";
import { type HeatHabit, PROCESS_STYLES } from "../runs";
import type { FaceWork } from "../work";
import { type HeatHand, heatHand, type Wiped, wipedAt, wiresOf, wireWiped } from "./heat-hand";
import { type HeatLine, heatLine } from "./heat-line";
import { lineFor, patchesOf } from "./patches";
import { plateNoiseRow } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** No colour further than this from the toe, mm: on any weld, and on one of mean heat with the noise at its widest. */
const REACH = { most: 34, mean: 24 };
/** No soot and no dust further than this, mm. */
const DEPOSITS = 22;
/** Reached distance beyond which the steel shows no smoke, one beyond which it shows nothing, and one that nothing reaches. */
const FURTHEST = 8.5;
const WARM = 15;
const FAR = 99;

/** The noise of one row, one value per column. */
interface HeatNoise {
  readonly patch: Float32Array;
  readonly broad: Float32Array;
  readonly smoky: Float32Array;
  readonly plume: Float32Array;
}

/** What has been worked out of one row, a value per column. */
interface HeatRow extends HeatNoise {
  readonly heat: Float32Array;
  /** Distance against that of a mean weld, and strength: what the hand made of it. */
  readonly reach: Float32Array;
  readonly vivid: Float32Array;
  /** Null where the colours are torn anyway. */
  readonly wiped: Wiped | null;
  /** Distance outside the toe, mm. */
  readonly away: Float32Array;
  /** Distance that counts for the colours: torn by the noise, in mm of a mean weld; FAR where there is none. */
  readonly reached: Float32Array;
  readonly strength: Float32Array;
}

/** One side of the weld, along the strip. */
type HeatSide = HeatLine & HeatHand & { readonly wires: Float32Array | null };

const wiredSeed = (seed: number, side: 1 | -1): number => seed + 97 + side;

interface HeatSetting {
  /** How far the colours reach, 1 normal. */
  readonly scale: number;
  readonly tint: number;
  readonly habit: HeatHabit;
  readonly soot: number;
}

/**
 * What the heat of welding leaves on the parent metal: burnt grey at the toe, smoke, a breath of blue and straw beyond, soot
 * and flux dust. Weak and torn into patches; follows the local heat along the weld. The root face gets less.
 */
export function paintHeat(work: FaceWork): void {
  const random = work.random.child("plate/heat");
  const seed = random.seed();
  const habit = PROCESS_STYLES[work.joint.process].heat;
  const setting: HeatSetting = {
    scale: (work.face === "root" ? 0.72 : 1) * random.uniform(0.8, 1.25) * habit.reach,
    tint: work.look.heatTint * (work.face === "root" ? 0.75 : 1),
    habit,
    soot: habit.soot * mix(0.75, 1.35, work.look.sooty),
  };
  const [minus, plus] = ([-1, 1] as const).map((side): HeatSide => {
    const line = heatLine(work, side);
    const wires = habit.even > 0.3 ? wiresOf(wiredSeed(seed, side)) : null;
    return { ...line, ...heatHand(work, line, habit, seed + 70 + 10 * side), wires };
  });
  for (const field of patchesOf(work)) {
    withGridRoom(() => paintSide(work, field, -1, minus, setting, seed));
    withGridRoom(() => paintSide(work, field, 1, plus, setting, seed));
  }
}

function paintSide(
  work: FaceWork,
  field: Field,
  side: 1 | -1,
  line: HeatSide,
  setting: HeatSetting,
  seed: number,
): void {
  const { grid } = field;
  const toe = lineFor(work, grid, line.toe);
  const heat = lineFor(work, grid, line.heat);
  const nearest = line.toe.reduce((least, y) => Math.min(least, side * y), Number.POSITIVE_INFINITY);
  const furthest = line.toe.reduce((most, y) => Math.max(most, side * y), Number.NEGATIVE_INFINITY);
  const leavesDeposits = setting.soot > 0 || setting.habit.dust > 0;
  const near = side * (nearest - 2);
  const far = side * Math.max(furthestColour(line, side, setting), leavesDeposits ? furthest + DEPOSITS : 0);
  const rows = [Math.min(near, far), Math.max(near, far)] as const;
  const { first, end } = rowsBetween(grid, rows);
  if (first >= end) return;
  const write: Readonly<Record<keyof HeatNoise, WriteRow>> = {
    patch: noiseRows(grid, 9, 6, seed + 61, 2, 0.5, rows),
    broad: noiseRows(grid, 26, 18, seed + 62, 1, 0.5, rows),
    smoky: noiseRows(grid, 5, 3.4, seed + 63, 3, 0.75, rows),
    plume: plateNoiseRow(work, field, "blotch", rows),
  };
  const values = () => new Float32Array(grid.columns);
  const row: HeatRow = {
    patch: values(),
    broad: values(),
    smoky: values(),
    plume: values(),
    heat,
    reach: lineFor(work, grid, line.reach),
    vivid: lineFor(work, grid, line.vivid),
    wiped: line.wires ? wireWiped(grid, line.wires, wiredSeed(seed, side)) : null,
    away: values(),
    reached: values(),
    strength: values(),
  };
  for (let j = first; j < end; j++) {
    const y = rowY(grid, j);
    write.patch(j, row.patch, 0);
    write.broad(j, row.broad, 0);
    write.smoky(j, row.smoky, 0);
    write.plume(j, row.plume, 0);
    for (let i = 0; i < grid.columns; i++) row.away[i] = side * (y - toe[i]);
    // short loops: the compiler inlines what is called in each, but not in one long one
    const nearest = measureReach(field, row, setting, j);
    if (setting.habit.warm > 0 && nearest < WARM) paintWarm(field, row, setting.habit, j);
    if (nearest <= FURTHEST) {
      paintSmoke(field, row, setting.habit, j);
      if (setting.habit.blue > 0) paintBlue(field, row, setting.habit, j);
      paintBurnt(field, row, setting.habit, j);
    }
    if (side * y >= furthest + DEPOSITS) continue;
    if (setting.soot > 0) paintSoot(field, row, setting, j);
    if (setting.habit.dust > 0) paintDust(field, row, setting, j);
  }
}

/** How far from the centre line the heat colours the steel, mm. */
function furthestColour({ toe, reach }: HeatSide, side: 1 | -1, { scale }: HeatSetting): number {
  return toe.reduce((most, y, i) => Math.max(most, side * y + Math.min(REACH.most, REACH.mean * scale * reach[i])), 0);
}

/** Distance and strength of the oxide colours of the steel itself; returns the least distance, which many rows have beyond all colours. */
function measureReach(field: Field, row: HeatRow, { scale, tint, habit }: HeatSetting, j: number): number {
  const { bead } = field;
  const { patch, broad, smoky, plume, heat, reach, vivid, wiped, away, reached, strength } = row;
  const y = rowY(field.grid, j);
  const uneven = 1 - 0.5 * habit.even;
  let least = FAR;
  for (let i = 0, k = j * away.length; i < away.length; i++, k++) {
    reached[i] = FAR;
    if (away[i] < -1.5 || away[i] > REACH.most || bead[k] >= 1) continue;
    const from = Math.max(0, away[i]) / (scale * reach[i]);
    const distance = from * (1 + 0.38 * broad[i]) + uneven * (1.9 * patch[i] + 1.1 * smoky[i]);
    if (distance >= WARM) continue;
    reached[i] = distance;
    if (distance < least) least = distance;
    const share = 0.55 + 0.3 * habit.even + 1.2 * smoky[i] + 0.7 * plume[i] + 0.35 * (heat[i] - 1);
    strength[i] = tint * vivid[i] * (1 - bead[k]) * clamp(share, 0.06, 1);
    if (wiped && broad[i] < 0.05) strength[i] *= 1 - 0.85 * ease(0.05, -0.4, broad[i]) * wipedAt(wiped, i, y);
  }
  return least;
}

/** What is left of the light that ground steel throws back, through a film of oxide. */
const throughFilm = (tone: Colour): Colour => [
  tone[0] / TONES.groundSteel[0],
  tone[1] / TONES.groundSteel[1],
  tone[2] / TONES.groundSteel[2],
];
const FILMS = {
  straw: throughFilm(TONES.warm),
  purple: throughFilm(TONES.purple),
  blue: throughFilm(TONES.blue),
} as const;

/** Lays a film of oxide over pixel k: the scratches below stay to be seen. */
function film(
  { red, green, blue, rough: roughness, metal: metalness }: Field,
  k: number,
  through: Colour,
  rough: number,
  metal: number,
  share: number,
): void {
  red[k] *= 1 + (through[0] - 1) * share;
  green[k] *= 1 + (through[1] - 1) * share;
  blue[k] *= 1 + (through[2] - 1) * share;
  roughness[k] += (rough - roughness[k]) * share;
  metalness[k] += (metal - metalness[k]) * share;
}

function paintWarm(field: Field, { reached, strength }: HeatRow, habit: HeatHabit, j: number): void {
  const { band } = field;
  for (let i = 0, k = j * reached.length; i < reached.length; i++, k++) {
    const d = reached[i];
    // on mill scale no colours show
    if (d <= 4.2 || d >= WARM || band[k] === 0) continue;
    const share = ease(4.2, 7.5, d) * ease(WARM, 8, d) * strength[i] * band[k];
    film(field, k, FILMS.straw, 0.46, 0.55, Math.min(0.8, 0.5 * habit.warm * share));
  }
}

function paintSmoke(field: Field, { reached, strength }: HeatRow, habit: HeatHabit, j: number): void {
  const { band, brush } = field;
  for (let i = 0, k = j * reached.length; i < reached.length; i++, k++) {
    const d = reached[i];
    if (d > FURTHEST) continue;
    const smoke = ease(-0.5, 1.8, d) * ease(FURTHEST, 2.6, d) * strength[i];
    mixMaterial(field, k, TONES.smoke, 0.5, 0.42, 0.72 * habit.smoke * smoke * (0.4 + 0.6 * band[k]));
    brush[k] *= 1 - 0.3 * smoke;
  }
}

function paintBlue(field: Field, { reached, strength, plume }: HeatRow, habit: HeatHabit, j: number): void {
  const { band } = field;
  for (let i = 0, k = j * reached.length; i < reached.length; i++, k++) {
    const d = reached[i];
    const torn = plume[i] + habit.even;
    if (d <= 1.6 || d >= 8.2 || torn <= -0.1 || band[k] === 0) continue;
    const share = ease(-0.1, 0.4, torn) * strength[i] * band[k];
    const blue = ease(1.6, 4, d) * ease(7.2, 4.4, d);
    if (blue > 0) film(field, k, FILMS.blue, 0.42, 0.5, Math.min(0.7, 0.17 * habit.blue * blue * share));
    // between blue and straw the film is purple
    const purple = ease(4.2, 5.8, d) * ease(8.2, 6.2, d);
    if (purple > 0) film(field, k, FILMS.purple, 0.43, 0.5, Math.min(0.6, 0.13 * habit.blue * purple * share));
  }
}

function paintBurnt(field: Field, row: HeatRow, habit: HeatHabit, j: number): void {
  const { bead, band, brush } = field;
  const { reached, strength, smoky, patch, heat } = row;
  for (let i = 0, k = j * reached.length; i < reached.length; i++, k++) {
    const d = reached[i];
    if (d > FURTHEST) continue;
    const parent = 1 - bead[k];
    if (d < 3) {
      const burnt = habit.burnt * clamp(0.42 + 1.5 * smoky[i] + 1.1 * patch[i] + 0.4 * (heat[i] - 1), 0, 1);
      const grey = ease(3, 0.1, d) * burnt;
      mixMaterial(field, k, TONES.hot, 0.58, 0.3, 0.72 * grey * parent * (0.35 + 0.65 * strength[i]));
      brush[k] *= 1 - 0.6 * grey;
    }
    if (band[k] < 1) mixMaterial(field, k, TONES.scaleBurnt, 0.62, 0.15, 0.4 * ease(9, 2, d) * (1 - band[k]) * parent);
  }
}

/** Soot blown to one side in plumes. */
function paintSoot(field: Field, { away, smoky, plume, heat }: HeatRow, { soot }: HeatSetting, j: number): void {
  const { bead, brush } = field;
  for (let i = 0, k = j * away.length; i < away.length; i++, k++) {
    if (away[i] < -1.5 || away[i] >= DEPOSITS || bead[k] >= 1) continue;
    const sooty = plume[i] + 0.35 * smoky[i] + 0.3 * (heat[i] - 1) + 0.3 * ease(10, 1, away[i]) - 0.2;
    if (sooty <= 0.12) continue;
    const parent = 1 - bead[k];
    const share = ease(0.12, 0.62, sooty) * ease(0.1, 1.4, away[i] + 0.8 * smoky[i]) * ease(DEPOSITS, 7, away[i]);
    mixMaterial(field, k, TONES.soot, 0.82, 0.06, Math.min(0.8, 0.42 * soot * share) * parent);
    brush[k] *= 1 - 0.5 * share * parent;
  }
}

/** Flux dust between the plumes. */
function paintDust(field: Field, { away, smoky, plume, broad }: HeatRow, { habit }: HeatSetting, j: number): void {
  const { bead } = field;
  for (let i = 0, k = j * away.length; i < away.length; i++, k++) {
    if (away[i] < -1.5 || away[i] >= DEPOSITS || bead[k] >= 1) continue;
    const dusty = smoky[i] + 0.45 * ease(10, 1, away[i]) - 0.34 - 0.3 * plume[i] + 0.15 * broad[i];
    if (dusty <= 0.05) continue;
    const share = ease(0.05, 0.75, dusty) * ease(0.2, 1.6, away[i]) * ease(20, 8, away[i]);
    mixMaterial(field, k, TONES.fluxDust, 0.85, 0.05, Math.min(0.6, 0.22 * habit.dust * share) * (1 - bead[k]));
  }
}
