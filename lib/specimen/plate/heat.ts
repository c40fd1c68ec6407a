import { clamp, ease, mix } from "../../math";
import { noiseField, rowY } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { type HeatHabit, PROCESS_STYLES } from "../runs";
import type { FaceWork } from "../work";
import { type HeatLine, heatLine } from "./heat-line";
import { lineFor, patchesOf } from "./patches";
import { plateNoise } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** No colour further than this from the toe, mm. */
const REACH = 34;

interface HeatNoise {
  readonly patch: Float32Array;
  readonly broad: Float32Array;
  readonly smoky: Float32Array;
  readonly plume: Float32Array;
}

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
  const minus = heatLine(work, -1);
  const plus = heatLine(work, 1);
  for (const field of patchesOf(work)) {
    paintSide(work, field, -1, minus, setting, seed);
    paintSide(work, field, 1, plus, setting, seed);
  }
}

function paintSide(
  work: FaceWork,
  field: Field,
  side: 1 | -1,
  line: HeatLine,
  setting: HeatSetting,
  seed: number,
): void {
  const { grid } = field;
  const toe = lineFor(work, grid, line.toe);
  const heat = lineFor(work, grid, line.heat);
  const nearest = line.toe.reduce((least, y) => Math.min(least, side * y), Number.POSITIVE_INFINITY);
  const furthest = line.toe.reduce((most, y) => Math.max(most, side * y), Number.NEGATIVE_INFINITY);
  const ends = [side * (nearest - 2), side * (furthest + REACH)].sort((a, b) => a - b);
  const rows: readonly [number, number] = [
    Math.max(grid.y0, ends[0]),
    Math.min(grid.y0 + grid.rows / grid.perMm, ends[1]),
  ];
  if (rows[0] >= rows[1]) return;
  const noise: HeatNoise = {
    patch: noiseField(grid, 9, 6, seed + 61, 2, 0.5, rows),
    broad: noiseField(grid, 26, 18, seed + 62, 1, 0.5, rows),
    smoky: noiseField(grid, 5, 3.4, seed + 63, 4, 0.7, rows),
    plume: plateNoise(work, field, "blotch", rows),
  };
  const leavesDeposits = setting.soot > 0 || setting.habit.dust > 0;
  for (let j = 0; j < grid.rows; j++) {
    const y = rowY(grid, j);
    if (y < rows[0] || y > rows[1]) continue;
    for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
      const away = side * (y - toe[i]);
      if (away < -1.5 || away > REACH) continue;
      const parent = 1 - field.bead[k];
      if (parent <= 0) continue;
      paintColours(field, k, noise, away, heat[i], parent, setting);
      if (away < 22 && leavesDeposits) paintDeposits(field, k, noise, away, heat[i], parent, setting);
    }
  }
}

/** Oxide colours of the steel itself. */
function paintColours(
  field: Field,
  k: number,
  noise: HeatNoise,
  away: number,
  heat: number,
  parent: number,
  setting: HeatSetting,
): void {
  const { habit } = setting;
  const patch = noise.patch[k];
  const smoky = noise.smoky[k];
  const plume = noise.plume[k];
  const d =
    (Math.max(0, away) / (setting.scale * heat)) * (1 + 0.38 * noise.broad[k]) +
    (1 - 0.5 * habit.even) * (1.9 * patch + 1.1 * smoky);
  if (d > 15) return;
  const bright = field.band[k];
  const burnt = habit.burnt * clamp(0.42 + 1.5 * smoky + 1.1 * patch + 0.4 * (heat - 1), 0, 1);
  const strength =
    setting.tint * parent * clamp(0.55 + 0.3 * habit.even + 1.2 * smoky + 0.7 * plume + 0.35 * (heat - 1), 0.06, 1);
  if (d > 4.2) {
    const share = ease(4.2, 7.5, d) * ease(15, 8, d) * strength * bright;
    mixMaterial(field, k, TONES.warm, 0.46, 0.55, Math.min(0.8, 0.5 * habit.warm * share));
  }
  if (d > 8.5) return;
  const smoke = ease(-0.5, 1.8, d) * ease(8.5, 2.6, d);
  const grey = ease(3, 0.1, d) * burnt;
  mixMaterial(field, k, TONES.smoke, 0.5, 0.42, 0.72 * habit.smoke * smoke * strength * mix(0.4, 1, bright));
  const torn = plume + habit.even;
  if (d > 2.2 && d < 7.2 && torn > -0.1) {
    const share = ease(2.2, 4.2, d) * ease(7.2, 5, d) * ease(-0.1, 0.4, torn);
    mixMaterial(field, k, TONES.blue, 0.42, 0.5, 0.17 * habit.blue * share * strength * bright);
  }
  mixMaterial(field, k, TONES.hot, 0.58, 0.3, 0.72 * grey * parent * mix(0.35, 1, strength));
  field.brush[k] *= 1 - 0.6 * grey - 0.3 * smoke * strength;
  if (bright < 1) mixMaterial(field, k, TONES.scaleBurnt, 0.62, 0.15, 0.4 * ease(9, 2, d) * (1 - bright) * parent);
}

/** Soot blown to one side in plumes, flux dust between. */
function paintDeposits(
  field: Field,
  k: number,
  noise: HeatNoise,
  away: number,
  heat: number,
  parent: number,
  setting: HeatSetting,
): void {
  const near = ease(10, 1, away);
  const smoky = noise.smoky[k];
  const plume = noise.plume[k];
  const sooty = plume + 0.35 * smoky + 0.3 * (heat - 1) + 0.3 * near - 0.2;
  if (sooty > 0.12) {
    const share = ease(0.12, 0.62, sooty) * ease(0.1, 1.4, away + 0.8 * smoky) * ease(22, 7, away);
    mixMaterial(field, k, TONES.soot, 0.82, 0.06, Math.min(0.8, 0.42 * setting.soot * share) * parent);
    field.brush[k] *= 1 - 0.5 * share * parent;
  }
  const dusty = smoky + 0.45 * near - 0.34 - 0.3 * plume + 0.15 * noise.broad[k];
  if (dusty > 0.05) {
    const share = ease(0.05, 0.75, dusty) * ease(0.2, 1.6, away) * ease(20, 8, away);
    mixMaterial(field, k, TONES.fluxDust, 0.85, 0.05, Math.min(0.6, 0.22 * setting.habit.dust * share) * parent);
  }
}
