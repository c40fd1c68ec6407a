import { clamp, ease, mix } from "../../math";
import { boxBlur, noiseField, noiseRows, rowsBetween, rowY } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { type MetalPaint, PROCESS_PAINTS, type SlagPaint } from "./process-paint";
import { toeSharpness } from "./toes";
import { WELD_TONES as TONES } from "./tones";
import { weldZone } from "./weld-zone";

/** How much darker and how much less bare soot leaves the metal. */
const SOOT = { dark: 0.4, dull: 0.3 };
/** A weld rusts where a specimen is rustier than this; share covered where it is rustiest. */
const RUST = { from: 0.5, most: 0.7 };

interface Relief {
  /** Depth of a pixel below its surroundings within a third of a millimetre and within one, mm. */
  readonly fine: Float32Array;
  readonly wide: Float32Array;
}

/** Colours the weld: oxide stays in creases and hollows, crests are brushed bare, a glassy film of slag hangs on here and there. */
export function paintWeld(work: FaceWork): void {
  const { grid } = work.strip;
  const zone = weldZone(work);
  const rows = rowsBetween(grid, zone);
  const seed = work.random.child("weld-paint").seed();
  const relief = hollowsOf(work.strip, rows);
  const sharp = toeSharpness(work);
  const sides = [
    { toe: work.toeMinus, sharp: sharp.minus },
    { toe: work.toePlus, sharp: sharp.plus },
  ];
  const paint = PROCESS_PAINTS[work.joint.process];
  paintMetal(work, paint[work.face], rows, relief, sides, seed, zone);
  if (paint.slag) leaveSlagFilm(work, paint.slag, rows, relief, sides, seed, zone);
}

interface Rows {
  readonly first: number;
  readonly end: number;
}

interface ToeSide {
  readonly toe: Float32Array;
  readonly sharp: Float32Array;
}

function hollowsOf(field: Field, rows: Rows): Relief {
  const { columns, perMm } = field.grid;
  const z = field.z.subarray(rows.first * columns, rows.end * columns);
  const below = (reach: number) => {
    const mean = boxBlur(z, columns, rows.end - rows.first, reach * perMm, reach * perMm, 2);
    for (let k = 0; k < mean.length; k++) mean[k] -= z[k];
    return mean;
  };
  return { fine: below(0.28), wide: below(1.1) };
}

/** Distance inside the toe on the pixel's own side, mm; far inside where no toe is. */
function insideToe(side: ToeSide, i: number, y: number): number {
  const inside = y < 0 ? y - side.toe[i] : side.toe[i] - y;
  return Number.isNaN(inside) ? 9 : inside;
}

/** What has been worked out of one row of the weld, a value per column. */
interface MetalRow {
  readonly tone: Float32Array;
  readonly wire: Float32Array;
  readonly crest: Float32Array;
  readonly hollow: Float32Array;
  /** How far it was rubbed bright, and how bare it is. */
  readonly wiped: Float32Array;
  readonly bare: Float32Array;
}

function paintMetal(
  work: FaceWork,
  style: MetalPaint,
  rows: Rows,
  relief: Relief,
  sides: readonly ToeSide[],
  seed: number,
  zone: readonly [number, number],
): void {
  const { grid } = work.strip;
  const writeTone = noiseRows(grid, 8, 5, seed + 1, 2, 0.5, zone);
  const writeWire = noiseRows(grid, 4, 0.34, seed + 2, 2, 0.7, zone);
  const values = () => new Float32Array(grid.columns);
  const row: MetalRow = {
    tone: values(),
    wire: values(),
    crest: values(),
    hollow: values(),
    wiped: values(),
    bare: values(),
  };
  for (let j = rows.first; j < rows.end; j++) {
    writeTone(j, row.tone, 0);
    writeWire(j, row.wire, 0);
    // short loops: the compiler inlines what is called in each, but not in one long one
    findCrests(work, row, relief, (j - rows.first) * grid.columns, j);
    findHollows(work, row, style, relief, sides, (j - rows.first) * grid.columns, j);
    bareRow(work, row, style, j);
    colourRow(work, row, style, j);
    if (work.look.rust > RUST.from) rustRow(work, row, j);
  }
}

