import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2, nearestColumn, rowY } from "../../surface";
import { mixMaterial } from "../field";
import { betweenEdges, measureHollow } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, FeatureBuilder } from "../work";
import { cutExposedFace, type ExposedFace, type ExposedTrace, paintExposedFace } from "./exposed-face";
import { truthItem } from "./found";
import { cornerAlong } from "./missed-edge";
import { drawPreparation } from "./prepared-face";
import { drawSagShape, type SagShape } from "./sagging-shape";
import { TONES } from "./tones";
import { evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";

const THRESHOLD = 0.2;
const BRIDGE = 4;
/** What ripples and a wandering middle add to the depth, as a share of it. */
const DEEPENED = 0.92;
/** The level in the middle of the hollow is felt over so much to both sides along and across, mm. */
const FELT = { along: 1.6, across: 0.7 };
/** What is left of a crown where the runs have already lost their height, mm. */
const CROWN = 0.6;
/** Ripples in the hollow are drawn out by so much. */
const DRAWN_BACK = 0.7;
/** The runs change over this length beyond both ends, mm. */
const BEYOND = 14;

/**
 * Sagging: metal that ran down by its own weight while it was liquid. Where it ran follows the welding position
 * (`drawSagShape`): in PC to the lower toe, leaving the upper plate's edge bare or barely covered; in PA and PF the
 * middle sank; in PE a belly hangs beside a hollow on the asked side. `severity` = largest depth below the plates, mm.
 * Truth: `measureHollow` between the groove's edges, threshold 0.2 mm.
 */
export const buildSagging: FeatureBuilder = (request, random) => {
  const ends = { first: random.uniform(12, 22), last: random.uniform(12, 22) };
  // until the normal crown is gone nothing lies below the plates: that part of the ends lies outside what was asked
  const before = (CROWN + THRESHOLD) / (CROWN + request.severity);
  const from = request.x - before * ends.first;
  const to = request.x + request.length + before * ends.last;
  const seed = random.seed();
  const shapes = random.child("shape");
  const preparation = drawPreparation(random.child("preparation"));
  const envelope = unevenEnvelope(from, to, ends, 1.1, seed);
  const uneven = (x: number) =>
    clamp(0.82 + 0.34 * gradient1(x / 9.5, seed + 2) + 0.04 * gradient1(x / 3.4, seed + 3), 0.35, 1.2);
  const most = largestAlong(from, to, (x) => envelope(x) * uneven(x));
  const depthAt = (x: number) => (DEEPENED * request.severity * uneven(x)) / most;
  const slow = evenedOut(envelope, 3);
  /** The metal came down in waves, a few to the centimetre at most. */
  const waves = (x: number) =>
    clamp(0.75 + 0.6 * gradient1(x / 8.7, seed + 5) + 0.2 * gradient1(x / 3.4, seed + 6), 0.1, 1.4);
  let shape: SagShape | null = null;
  let face: ExposedFace | null = null;
  let trace: ExposedTrace = [];
  const shapeOf = (work: FaceWork): SagShape => {
    shape ??= drawSagShape(shapes, work.joint.position, request.side);
    return shape;
  };

  /** The layer below sank too, or the runs would stand on a ridge. */
  function lowerFill(work: FaceWork): void {
    const { fill } = work.plan;
    forColumns(work.strip.grid, from - 3, to + 3, (i, x) => {
      const low = Math.min(fill[i], -request.severity - 0.5 + 0.15 * gradient1(x / 6, seed + 8));
      fill[i] = mix(fill[i], low, slow(x));
    });
  }

  /** Runs lose their height the nearer they lie to the hollow's middle, and gain it under the bulge. */
  function shapeRuns(work: FaceWork): void {
    const { runs, groove } = work.plan;
    const { hollow, reach, bulge, bulgeHalf, bulgeHeight } = shapeOf(work);
    const isOne = runs.length === 1;
    forColumns(work.strip.grid, from - BEYOND, to + BEYOND, (i, x) => {
      const share = slow(x);
      if (share <= 0) return;
      for (const run of runs) {
        const at = isOne ? hollow : run.centre[i] / groove;
        const away = at > hollow ? (at - hollow) / reach.plus : (hollow - at) / reach.minus;
        const sunk = isOne ? 0.75 : 0.85 * ease(1.2, 0.2, away);
        const raised = isOne ? 0 : ease(1.1, 0.2, Math.abs(at - bulge) / bulgeHalf);
        run.height[i] *= 1 - share * sunk;
        run.height[i] += 0.6 * share * raised * bulgeHeight * request.severity * waves(x);
        run.ripple[i] *= 1 + 0.5 * share * sunk;
        // the middle froze last and was drawn back farthest
        run.tail[i] *= 1 + DRAWN_BACK * share * sunk;
      }
    });
  }

  /** The lower toe is pushed out and rolled; the upper one stays back from the edge of its plate, or only just covers it. */
  function moveToes(work: FaceWork): void {
    const { plan } = work;
    const { pushed, bare, bulge } = shapeOf(work);
    if (pushed <= 0) return;
    const under = bulge < 0 ? -1 : 1;
    const lower = outerRun(plan, under);
    const upper = outerRun(plan, under < 0 ? 1 : -1);
    const corner = cornerAlong(work, seed + 20);
    const rolled = under < 0 ? lower.exponentMinus : lower.exponentPlus;
    const thin = under < 0 ? upper.exponentPlus : upper.exponentMinus;
    forColumns(work.strip.grid, from - BEYOND, to + BEYOND, (i, x) => {
      const share = slow(x);
      const reach = Math.min(2.4, pushed * request.severity) * waves(x) * share;
      moveToe(lower, under, i, lower.centre[i] + under * (lower.halfWidth[i] + reach), 1);
      rolled[i] = mix(rolled[i], 5.2, share);
      thin[i] = mix(thin[i], 1.5, share);
      const lead = ease(from - 12, from + 3, x) * ease(to + 12, to - 3, x);
      const covering = corner(x) + 0.4 + 0.3 * gradient1(x / 3.7, seed + 21);
      const kept = bare
        ? covering - (covering - corner(x) + (bare.depth * depthAt(x)) / plan.wallSlope) * envelope(x)
        : covering;
      moveToe(upper, under < 0 ? 1 : -1, i, -under * kept, 0.95 * lead);
    });
  }

  /** Brings the hollow to its depth: the level that the runs left there is felt, evened out along x, and lowered smoothly. */
  function sink(work: FaceWork): void {
    const { strip, plan } = work;
    const { grid, z } = strip;
    const { hollow, reach, bulge, bulgeHalf, bulgeHeight, pushed } = shapeOf(work);
    const chord = levelBetweenPlates(work);
    const middle = (x: number) => plan.groove * (hollow + 0.1 * gradient1(x / 12, seed + 10));
    const levels = feltAlong(work, middle);
    const hang = pushed > 0 ? 0.7 : 0.8;
    const { direction, tail, halfWidth } = plan.runs[0];
    const at = nearestColumn(grid, (from + to) / 2);
    const lag = 0.6 * direction * tail[at] * halfWidth[at];
    const half = plan.groove + 4;
    forEachPixel(grid, { x0: from - 2, x1: to + 2, y0: -half, y1: half }, (k, x, y, i) => {
      if (strip.bead[k] < 0.02) return;
      // it sank while it froze: along the crescents, not straight across
      const froze = direction * strip.travel[k] - lag;
      const share = envelope(strip.run[k] > 0 ? clamp(froze, x - 3, x + 3) : x);
      if (share <= 0) return;
      const off = (y - middle(x)) / plan.groove;
      const wavering = off > 0 ? 31 : 32;
      const waver = 1 + 0.3 * gradient1(x / 8.3, seed + wavering) + 0.12 * gradient1(x / 3.1, seed + 3 + wavering);
      // towards its ends it narrows: the metal sank where it was hottest
      const v = off / ((off > 0 ? reach.plus : reach.minus) * waver * mix(0.4, 1, Math.sqrt(share)));
      const hollowed = Math.abs(v) < 1 ? 0.5 + 0.5 * Math.cos(Math.PI * v) : 0;
      const down = share * Math.max(0, levels[i] + depthAt(x)) * hollowed;
      const b =
        (y / plan.groove - bulge - 0.16 * gradient1(x / 9.3, seed + 14)) /
        (bulgeHalf * (1 + 0.2 * gradient1(x / 4.4, seed + 13)));
      const belly = Math.abs(b) < 1 ? (1 - b * b) ** 1.5 : 0;
      const up = hang * share * bulgeHeight * request.severity * waves(x) * belly * ease(0.1, 0.6, strip.bead[k]);
      z[k] += (up - down) * strip.bead[k];
      strip.clean[k] = Math.max(strip.clean[k], 0.7 * share * Math.max(hollowed, belly));
    });

    /** Height of the metal over the chord of the plates in the hollow's middle, per column, mm. */
    function feltAlong({ strip: { grid: g } }: FaceWork, y: (x: number) => number): Float32Array {
      const raw = new Float32Array(g.columns);
      const reachRows = Math.round(FELT.across * g.perMm);
      forColumns(g, from - 8, to + 8, (i, x) => {
        const j = Math.round((y(x) - g.y0) * g.perMm - 0.5);
        let sum = 0;
        for (let n = -reachRows; n <= reachRows; n++) sum += z[(j + n) * g.columns + i] - chord(i, rowY(g, j + n));
        raw[i] = sum / (2 * reachRows + 1);
      });
      const columns = Math.round(FELT.along * g.perMm);
      const even = new Float32Array(g.columns);
      forColumns(g, from - 5, to + 5, (i) => {
        let sum = 0;
        for (let n = -columns; n <= columns; n++) sum += raw[clamp(i + n, 0, g.columns - 1)];
        even[i] = sum / (2 * columns + 1);
      });
      return even;
    }
  }

  function bareFace(work: FaceWork, bare: NonNullable<SagShape["bare"]>): ExposedFace {
    return {
      side: bare.side,
      range: { from, to },
      preparation,
      corner: cornerAlong(work, seed + 20),
      shown: (x) => ease(0.25, 0.6, envelope(x)),
      slope: work.plan.wallSlope,
      floor: Number.POSITIVE_INFINITY,
      crevice: 0.08,
      gaping: 0.05,
      beyondCentre: 0,
    };
  }

  return {
    id: request.id,
    plan(work) {
      lowerFill(work);
      shapeRuns(work);
      moveToes(work);
    },
    cut(work) {
      sink(work);
      const { bare } = shapeOf(work);
      if (!bare) return;
      face = bareFace(work, bare);
      trace = cutExposedFace(work, face);
    },
    paint(work) {
      const { strip, plan } = work;
      if (face) paintExposedFace(work, face, trace);
      // slow metal under its own skin of oxide: duller than the weld beside it, in patches
      forEachPixel(strip.grid, { x0: from, x1: to, y0: -plan.groove - 3, y1: plan.groove + 3 }, (k, x, y) => {
        const share = envelope(x) * strip.bead[k] * ease(0.1, 0.5, gradient2(x / 7, y / 3.5, seed + 15) + 0.25);
        if (share > 0.02) mixMaterial(strip, k, TONES.skin, 0.5, 0.45, 0.4 * share);
      });
    },
    measure(work) {
      const found = measureHollow(work, betweenEdges(work.plan.groove), 1, {
        range: { from: from - 2, to: to + 2 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "sagging", found);
    },
  };
};
