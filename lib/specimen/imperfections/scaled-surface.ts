import { clamp, ease, mix } from "../../math";
import { columnX, forEachPixel, gradient2, hash01, nearestRow, rowY } from "../../surface";
import { mixMaterial } from "../field";
import type { Range } from "../measure";
import { toeAt } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredColumns, type SeenColumn } from "./measured-columns";
import { between, linear, scaled } from "./tones";
import { drawEnds, type Envelope, unevenEnvelope } from "./uneven-ends";

const SCALE = {
  black: linear("#343335"),
  grey: linear("#5d5d5e"),
  brown: linear("#544a42"),
};

/** Size of the plates into which the crust has cracked, mm. */
const PLATE = { along: 2.1, across: 1.6 };

/** The crust at a place: distance to the nearest crack between two plates (0 on it) and a number 0..1 of the plate's own. */
function crackedCrust(x: number, y: number, seed: number): { crack: number; own: number } {
  const u = x / PLATE.along + 0.35 * gradient2(x / 1.3, y / 1.3, seed + 5);
  const v = y / PLATE.across + 0.35 * gradient2(x / 1.3, y / 1.3, seed + 6);
  let first = 9;
  let second = 9;
  let own = 0;
  for (let j = Math.floor(v) - 1; j <= Math.floor(v) + 1; j++)
    for (let i = Math.floor(u) - 1; i <= Math.floor(u) + 1; i++) {
      const away = Math.hypot(u - i - hash01(i, j, seed), v - j - hash01(i, j, seed + 1));
      if (away < first) {
        second = first;
        first = away;
        own = hash01(i, j, seed + 2);
      } else if (away < second) second = away;
    }
  return { crack: second - first, own };
}

interface Crusted {
  readonly k: number;
  /** Share of dull film, and within it how thick a crust has grown, 0..1. */
  readonly film: number;
  readonly crust: number;
  readonly crack: number;
  readonly own: number;
  readonly lump: number;
  readonly patch: number;
}

interface Crust {
  readonly there: Envelope;
  readonly severity: number;
  readonly seed: number;
}

/** Soot and thin scale reach this far out over the plate, mm. */
const BEYOND_TOE = 2.5;

/** Grows scale on the weld metal: a dull film that thickens into lumps and cracked plates, here and there sprung off. */
function growCrust(work: FaceWork, request: FeatureRequest, { there, severity, seed }: Crust): Crusted[] {
  const { strip } = work;
  const { x: x0, length } = request;
  const low = toeAt(work, -1, x0 + length / 2, length / 2) - BEYOND_TOE - 1.5;
  const high = toeAt(work, 1, x0 + length / 2, length / 2) + BEYOND_TOE + 1.5;
  const crusted: Crusted[] = [];
  const toes = new Map<number, readonly [minus: number, plus: number]>();
  forEachPixel(strip.grid, { x0: x0 - 4, x1: x0 + length + 4, y0: low, y1: high }, (k, x, y, i) => {
    const known = toes.get(i);
    const toe = known ?? [toeAt(work, -1, x, 0.5), toeAt(work, 1, x, 0.5)];
    if (!known) toes.set(i, toe);
    const outside = y < 0 ? toe[0] - y : y - toe[1];
    if (outside > BEYOND_TOE) return;
    // the gas failed unevenly: tongues of sound metal reach in from the ends, single flecks lie beyond
    const shift = 6 * (hash01(strip.run[k], 7, seed + 9) - 0.5);
    const lost = there(x + shift + 8 * gradient2(x / 16, y / 3.6, seed) + 0.7 * gradient2(x / 2.2, y / 1.3, seed + 8));
    if (lost <= 0) return;
    const patch = 0.6 * gradient2(x / 7, y / 3.4, seed + 1) + 0.36 * gradient2(x / 2.3, y / 1.5, seed + 2);
    const fine = gradient2(x / 0.9, y / 0.7, seed + 7);
    const thick = lost * (0.45 + 0.5 * severity) + 0.42 * patch + 0.09 * fine - 0.5 * Math.max(0, outside);
    const film = ease(-0.05, 0.62, thick) * ease(0, 0.5, lost) * (outside > 0 ? 0.45 : 1);
    if (film <= 0.01) return;
    const crust = ease(0.34, 0.74, thick) * strip.bead[k];
    const { crack, own } = crackedCrust(x, y, seed + 3);
    const lump = gradient2(x / 0.75, y / 0.65, seed + 4) + 0.6 * gradient2(x / 0.36, y / 0.34, seed + 5);
    const sprung = crust * ease(0.9, 0.94, own + 0.1 * fine);
    const kept = crust * (1 - sprung);
    const grown = mix(0.04, 0.1, clamp(severity, 0, 1));
    strip.z[k] += kept * grown * (0.45 + 0.6 * own + 0.7 * Math.max(-0.6, lump) - 0.9 * ease(0.1, 0, crack));
    strip.z[k] += 0.02 * film * (0.6 + lump) * strip.bead[k];
    crusted.push({ k, film: film * (1 - 0.6 * sprung), crust: kept, crack, own, lump, patch });
  });
  return crusted;
}

