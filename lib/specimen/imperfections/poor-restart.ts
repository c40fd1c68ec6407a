import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { nearestColumn, sampleAt } from "../../surface";
import { forColumns } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { type ColdLap, cutColdLap, paintColdLap } from "./cold-lap";
import { placeStop, setStart } from "./electrode-stop";
import { drawHollow, type Hollow, layHollow, paintHollow } from "./restart-hollow";
import { drawLump, heapLump, paintLump, type RestartLump } from "./restart-lump";
import { measuredRestart, ownLevel, type RestartPlace } from "./restart-profile";
import { cutRemains, drawCaughtSlag, drawPinhole, paintRemains, type Remains } from "./restart-remains";
import { type Spoilt, spoilByGap, spoilByHump } from "./restart-ways";
import { runIndex } from "./visible-run";

interface Planned {
  readonly spoilt: Spoilt;
  readonly lap: ColdLap;
  readonly place: RestartPlace;
  readonly direction: 1 | -1;
}

/** Ends one electrode and starts the next badly. Null where the weld is too short for a stop. */
function planRestart(work: FaceWork, request: FeatureRequest, random: RandomStream): Planned | null {
  const index = runIndex(work, request);
  const run = work.plan.runs[index];
  const { direction } = run;
  const i = nearestColumn(work.strip.grid, request.x);
  const halfWidth = run.halfWidth[i];
  const shape = request.variant === "gap" ? "gap" : "hump";
  const spoil = shape === "gap" ? spoilByGap : spoilByHump;
  const spoilt = spoil({ face: work.face, halfWidth, isWeave: run.weave, severity: request.severity }, random);
  const stop = placeStop(run, request.x + direction * spoilt.front);
  if (!stop) return null;
  const start = request.x + direction * spoilt.start;
  stop.earlier.crater = spoilt.crater;
  setStart(stop.later, direction, start);
  const later = Object.assign(stop.later, spoilt.later);
  if (spoilt.swelling) swell(work, index, start, spoilt.swelling);
  const { shift, widen, rearRadius = 0, lapSeed = 0, lapSlant = 0, lapRagged = 1, narrow = 0 } = later;
  return {
    spoilt,
    direction,
    place: { x: request.x, y: run.centre[i], halfWidth, shape },
    lap: {
      run: index,
      direction,
      x: start,
      y: run.centre[i] + shift,
      halfWidth: (halfWidth + widen) * (1 - narrow),
      rearRadius,
      seed: lapSeed,
      slant: lapSlant,
      ragged: lapRagged,
      fused: random.uniform(0.25, 0.75) + 0.3 * (1 - spoilt.cold),
      cold: spoilt.cold,
    },
  };
}

/** The hand, too fast at first, waits: the run swells some way on, more to one side. */
function swell(
  { plan, strip }: FaceWork,
  index: number,
  start: number,
  { height, at, reach }: NonNullable<Spoilt["swelling"]>,
): void {
  const run = plan.runs[index];
  const middle = start + run.direction * at;
  const aside = (run.seed % 2 === 0 ? 1 : -1) * 0.07;
  forColumns(strip.grid, middle - 3 * reach, middle + 3 * reach, (i, x) => {
    const along = (run.direction * (x - middle)) / reach;
    // up at once, slowly down again
    const share = Math.exp(-((along < 0 ? 1.5 * along : 0.8 * along) ** 2));
    run.height[i] += height * share;
    run.centre[i] += aside * share * run.halfWidth[i];
    run.halfWidth[i] *= 1 + 0.16 * share;
  });
}

/** The notch before a restart may hold slag, an open crater a fine hole. */
const REMAINS = { slag: 0.4, pinhole: { hump: 0.15, gap: 0.28 } };
/** A trough runs out into the ends of the beads over a share of the run's width and this, mm. */
const HOLLOW_REACH: readonly [number, number] = [1.2, 3.2];
/** How far a trough lies below the run's toes, mm. */
const TROUGH: readonly [number, number] = [-1.2, 1.3];
/** Where beside a run its toes are felt, and the widest opening of the joint under it, in half widths. */
const TOE = 1.04;
const OPENING = 0.85;

