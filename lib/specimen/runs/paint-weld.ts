import { clamp, ease, mix } from "../../math";
import { boxBlur, noiseField, rowY } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";
import type { MetalPaint, SlagPaint } from "./process-paint";
import { PROCESS_STYLES } from "./process-style";
import { toeSharpness } from "./toes";
import { WELD_TONES as TONES } from "./tones";
import { weldZone, zoneRows } from "./weld-zone";

/** How much darker and how much less bare soot leaves the metal. */
const SOOT = { dark: 0.4, dull: 0.3 };
/** A weld rusts where a specimen is rustier than this; share covered where it is rustiest. */
const RUST = { from: 0.5, most: 0.85 };

interface Relief {
  /** Depth of a pixel below its surroundings within a third of a millimetre and within one, mm. */
  readonly fine: Float32Array;
  readonly wide: Float32Array;
}

/** Colours the weld: oxide stays in creases and hollows, crests are brushed bare, a glassy film of slag hangs on here and there. */
export function paintWeld(work: FaceWork): void {
  const { grid } = work.strip;
  const zone = weldZone(work);
  const rows = zoneRows(grid, zone);
  const seed = work.random.child("weld-paint").seed();
  const relief = hollowsOf(work.strip, rows);
  const sharp = toeSharpness(work);
  const sides = [
    { toe: work.toeMinus, sharp: sharp.minus },
    { toe: work.toePlus, sharp: sharp.plus },
  ];
  const paint = PROCESS_STYLES[work.joint.process].paint;
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

function paintMetal(
  work: FaceWork,
  style: MetalPaint,
  rows: Rows,
  relief: Relief,
  sides: readonly ToeSide[],
  seed: number,
  zone: readonly [number, number],
): void {
  const { strip, look } = work;
  const { grid, bead, z, across, tint, brush } = strip;
  const { patch, patchFine, micro } = work.noise;
  const dull = SOOT.dull * look.sooty;
  const rusty = RUST.most * ease(RUST.from, 1, look.rust);
  const tone = noiseField(grid, 8, 5, seed + 1, 2, 0.5, zone);
  const wire = noiseField(grid, 4, 0.34, seed + 2, 2, 0.7, zone);
  const origin = rows.first * grid.columns;
  const colour: [number, number, number] = [0, 0, 0];
  for (let j = rows.first, k = origin; j < rows.end; j++) {
    const y = rowY(grid, j);
    const side = sides[y < 0 ? 0 : 1];
    for (let i = 0; i < grid.columns; i++, k++) {
      const share = bead[k];
      if (share <= 0) continue;
      const fine = relief.fine[k - origin];
      const wide = relief.wide[k - origin];
      const brushed = clamp(look.brushed + 0.5 * patch[k], 0, 1) * style.brushed;
      const crest = 0.5 * ease(-0.004, 0.03, -fine) + 0.6 * ease(-0.02, 0.16, -wide);
      const kept = oxideKept(insideToe(side, i, y), side.sharp[i], Math.abs(across[k]), patchFine[k]);
      const hollow =
        (0.42 * ease(0, 0.045, fine) + style.hollow * ease(0.02, 0.2, wide)) *
        clamp(0.75 + 0.7 * patchFine[k], 0.25, 1.2) *
        kept;
      const wiped = brushed * clamp(0.8 * crest + 0.1, 0, 1);
      z[k] += 0.006 * wire[k] * wiped * share;
      const bare =
        style.share *
        clamp(
          style.base +
            0.3 * wire[k] * wiped +
            0.4 * crest * (0.45 + brushed) -
            0.46 * hollow +
            0.24 * patchFine[k] +
            0.26 * patch[k] +
            0.42 * tint[k] -
            dull * clamp(0.7 + 0.8 * patch[k], 0.2, 1.2),
          0,
          1,
        );
      metalColour(colour, style, bare, tone[k], look.heatTint, 1 - SOOT.dark * look.sooty);
      let rough = mix(style.rough.oxide, style.rough.bare, bare) + 0.05 * micro[k];
      let metal = mix(style.metal.oxide, style.metal.bare, bare);
      if (rusty > 0) {
        const film = rusty * ease(0.15, 0.8, 0.32 + patchFine[k] + 0.8 * patch[k] + 0.6 * hollow - 0.15 * bare);
        for (let c = 0; c < 3; c++) colour[c] += (TONES.rust[c] - colour[c]) * film;
        rough += (0.8 - rough) * film;
        metal *= 1 - 0.8 * film;
      }
      strip.red[k] += (colour[0] - strip.red[k]) * share;
      strip.green[k] += (colour[1] - strip.green[k]) * share;
      strip.blue[k] += (colour[2] - strip.blue[k]) * share;
      strip.rough[k] += (rough - strip.rough[k]) * share;
      strip.metal[k] += (metal - strip.metal[k]) * share;
      brush[k] *= 1 - share;
    }
  }
}

/** A run's edge is dark only where it is sharp: a line along every toe would look drawn. */
function oxideKept(inside: number, sharp: number, across: number, patch: number): number {
  const blended = 0.85 * Math.exp((-inside * inside) / 0.8) * (1 - sharp);
  const edge = 0.55 * ease(0.78, 1, across) * clamp(0.55 - 0.9 * patch, 0, 1);
  return Math.max(0.1, 1 - blended - edge);
}

function metalColour(
  out: [number, number, number],
  style: MetalPaint,
  bare: number,
  tone: number,
  heatTint: number,
  light: number,
): void {
  const pale = clamp(0.5 + tone, 0, 1);
  const cold = ease(0.1, 0.6, tone) * style.cold * heatTint * (1 - bare);
  const warm = ease(0.1, 0.6, -tone) * style.warm * heatTint * (1 - bare);
  for (let c = 0; c < 3; c++) {
    const skin = light * (style.skin[c] + (style.skinPale[c] - style.skin[c]) * pale);
    let value = skin + (TONES.bright[c] - skin) * bare;
    value += (TONES.blue[c] - value) * cold;
    value += (TONES.brown[c] - value) * warm;
    out[c] = value;
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
