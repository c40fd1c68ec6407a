import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal1, gradient1, gradient2, nearestColumn, nearestRow } from "../../surface";
import { mixMaterial } from "../field";
import { betweenEdges, measureHollow, type Side } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawPreparation, type Preparation, paintCorner, preparedRelief, roundedFall } from "./prepared-face";
import { between, scaled, TONES } from "./tones";
import { type Envelope, largestAlong, unevenEnvelope } from "./uneven-ends";

const THRESHOLD = 0.4;
const BRIDGE = 2;
/** The gap is sounded within this share of its half width, so that a slit at its foot does not count. */
const SOUNDED = 0.7;
/** Slope of the root faces, burnt back a little by the arc. */
const WALL_SLOPE = 3.2;
/** The two root edges lose the bead this far from each other at either end, mm, and at most so much of the length. */
const EDGES_APART = { mm: [2, 7], most: 0.22 } as const;
/** A withdrawn toe comes to lie so far across the gap's middle, as a share of its half width: the tongue hugs the other edge. */
const ACROSS_MIDDLE = 0.25;
/** Depth of the metal where a tongue begins, mm. */
const BRIM = 0.12;

/** The plate is worn no further outside its corner than this, mm (negative). */
const OUTERMOST = -1;

/** A root edge that the bead leaves, mm. */
interface BareEdge {
  readonly side: Side;
  readonly seed: number;
  readonly preparation: Preparation;
  /** How far the bead has left this edge. */
  readonly envelope: Envelope;
  /** The bead is narrower on this side already so long before and after. */
  readonly taper: { readonly before: number; readonly after: number };
}

/** Draws both edges: at either end one of them stays fused longer; here and there a bit of metal still reaches an edge. */
function drawEdges(random: RandomStream, from: number, to: number): readonly [BareEdge, BareEdge] {
  const length = to - from;
  const apart = () => Math.min(random.uniform(...EDGES_APART.mm), EDGES_APART.most * length);
  const isUpperLonger = { first: random.chance(0.5), last: random.chance(0.5) };
  const held = { first: apart(), last: apart() };
  const drawEdge = (side: Side): BareEdge => {
    const seed = random.seed();
    const ends = {
      first: Math.min(random.uniform(5, 11), 0.35 * length),
      last: Math.min(random.uniform(5, 11), 0.35 * length),
    };
    const heldBy = (end: "first" | "last") => (isUpperLonger[end] === side > 0 ? held[end] : 0);
    const start = from + heldBy("first") - 0.95 * ends.first;
    const stop = to - heldBy("last") + 0.95 * ends.last;
    const left = unevenEnvelope(start, stop, ends, 0.8, seed + 30);
    const bridges = Array.from({ length: length > 12 ? random.integer(3) : 0 }, () => ({
      x: from + length * random.uniform(0.25, 0.75),
      half: random.uniform(1, 2.2),
      share: random.uniform(0.55, 0.85),
    }));
    const bridged = (x: number) =>
      bridges.reduce((most, bridge) => {
        const off = (x - bridge.x + 0.3 * gradient1(x / 0.9, seed + 31)) / bridge.half;
        return Math.max(most, bridge.share * Math.exp(-(off ** 2)));
      }, 0);
    return {
      side,
      seed,
      preparation: drawPreparation(random),
      envelope: (x) => left(x) * (1 - bridged(x)),
      taper: { before: random.uniform(5, 12), after: random.uniform(5, 12) },
    };
  };
  return [drawEdge(-1), drawEdge(1)];
}

/**
 * Incomplete root penetration: the root bead thins and narrows to an uneven tongue that leaves first one root edge, then
 * the other, and sinks into the gap; between the two tongues both root faces stand bare over the rough underside of the
 * metal above. `severity` = depth of the floor, mm. Truth: `measureHollow` within 0.7 of the gap's half width, threshold
 * 0.4 mm.
 */