function findCrests({ strip }: FaceWork, { crest }: MetalRow, { fine, wide }: Relief, from: number, j: number): void {
  const { bead } = strip;
  for (let i = 0, k = j * crest.length; i < crest.length; i++, k++) {
    if (bead[k] > 0) crest[i] = 0.5 * ease(-0.004, 0.03, -fine[from + i]) + 0.6 * ease(-0.02, 0.16, -wide[from + i]);
  }
}

/** Hollows keep their oxide. A run's edge is dark only where it is sharp: a line along every toe would look drawn. */
function findHollows(
  { strip, noise }: FaceWork,
  { hollow }: MetalRow,
  style: MetalPaint,
  { fine, wide }: Relief,
  sides: readonly ToeSide[],
  from: number,
  j: number,
): void {
  const { grid, bead, across } = strip;
  const { patchFine } = noise;
  const y = rowY(grid, j);
  const { toe, sharp } = sides[y < 0 ? 0 : 1];
  const outward = y < 0 ? -1 : 1;
  for (let i = 0, k = j * hollow.length; i < hollow.length; i++, k++) {
    if (bead[k] <= 0) continue;
    const inside = outward * (toe[i] - y);
    // far inside, or no toe here
    const blended = inside * inside < 8 ? 0.85 * Math.exp((-inside * inside) / 0.8) * (1 - sharp[i]) : 0;
    const place = across[k] < 0 ? -across[k] : across[k];
    const edge = 0.55 * ease(0.78, 1, place) * clamp(0.55 - 0.9 * patchFine[k], 0, 1);
    const deep = 0.42 * ease(0, 0.045, fine[from + i]) + style.hollow * ease(0.02, 0.2, wide[from + i]);
    hollow[i] = deep * clamp(0.75 + 0.7 * patchFine[k], 0.25, 1.2) * Math.max(0.1, 1 - blended - edge);
  }
}

function bareRow({ strip, look, noise }: FaceWork, row: MetalRow, style: MetalPaint, j: number): void {
  const { bead, z, tint } = strip;
  const { patch, patchFine } = noise;
  const { wire, crest, hollow, wiped, bare } = row;
  const dull = SOOT.dull * look.sooty;
  for (let i = 0, k = j * bare.length; i < bare.length; i++, k++) {
    if (bead[k] <= 0) continue;
    const brushed = clamp(look.brushed + 0.5 * patch[k], 0, 1) * style.brushed;
    wiped[i] = brushed * clamp(0.8 * crest[i] + 0.1, 0, 1);
    z[k] += 0.006 * wire[i] * wiped[i] * bead[k];
    const rubbed = style.base + 0.3 * wire[i] * wiped[i] + 0.4 * crest[i] * (0.45 + brushed) - 0.46 * hollow[i];
    const soiled =
      0.24 * patchFine[k] + 0.26 * patch[k] + 0.42 * tint[k] - dull * clamp(0.7 + 0.8 * patch[k], 0.2, 1.2);
    bare[i] = style.share * clamp(rubbed + soiled, 0, 1);
  }
}

function colourRow({ strip, look, noise }: FaceWork, { tone, bare }: MetalRow, style: MetalPaint, j: number): void {
  const { bead, red, green, blue, rough, metal, brush } = strip;
  const { micro } = noise;
  const { skin, skinPale } = style;
  const { bright, blue: cold, brown } = TONES;
  const light = 1 - SOOT.dark * look.sooty;
  const coldest = style.cold * look.heatTint;
  const warmest = style.warm * look.heatTint;
  for (let i = 0, k = j * bare.length; i < bare.length; i++, k++) {
    const share = bead[k];
    if (share <= 0) continue;
    const b = bare[i];
    const pale = clamp(0.5 + tone[i], 0, 1);
    const toCold = ease(0.1, 0.6, tone[i]) * coldest * (1 - b);
    const toWarm = ease(0.1, 0.6, -tone[i]) * warmest * (1 - b);
    red[k] +=
      (metalTone(skin[0], skinPale[0], pale, light, bright[0], b, cold[0], toCold, brown[0], toWarm) - red[k]) * share;
    green[k] +=
      (metalTone(skin[1], skinPale[1], pale, light, bright[1], b, cold[1], toCold, brown[1], toWarm) - green[k]) *
      share;
    blue[k] +=
      (metalTone(skin[2], skinPale[2], pale, light, bright[2], b, cold[2], toCold, brown[2], toWarm) - blue[k]) * share;
    rough[k] += (mix(style.rough.oxide, style.rough.bare, b) + 0.05 * micro[k] - rough[k]) * share;
    metal[k] += (mix(style.metal.oxide, style.metal.bare, b) - metal[k]) * share;
    brush[k] *= 1 - share;
  }
}

