import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2, nearestColumn, nearestRow } from "../../surface";
import { mixMaterial } from "../field";
import { betweenEdges, measureHollow, type Side } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawPreparation, paintCorner, preparedRelief, roundedFall } from "./prepared-face";
import { between, scaled, TONES } from "./tones";
import { type Envelope, largestAlong, unevenEnvelope } from "./uneven-ends";

const THRESHOLD = 0.4;
const BRIDGE = 2;
/** The gap is sounded within this share of its half width, so that a slit at its foot does not count. */
const SOUNDED = 0.7;
/** Slope of the root faces, burnt back a little by the arc. */
const WALL_SLOPE = 4.5;
/** Half width of what melted metal lies at the bottom of the gap, as a share of the gap's. */
const TONGUE = 0.72;

/**
 * Incomplete root penetration: the root bead narrows to a tongue that leaves first one root edge, then the other, and
 * sinks into the gap; between the two tongues both root faces stand bare over a rough, rusty floor. `severity` = depth
 * of the floor, mm. Truth: `measureHollow` within 0.7 of the gap's half width, threshold 0.4 mm.
 */
export const buildRootPenetration: FeatureBuilder = (request, random) => {
  const seed = random.seed();
  const from = request.x;
  const to = request.x + request.length;
  // each root edge loses the bead at its own place
  const edges = ([-1, 1] as const).map((side) => ({
    side: side as Side,
    seed: random.seed(),
    preparation: drawPreparation(random),
    envelope: unevenEnvelope(
      from - random.uniform(0.5, 5),
      to + random.uniform(0.5, 5),
      { first: random.uniform(3, 6), last: random.uniform(3, 6) },
      0.7,
      random.seed(),
    ),
    taper: { before: random.uniform(6, 13), after: random.uniform(6, 13) },
  }));
  const open: Envelope = (x) => edges[0].envelope(x) * edges[1].envelope(x);
  const shown: Envelope = (x) => Math.max(edges[0].envelope(x), edges[1].envelope(x));
  const uneven = (x: number) =>
    clamp(0.85 + 0.22 * gradient1(x / 4.5, seed) + 0.1 * gradient1(x / 1.6, seed + 1), 0.5, 1.2);
  const most = largestAlong(from, to, (x) => open(x) * uneven(x));
  const floorAt = (x: number) => (request.severity * uneven(x)) / most;

  const cornerAt = (work: FaceWork, edge: (typeof edges)[number]) => (x: number) =>
    work.plan.groove + 0.05 + 0.08 * gradient1(x / 13, edge.seed + 20) + 0.04 * gradient1(x / 2.6, edge.seed + 21);

  function narrowRun(work: FaceWork): void {
    const [run] = work.plan.runs;
    const { groove, fill } = work.plan;
    forColumns(work.strip.grid, from - 20, to + 20, (i, x) => {
      for (const edge of edges) {
        const waver = 0.9 * gradient1(x / 2.6, edge.seed + 4);
        const near = ease(from - edge.taper.before, from, x + waver) * ease(to + edge.taper.after, to, x + waver);
        const rim = edge.side * (groove + 0.15 + 0.15 * gradient1(x / 2.2, edge.seed + 5));
        moveToe(run, edge.side, i, rim, 0.85 * near);
        const foot = edge.side * groove * (TONGUE + 0.14 * gradient1(x / 1.9, edge.seed + 6));
        moveToe(run, edge.side, i, foot, edge.envelope(x));
      }
      const bare = open(x);
      run.height[i] = mix(run.height[i], 0.22 + 0.16 * gradient1(x / 3.1, seed + 7), shown(x));
      run.ripple[i] *= 1 - 0.3 * bare;
      fill[i] = mix(fill[i], -floorAt(x), ease(0, 0.5, shown(x)));
    });
  }

  /** Bares a root face and its corner where the bead does not reach it, and roughens the floor. */
  function cutGap(work: FaceWork): void {
    const { strip, plan } = work;
    forEachPixel(strip.grid, boxOf(work), (k, x, y) => {
      const edge = edges[y < 0 ? 0 : 1];
      const share = edge.envelope(x);
      if (share < 0.02) return;
      const corner = cornerAt(work, edge)(x);
      const inside = corner - Math.abs(y);
      const covered = ease(0.1, 0.75, strip.bead[k]);
      strip.clean[k] = Math.max(strip.clean[k], share);
      const fallen = roundedFall(inside);
      if (inside < 0) {
        const rounded = Math.max(strip.z[k] - fallen * WALL_SLOPE, strip.parent[k] - fallen * WALL_SLOPE);
        strip.z[k] = mix(strip.z[k], rounded, share * (1 - covered));
        return;
      }
      const relief = preparedRelief(edge.preparation, x, inside) * ease(0, 0.2, inside);
      const wall = strip.parent[k] - fallen * WALL_SLOPE + relief;
      const i = nearestColumn(strip.grid, x);
      const floor = levelBetween(work, i, y) + plan.fill[i] + floorRelief(x, y);
      const bare = smoothMax(wall, floor, 0.25);
      strip.z[k] = mix(strip.z[k], bare, share * (1 - covered));
      strip.z[k] += 0.5 * floorRelief(x, y) * covered * share;
    });
  }

  /** The plates' level across the gap: a slope from edge to edge where they stand at different heights. */
  function levelBetween(work: FaceWork, i: number, y: number): number {
    const { grid, parent } = work.strip;
    const { groove } = work.plan;
    const at = (edge: number) => parent[nearestRow(grid, edge) * grid.columns + i];
    return mix(at(-groove - 0.2), at(groove + 0.2), clamp((y + groove) / (2 * groove), 0, 1));
  }

  const floorRelief = (x: number, y: number) =>
    0.14 * gradient2(x / 1.1, y / 0.8, seed + 26) + 0.06 * gradient2(x / 0.45, y / 0.4, seed + 27);

  const boxOf = (work: FaceWork) => ({
    x0: from - 8,
    x1: to + 8,
    y0: -work.plan.groove - 0.6,
    y1: work.plan.groove + 0.6,
  });

  /** Slag, oxide and rust, lighter than a hole; worn corners. */
  function paintGap(work: FaceWork): void {
    const { strip } = work;
    forEachPixel(strip.grid, boxOf(work), (k, x, y) => {
      const edge = edges[y < 0 ? 0 : 1];
      const share = edge.envelope(x);
      if (share < 0.02) return;
      const inside = cornerAt(work, edge)(x) - Math.abs(y);
      const covered = strip.bead[k];
      paintCorner(strip, k, edge.preparation, x, inside + 0.04, share * (1 - covered));
      const within = ease(-0.02, 0.25, inside) * share;
      if (within <= 0) return;
      const mottle = clamp(0.5 + 0.8 * gradient2(x / 1.4, y / 0.9, seed + 4), 0, 1);
      const ground = between(scaled(TONES.slag, 2.2), scaled(TONES.skin, 1.25), mottle);
      mixMaterial(strip, k, ground, 0.6, 0.2, 0.9 * within * (1 - 0.55 * covered));
      const rust = ease(
        -0.05,
        0.45,
        gradient2(x / 2.6, y / 1.1, seed + 5) + 0.3 * gradient2(x / 0.8, y / 0.6, seed + 6),
      );
      mixMaterial(strip, k, between(TONES.rust, TONES.brown, 0.5), 0.85, 0.05, 0.5 * within * rust);
      strip.brush[k] *= 1 - within;
    });
  }

  return {
    id: request.id,
    plan: narrowRun,
    cut: cutGap,
    paint: paintGap,
    measure(work) {
      const found = measureHollow(work, betweenEdges(work.plan.groove), SOUNDED, {
        range: { from: from - 6, to: to + 6 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "root-penetration", found);
    },
  };
};

/** The larger of two heights with the corner between them rounded over `round` mm. */
function smoothMax(a: number, b: number, round: number): number {
  const share = clamp(0.5 + (a - b) / (2 * round), 0, 1);
  return mix(b, a, share) + round * share * (1 - share);
}