export const buildRootPenetration: FeatureBuilder = (request, random) => {
  const seed = random.seed();
  const from = request.x;
  const to = request.x + request.length;
  const edges = drawEdges(random, from, to);
  const open: Envelope = (x) => edges[0].envelope(x) * edges[1].envelope(x);
  const shown: Envelope = (x) => Math.max(edges[0].envelope(x), edges[1].envelope(x));
  const uneven = (x: number) =>
    clamp(0.8 + 0.3 * gradient1(x / 5.5, seed) + 0.12 * gradient1(x / 1.6, seed + 1), 0.45, 1.2);
  // under a tongue the gap is filled almost to the brim, and less and less beyond it
  const deepening = unevenEnvelope(
    from - 2,
    to + 2,
    {
      first: Math.min(random.uniform(7, 11), 0.45 * request.length),
      last: Math.min(random.uniform(7, 11), 0.45 * request.length),
    },
    0.7,
    seed + 40,
  );
  const thinning = unevenEnvelope(
    from - random.uniform(12, 16),
    to + random.uniform(12, 16),
    { first: random.uniform(11, 15), last: random.uniform(11, 15) },
    0.6,
    seed + 42,
  );
  const most = largestAlong(from, to, (x) => deepening(x) * uneven(x));
  const floorAt = (x: number) => mix(BRIM, (0.88 * request.severity * uneven(x)) / most, deepening(x));

  /** Where a root face begins: straight as machined, but for nicks and for what the arc melted away. */
  const cornerAt = (work: FaceWork, edge: BareEdge) => (x: number) => {
    const waves =
      0.1 +
      0.75 * gradient1(x / 5.9, edge.seed + 22) +
      0.5 * gradient1(x / 2.1, edge.seed + 23) +
      0.12 * gradient1(x / 0.9, edge.seed + 33);
    // it runs out into the straight edge: no step where the melting began
    const melted = 0.5 * (waves + Math.sqrt(waves * waves + 0.03));
    const straight =
      0.24 * gradient1(x / 9, edge.seed + 20) +
      0.14 * gradient1(x / 3.1, edge.seed + 21) +
      0.03 * gradient1(x / 0.9, edge.seed + 34);
    return work.plan.groove + 0.05 + straight + 0.62 * melted;
  };

  function narrowRun(work: FaceWork): void {
    const [run] = work.plan.runs;
    const { groove, fill } = work.plan;
    forColumns(work.strip.grid, from - 24, to + 24, (i, x) => {
      for (const edge of edges) {
        const waver = 0.9 * gradient1(x / 2.6, edge.seed + 4);
        const near =
          ease(from - 9 - edge.taper.before, from - 6, x + waver) * ease(to + 9 + edge.taper.after, to + 6, x + waver);
        const rim = edge.side * (groove + 0.15 + 0.2 * gradient1(x / 2.2, edge.seed + 5));
        moveToe(run, edge.side, i, rim, 0.92 * near);
      }
      // both at once: how far one edge has been left decides where across the tongue of the other lies
      const [lower, upper] = edges.map((edge) => {
        const fused = groove + 0.2 + 0.2 * gradient1(x / 2.2, edge.seed + 5);
        const reached = mix(
          fused,
          groove * (-ACROSS_MIDDLE + 0.25 * gradient1(x / 2.7, edge.seed + 6)),
          edge.envelope(x),
        );
        return { toe: edge.side * reached, share: ease(0, 0.3, edge.envelope(x)) };
      });
      moveToe(run, -1, i, lower.toe, lower.share);
      moveToe(run, 1, i, upper.toe, upper.share);
      const bare = open(x);
      run.height[i] = mix(run.height[i], 0.3 + 0.25 * gradient1(x / 3.1, seed + 7), thinning(x));
      run.ripple[i] *= 1 - 0.3 * bare;
      fill[i] = mix(fill[i], -floorAt(x), ease(0, 0.12, shown(x)));
    });
  }

  /** Bares a root face and its corner where the bead does not reach it, and roughens the floor. */
  function cutGap(work: FaceWork): void {
    const { strip, plan } = work;
    forEachPixel(strip.grid, boxOf(work), (k, x, y) => {
      const edge = edges[y < 0 ? 0 : 1];
      const share = ease(0.1, 0.6, edge.envelope(x));
      if (share < 0.02) return;
      const inside = cornerAt(work, edge)(x) - Math.abs(y);
      const covered = ease(0.1, 0.75, strip.bead[k]);
      strip.clean[k] = Math.max(strip.clean[k], share);
      if (inside < OUTERMOST) return;
      const fallen = roundedFall(inside);
      if (inside < 0) {
        const worn = clamp(0.4 + 0.9 * fractal1(x / 3.7, edge.seed + 24, 2), 0, 1);
        // gone before the border of what is cut, or it would end in a step
        const wear = 0.09 * worn * Math.exp(inside / mix(0.1, 0.3, worn)) * ease(-0.95, -0.6, inside);
        const rounded = Math.max(strip.z[k] - fallen * WALL_SLOPE, strip.parent[k] - fallen * WALL_SLOPE) - wear;
        strip.z[k] = mix(strip.z[k], rounded, share * (1 - covered) * ease(OUTERMOST, 0.5 * OUTERMOST, inside));
        return;
      }
      const relief = preparedRelief(edge.preparation, x, inside) * ease(0, 0.2, inside);
      const nick = 0.1 * ease(0.1, 0.55, gradient1(x / 1.3, edge.seed + 25)) * Math.exp(-((inside / 0.2) ** 2));
      const wall = strip.parent[k] - fallen * WALL_SLOPE + relief - nick;
      const i = nearestColumn(strip.grid, x);
      const floor = levelBetween(work, i, y) + plan.fill[i] + floorRelief(x, y);
      const bare = smoothMax(wall, floor, 0.25);
      strip.z[k] = mix(strip.z[k], bare, share * (1 - covered));
      strip.z[k] += 0.5 * floorRelief(x, y) * covered * share * ease(0, 0.4, open(x));
    });
  }

  /** The plates' level across the gap: a slope from edge to edge where they stand at different heights. */
  function levelBetween(work: FaceWork, i: number, y: number): number {
    const { grid, parent } = work.strip;
    const { groove } = work.plan;
    const at = (edge: number) => parent[nearestRow(grid, edge) * grid.columns + i];
    return mix(at(-groove - 0.2), at(groove + 0.2), clamp((y + groove) / (2 * groove), 0, 1));
  }

  /** Underside of the metal above: sagging crescents, lumps, grit. */
  function floorRelief(x: number, y: number): number {
    const sag = gradient1((x + 0.4 * y * y + 0.5 * gradient2(x / 2.3, y / 1.2, seed + 28)) / 0.9, seed + 29);
    return (
      0.1 * sag +
      0.13 * gradient2(x / 2.4, y / 1.2, seed + 26) +
      0.035 * gradient2(x / 0.5, y / 0.45, seed + 27) -
      0.07 * (y - 0.5 * gradient1(x / 4, seed + 32)) ** 2
    );
  }

  const boxOf = (work: FaceWork) => ({
    x0: from - 14,
    x1: to + 14,
    y0: -work.plan.groove - 2.6,
    y1: work.plan.groove + 2.6,
  });

  /** Rusty walls and edges; the floor dull metal, oxide and slag in patches, lighter than a hole. */
  function paintGap(work: FaceWork): void {
    const { strip } = work;
    forEachPixel(strip.grid, boxOf(work), (k, x, y) => {
      const edge = edges[y < 0 ? 0 : 1];
      const share = ease(0.1, 0.6, edge.envelope(x));
      if (share < 0.02) return;
      const inside = cornerAt(work, edge)(x) - Math.abs(y);
      const covered = strip.bead[k];
      const rust = ease(
        -0.05,
        0.45,
        gradient2(x / 2.6, y / 1.1, seed + 5) + 0.3 * gradient2(x / 0.8, y / 0.6, seed + 6),
      );
      paintCorner(strip, k, edge.preparation, x, inside + 0.04, 0.5 * share * (1 - covered));
      const outside = ease(-0.7, -0.05, inside) * share * (1 - covered);
      mixMaterial(
        strip,
        k,
        between(TONES.oxide, between(TONES.rust, TONES.brown, 0.5), rust),
        0.75,
        0.1,
        (0.4 + 0.4 * rust) * outside,
      );
      const within = ease(-0.02, 0.25, inside) * share;
      if (within <= 0) return;
      paintFloor(strip, k, x, y, ease(0.25, 0.6, inside), within, covered);
      mixMaterial(
        strip,
        k,
        between(TONES.rust, TONES.brown, 0.4),
        0.85,
        0.05,
        0.42 * within * rust * (1 - 0.6 * covered),
      );
      strip.brush[k] *= 1 - within;
    });
  }

  function paintFloor(
    field: FaceWork["strip"],
    k: number,
    x: number,
    y: number,
    onFloor: number,
    share: number,
    covered: number,
  ): void {
    const mottle = clamp(0.5 + 0.8 * gradient2(x / 1.4, y / 0.9, seed + 4), 0, 1);
    const wall = between(scaled(TONES.oxide, 1.2), scaled(TONES.brown, 1.2), mottle);
    const metal = between(scaled(TONES.skin, 1.3), scaled(TONES.cutMetal, 0.55), mottle);
    mixMaterial(
      field,
      k,
      between(wall, metal, onFloor),
      0.6,
      0.15 + 0.35 * onFloor * mottle,
      0.9 * share * (1 - 0.75 * covered),
    );
    const slag = ease(
      0.05,
      0.3,
      gradient2(x / 2.2, y / 0.8, seed + 33) + 0.35 * gradient2(x / 0.7, y / 0.5, seed + 34),
    );
    mixMaterial(field, k, scaled(TONES.slag, 2.6), 0.4, 0, 0.6 * share * slag * (1 - 0.5 * covered));
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