/** One channel of the metal: its skin, bare where rubbed, with films of blue and brown. */
function metalTone(
  skin: number,
  skinPale: number,
  pale: number,
  light: number,
  bright: number,
  bare: number,
  cold: number,
  toCold: number,
  brown: number,
  toWarm: number,
): number {
  const covered = light * (skin + (skinPale - skin) * pale);
  const rubbed = covered + (bright - covered) * bare;
  const cooled = rubbed + (cold - rubbed) * toCold;
  return cooled + (brown - cooled) * toWarm;
}

function rustRow({ strip, look, noise }: FaceWork, { hollow, bare }: MetalRow, j: number): void {
  const { bead, metal } = strip;
  const { patch, patchFine } = noise;
  const most = RUST.most * ease(RUST.from, 1, look.rust);
  for (let i = 0, k = j * bare.length; i < bare.length; i++, k++) {
    if (bead[k] <= 0) continue;
    const rusted = 0.28 + 1.25 * patchFine[k] + 0.8 * patch[k] + 0.35 * hollow[i] - 0.2 * bare[i];
    const film = most * ease(0.1, 1.1, rusted) * bead[k];
    mixMaterial(strip, k, TONES.rust, 0.8, 0.2 * metal[k], film);
  }
}

/** Slag left by the hammer: a film with soft or flaking edges, in hollows and along sharp toes. */
function leaveSlagFilm(
  work: FaceWork,
  slag: SlagPaint,
  rows: Rows,
  relief: Relief,
  sides: readonly ToeSide[],
  seed: number,
  zone: readonly [number, number],
): void {
  const { strip, look } = work;
  const { grid, z, clean, brush } = strip;
  const { patch, micro } = work.noise;
  const flakes = noiseField(grid, slag.flake[0], slag.flake[1], seed + 3, 2, 0.5, zone);
  const origin = rows.first * grid.columns;
  const { dark, pale: light } = slag;
  const likely = slag.bias - 1.28 + 0.42 * look.slag;
  for (let j = rows.first, k = origin; j < rows.end; j++) {
    const y = rowY(grid, j);
    const side = sides[y < 0 ? 0 : 1];
    for (let i = 0; i < grid.columns; i++, k++) {
      if (strip.bead[k] <= 0 && Number.isNaN(side.toe[i])) continue;
      const inside = insideToe(side, i, y);
      if (inside < -0.9) continue;
      const atToe = slag.toe * Math.exp(-(((inside - 0.1) / 0.55) ** 2)) * side.sharp[i] * 1.2;
      const hollow = clamp(relief.wide[k - origin], 0, 0.22);
      const excess = flakes[k] + 0.4 * atToe + slag.hollow * hollow + 0.4 * (patch[k] - 0.2) + likely - 2 * clean[k];
      if (excess <= 0) continue;
      const share = ease(0, slag.edge, excess);
      z[k] += Math.min(slag.thickness, (0.1 / slag.edge) * excess) * share + 0.015 * share * micro[k];
      const pale = clamp(0.5 + micro[k], 0, 1);
      const cover = 0.93 * share;
      strip.red[k] += (mix(dark[0], light[0], pale) - strip.red[k]) * cover;
      strip.green[k] += (mix(dark[1], light[1], pale) - strip.green[k]) * cover;
      strip.blue[k] += (mix(dark[2], light[2], pale) - strip.blue[k]) * cover;
      strip.rough[k] += (slag.rough + 0.3 * pale - strip.rough[k]) * cover;
      strip.metal[k] *= 1 - cover;
      brush[k] *= 1 - share;
    }
  }
}
