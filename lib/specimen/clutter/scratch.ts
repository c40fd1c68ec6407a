import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, value1 } from "../../surface";
import { mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Point } from "../truth";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { drawByHand, type HandLine, visitAlong } from "./hand-line";
import { besideToe } from "./place";
import { CLUTTER_TONES as TONES } from "./tones";

/** One furrow, straight as what cut it; lengths in mm. */
interface Furrow {
  readonly line: HandLine;
  readonly depth: number;
  readonly half: number;
  /** On which side the burr was thrown up. */
  readonly burr: 1 | -1;
  /** Gap between touches where a chain skipped, 0 for one steady edge. */
  readonly beat: number;
  readonly phase: number;
  /** How bright it still is: an old one has the colour of the plate, only its relief is seen. */
  readonly fresh: number;
  readonly seed: number;
}

/** No furrow is deeper than this, mm: grinding marks are measured from 0.08 mm, grooves from 0.1 mm. */
const DEEPEST = 0.06;
/** A furrow so deep shows by its relief as plainly as by bare steel, mm; a third of it is just seen. */
const PLAIN_RELIEF = 0.04;
const STEADY = { sway: 0.07, tremor: 0.015 };

/** Touches of a chain: each link bites, slides and lifts. */
function touching({ beat, phase, seed }: Furrow, along: number): number {
  if (beat === 0) return clamp(0.85 + 0.35 * gradient1(along / 6, seed), 0.2, 1);
  const at = along / beat + phase + 0.22 * gradient1(along / 17, seed);
  const share = at - Math.floor(at);
  const bite = 0.7 + 0.45 * value1(Math.floor(at), seed + 1);
  return bite * ease(0, 0.12, share) * ease(0.8, 0.35, share);
}

function cut(work: FaceWork, furrow: Furrow, footprint: Footprint): void {
  const { line, half, depth, burr, seed } = furrow;
  visitAlong(work, line, 3 * half + 0.1, (field, box) => {
    const wide = grainOf(field, box, 1.2);
    return (k, x, y, off, along) => {
      const ends = ease(0, 0.8, along) * ease(0, 0.35 * line.length, line.length - along);
      // on the weld it slides from crest to crest; on the plate it hardly ever lifts
      const high = field.bead[k] > 0.3 ? ease(-0.9, 0.3, wide(k)) : ease(-3.2, -1.6, wide(k));
      const pressed = touching(furrow, along) * ends * high;
      const wideHere = Math.max(half * (0.6 + 0.5 * pressed), 1.1 / field.grid.perMm);
      const outward = off / wideHere;
      const core = clamp(1 - Math.abs(outward), 0, 1) * pressed;
      if (core > 0.01) {
        field.z[k] -= depth * core;
        const grain = 0.85 + 0.2 * gradient1(off / 0.11, seed + 3);
        const shine = ease(0.02, 0.3, core);
        mixMaterial(field, k, scaled(TONES.bareSteel, grain), 0.34, 0.8, furrow.fresh * shine);
        field.brush[k] *= 1 - 0.7 * shine;
        const bright = ease(0.08, 0.58, core) * clamp(1.7 * furrow.fresh, 0, 1);
        leaveTrace(footprint, field, x, y, Math.max(bright, ease(0, PLAIN_RELIEF, depth * core)));
      }
      const lip =
        Math.exp(-(((burr * outward - 1.35) / 0.4) ** 2)) *
        pressed *
        clamp(0.5 + gradient1(along / 1.7, seed + 4), 0, 1);
      field.z[k] += 0.55 * depth * lip;
    };
  });
}

/** The furrows of one scratch from a to b, `severity` mm deep at most. */
function drawFurrows(random: RandomStream, from: Point, to: Point, depth: number, isChain: boolean): Furrow[] {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const long = hypot(dx, dy) || 1;
  const bow = random.normal(0, 0.012) * long;
  const count = isChain ? 3 + random.integer(3) : random.chance(0.25) ? 2 : 1;
  const beat = isChain ? random.uniform(5.5, 9.5) : 0;
  const slip = random.uniform(0.1, 0.5);
  const fresh = random.chance(0.4) ? random.uniform(0.4, 0.65) : random.uniform(0.22, 0.36);
  return Array.from({ length: count }, (_, n) => {
    const beside = isChain ? (n - count / 2) * random.uniform(0.8, 1.9) : n * random.uniform(0.5, 1.3);
    const spread = beside + random.normal(0, 0.2);
    const at = (share: number): Point => [
      from[0] + dx * share - (dy / long) * (spread + 4 * bow * share * (1 - share)),
      from[1] + dy * share + (dx / long) * (spread + 4 * bow * share * (1 - share)),
    ];
    const first = n === 0 ? 0 : random.uniform(0, 0.25);
    const last = n === 0 ? 1 : random.uniform(0.6, 1);
    const corners = [0, 0.25, 0.5, 0.75, 1].map((q) => at(first + (last - first) * q));
    return {
      line: drawByHand(random, random.chance(0.5) ? corners : corners.reverse(), STEADY),
      // the tracks of a chain cross each other
      depth: Math.min(DEEPEST, depth * (n === 0 ? 1 : random.uniform(0.35, 0.8))) * (isChain ? 0.6 : 1),
      half: random.uniform(0.15, 0.27) * (isChain ? 1.4 : 1),
      burr: random.pick([-1, 1] as const),
      beat,
      phase: n * slip + random.uniform(0, 0.2),
      fresh,
      seed: random.seed(),
    };
  });
}

/**
 * A scratch from handling, at most 0.06 mm deep whatever `severity` asks: straight, with a burr, bright or as old as the plate. `variant` along
 * (beside the weld), across (over toe and weld) or chain (the dotted track of a dragged chain); `length` mm long.
 */
export const scratch: FeatureBuilder = (request, random): Feature => {
  const variant = request.variant ?? "along";
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const draw = random.child("furrows");
      const half = Math.max(5, request.length) / 2;
      const { x, y, side } = besideToe(work, request, variant === "across" ? 0 : draw.uniform(0.8, 5));
      const angle = variant === "across" ? draw.uniform(0.7, 1.4) : draw.normal(0, variant === "chain" ? 0.25 : 0.09);
      const turn = draw.pick([-1, 1]) * side;
      const dx = half * Math.cos(angle);
      const dy = turn * half * Math.sin(angle);
      const furrows = drawFurrows(draw, [x - dx, y - dy], [x + dx, y + dy], request.severity, variant === "chain");
      for (const furrow of furrows) cut(work, furrow, footprint);
    },
    clutter: (work) => clutterFrom(work, request.id, "scratch", footprint),
  };
};