/** Dull and dark, greyer on the lumps and where it is thin; where plates sprung off the metal below is bare and grey. */
function paintCrust({ strip }: FaceWork, crusted: readonly Crusted[], seed: number): void {
  for (const { k, film, crust, crack, own, lump, patch } of crusted) {
    const pale = clamp(0.5 + 0.32 * lump + 0.5 * (own - 0.5) * crust - 0.5 * patch, 0, 1);
    const dark = between(SCALE.black, SCALE.grey, pale);
    const brown = between(dark, SCALE.brown, 0.55 * ease(0, 0.5, 0.6 * hash01(Math.floor(own * 997), 3, seed) - patch));
    const thin = 0.5 + 0.34 * crust;
    mixMaterial(
      strip,
      k,
      scaled(brown, 1 - 0.35 * crust * ease(0.09, 0, crack)),
      mix(0.8, 0.9, crust),
      0.04,
      film * film * mix(thin, 0.92, crust),
    );
    strip.rough[k] += (0.84 - strip.rough[k]) * film;
    strip.metal[k] *= 1 - 0.85 * film;
    strip.brush[k] *= 1 - film;
  }
}

/** What is rougher and less metallic than this is scale; slag is smooth, oxide on sound metal still shines. */
const DULL = { rough: 0.74, metal: 0.16 };
/** A column is scaled where this share of its weld metal is, evened out over +-1 mm. */
const SCALED_FROM = 0.3;
const EVENED = 1;
const BRIDGE = 4;

/**
 * Stretch of weld under scale: columns in which more than 30 % of the weld metal between the toes is dull (rougher than 0.74,
 * metalness under 0.16), evened out over +-1 mm, gaps up to 4 mm passed over. Across and width from the dull pixels.
 */
export function measuredScale(work: FaceWork, id: string, range: Range): TruthItem | null {
  const { grid, bead, rough, metal } = work.strip;
  const columns = Array.from({ length: grid.columns }, (_, i): SeenColumn => {
    const x = columnX(grid, i);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    let dull = 0;
    let all = 0;
    const last = nearestRow(grid, toeAt(work, 1, x, 0.3));
    for (let j = nearestRow(grid, toeAt(work, -1, x, 0.3)); j <= last; j++) {
      const k = j * grid.columns + i;
      if (bead[k] < 0.5) continue;
      all++;
      if (rough[k] < DULL.rough || metal[k] > DULL.metal) continue;
      dull++;
      low = Math.min(low, rowY(grid, j));
      high = Math.max(high, rowY(grid, j));
    }
    const value = all > 0 ? dull / all : 0;
    return { x, value, low, high, strongest: { value, y: (low + high) / 2 } };
  });
  return measuredColumns(work, id, "scaled-surface", columns, {
    range,
    evened: EVENED,
    threshold: SCALED_FROM,
    bridge: BRIDGE,
  });
}

/**
 * Crust of scale on the weld metal from `x` over `length` mm, where the shielding gas failed; `severity` (0.3 patchy to 1
 * closed) is how much of it is covered and how thick. Truth: see `measuredScale`; width = extent across; no size.
 */
export const scaledSurface: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("crust");
  const ends = drawEnds(draw, request.length, [6, 12], [10, 20]);
  const crust: Crust = {
    there: unevenEnvelope(request.x, request.x + request.length, ends, 0.5, draw.seed()),
    severity: request.severity > 0 ? request.severity : 0.7,
    seed: draw.seed(),
  };
  let crusted: readonly Crusted[] = [];
  return {
    id: request.id,
    cut(work) {
      crusted = growCrust(work, request, crust);
    },
    paint: (work) => paintCrust(work, crusted, crust.seed),
    measure: (work) => measuredScale(work, request.id, { from: request.x - 6, to: request.x + request.length + 6 }),
  };
};
