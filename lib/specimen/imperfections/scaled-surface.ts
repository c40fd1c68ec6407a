import { clamp, ease, mix } from "../../math";
import { columnX, forEachPixel, gradient2, hash01, nearestRow, rowY } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import type { Range } from "../measure";
import { toeAt } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredColumns, type SeenColumn } from "./measured-columns";
import { type Flaking, flakingAt } from "./scale-layers";
import { between, linear, scaled } from "./tones";
import { drawEnds, type Envelope, unevenEnvelope } from "./uneven-ends";

const SCALE = {
  film: linear("#6b665f"),
  blueGrey: linear("#4a4d52"),
  black: linear("#363436"),
  grey: linear("#626160"),
  brown: linear("#574c43"),
  rust: linear("#6c4527"),
};

interface Crusted extends Flaking {
  readonly k: number;
  /** Share of dull film over all of it, thin at its edge. */
  readonly film: number;
  readonly lump: number;
  readonly patch: number;
  /** Bare metal right beside scale, 0..1: there it rusts first. */
  readonly beside: number;
}

interface Crust {
  readonly there: Envelope;
  readonly severity: number;
  readonly seed: number;
}

/** Soot and thin scale reach this far out over the plate, mm. */
const BEYOND_TOE = 2.5;
/** Height of one layer and of an edge that has lifted, mm. */
const LAYER = { thick: 0.045, lifted: 0.08 };

/** Grows scale on the weld metal: a dull film that thickens into layers of flakes, some of them sprung off. */
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
    const film = ease(-0.12, 0.62, thick) * ease(0, 0.55, lost) * (outside > 0 ? 0.45 : 1);
    if (film <= 0.01) return;
    const flaking = flakingAt(x, y, (thick - 0.34) * mix(0.9, 1.25, clamp(severity, 0, 1)), seed + 300);
    const { layers, behind, lifted, crack } = flaking;
    const lump = gradient2(x / 0.75, y / 0.65, seed + 4) + 0.6 * gradient2(x / 0.36, y / 0.34, seed + 5);
    const standing = layers * LAYER.thick + LAYER.lifted * lifted + 0.008 * Math.min(1, layers) * lump;
    const gap = 0.02 * Math.min(1, layers) * ease(0.09, 0, crack) * (1 - ease(0.3, 0, behind));
    strip.z[k] += (standing - gap + 0.008 * film * lump) * strip.bead[k];
    const beside = layers > 0 ? 0 : ease(0.2, 0.34, thick + 0.1 * fine);
    crusted.push({ k, ...flaking, film, lump, patch, beside });
  });
  return crusted;
}

/** From the lowest layer up: grey film, tight bluish grey, brown black and matt on top; pale at a break, rusty beside it. */
function paintCrust({ strip }: FaceWork, crusted: readonly Crusted[]): void {
  for (const { k, film, layers, behind, lifted, own, crack, lump, patch, beside } of crusted) {
    const covered = Math.min(1, layers);
    const upper = clamp(layers - 1, 0, 1);
    const pale = clamp(0.52 + 0.2 * lump + 0.4 * (own - 0.5) * covered - 0.3 * patch, 0, 1);
    const tight = between(SCALE.blueGrey, SCALE.grey, pale);
    const matt = between(
      between(SCALE.black, SCALE.grey, 0.6 * pale),
      SCALE.brown,
      0.7 * ease(-0.2, 0.7, 0.25 * own - patch),
    );
    const edge = covered * ease(0.16, 0.02, behind);
    const shade = 1 - 0.34 * covered * ease(0.09, 0, crack) - 0.24 * edge * (1 - lifted);
    const tone = scaled(between(between(SCALE.film, tight, covered), matt, upper), shade + 0.22 * edge * lifted);
    mixMaterial(strip, k, tone, mix(0.78, 0.9, upper), 0.04, film ** 1.5 * mix(0.5, 0.9, covered));
    mixColour(
      strip,
      k,
      SCALE.rust,
      0.34 * film * Math.max(beside, 0.5 * edge) * clamp(0.35 + 1.2 * patch - 0.3 * lump, 0, 1),
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
  const ends = drawEnds(draw, request.length, [7, 13], [11, 22]);
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
    paint: (work) => paintCrust(work, crusted),
    measure: (work) => measuredScale(work, request.id, { from: request.x - 6, to: request.x + request.length + 6 }),
  };
};