/** Draws what lies in the notch, on the surface as laid. */
function drawRemains(work: FaceWork, { place, lap, spoilt, direction }: Planned, random: RandomStream): Remains[] {
  const remains: Remains[] = [];
  const notch = lap.x - direction * lap.rearRadius;
  const inCrater = notch - direction * random.uniform(0.3, 0.7) * place.halfWidth;
  const isSlaggy = ["111", "136"].includes(work.joint.process);
  if (isSlaggy && lap.cold > 0.15 && random.chance(REMAINS.slag))
    remains.push(drawCaughtSlag(random, notch - direction * 0.25, place.y, lap.halfWidth));
  if (spoilt.crater > 0.3 && random.chance(REMAINS.pinhole[place.shape]))
    remains.push(drawPinhole(random, inCrater, place.y, lap.halfWidth));
  return remains;
}

/** The open stretch between the two lengths, as deep as asked below the run's own level. */
function hollowOf(work: FaceWork, { place, lap, direction }: Planned, severity: number, random: RandomStream): Hollow {
  const { grid, z } = work.strip;
  const { x, y, halfWidth } = place;
  const run = work.plan.runs[lap.run];
  const reach = 0.6 * halfWidth + random.uniform(...HOLLOW_REACH);
  const toe = (side: 1 | -1) =>
    (sampleAt(grid, z, x - reach - 1, y + side * TOE * halfWidth) +
      sampleAt(grid, z, x + reach + 1, y + side * TOE * halfWidth)) /
    2;
  const toes: readonly [number, number] = [toe(-1), toe(1)];
  const level = (toes[0] + toes[1]) / 2;
  const crown = (ownLevel(work, place) ?? level) - level;
  return drawHollow(random, {
    run: lap.run + 1,
    x,
    y,
    direction,
    runHalf: halfWidth,
    pitch: run.pitch,
    tail: run.tail[nearestColumn(grid, x)] * halfWidth,
    reach,
    opening: Math.min(work.plan.groove, OPENING * halfWidth),
    toes,
    crown,
    lower: clamp(severity - crown, ...TROUGH),
  });
}

/** A lump that stands about as high above the run's own level as asked. */
function drawOwnLump(work: FaceWork, { place, lap, spoilt }: Planned, random: RandomStream): RestartLump {
  const { x, y, halfWidth } = place;
  const here = sampleAt(work.strip.grid, work.strip.z, x, y);
  const height = spoilt.lump - here + (ownLevel(work, place) ?? here);
  return drawLump(random, { run: lap.run + 1, x, y, halfWidth, height: Math.max(0.4, height) });
}

/** A piece of a restart that is cut into the laid metal and painted later. */
type Paint = () => void;

function cutPieces(work: FaceWork, planned: Planned, severity: number, random: RandomStream): Paint[] {
  const { strip } = work;
  const { place, lap, spoilt } = planned;
  const paints: Paint[] = [];
  const crease = cutColdLap(strip, lap);
  paints.push(() => paintColdLap(strip, lap, crease));
  if (place.shape === "gap") {
    const hollow = hollowOf(work, planned, severity, random.child("hollow"));
    const trace = layHollow(work, hollow);
    paints.push(() => paintHollow(strip, hollow, trace));
  }
  if (spoilt.lump > 0) {
    const lump = drawOwnLump(work, planned, random.child("lump"));
    const trace = heapLump(strip, lump);
    paints.push(() => paintLump(strip, lump, trace));
  }
  for (const remains of drawRemains(work, planned, random.child("remains"))) {
    const trace = cutRemains(strip, remains);
    paints.push(() => paintRemains(strip, remains, trace));
  }
  return paints;
}

/**
 * A bad restart at `x` on a run: variant "hump" (default; metal heaped up by about `severity` mm in one of the ways of
 * `spoilByHump`) or "gap" (a hollow left between the electrode lengths, see `spoilByGap`). Truth: a point; size = height of the hump above the run's own mean, or depth of the gap below it, see
 * `measuredRestart`.
 */
export const poorRestart: FeatureBuilder = (request, random): Feature => {
  let planned: Planned | null = null;
  let paints: readonly Paint[] = [];
  return {
    id: request.id,
    plan(work) {
      planned = planRestart(work, request, random.child("plan"));
    },
    cut(work) {
      if (planned) paints = cutPieces(work, planned, request.severity, random.child("cut"));
    },
    paint() {
      for (const paint of paints) paint();
    },
    measure: (work) => planned && measuredRestart(work, request.id, planned.place, false),
  };
};
