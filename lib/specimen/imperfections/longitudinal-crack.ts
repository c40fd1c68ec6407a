import type { RandomStream } from "../../random";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { unevenOpening } from "./crack-opening";
import { crackPath, echelonPieces, settleIntoCreases } from "./crack-path";
import { placeOnRun, runIndex, visibleRun } from "./visible-run";

/** Where a longitudinal crack runs. */
const PLACES = {
  /** Along the middle of a run. */
  centre: { wander: 0.6, settle: 0.6, apart: 0.42, facet: 0.6, jagged: 0.28 },
  /** In the valley beside a run, where the next one lies against it. */
  valley: { wander: 0.2, settle: 0.45, apart: 0.2, facet: 0.6, jagged: 0.2 },
  /** In the corner of a toe. */
  toe: { wander: 0.14, settle: 0.24, apart: 0.12, facet: 0.55, jagged: 0.13 },
  /** In the plate 1.2 to 2.2 mm outside a toe. */
  haz: { wander: 0.35, settle: 0.12, apart: 0.34, facet: 0.7, jagged: 0.2 },
} as const;
type Place = keyof typeof PLACES;

const NOTCH = 0.2;
/** A finer crack could not be seen at all, mm. */
const FINEST = 0.055;
/** Tips too fine to be seen, mm at each end. */
const HIDDEN_TIP = 0.35;

/** How often a crack in the middle of a weld of several runs lies in a valley between two. */
const IN_VALLEY = 0.6;
/** A crack of usual length gapes as asked, a short one less: share at no length, and what comes to it per mm. */
const GAPING = { least: 0.45, perMm: 0.023, most: 1.15 };

function baseLine(work: FaceWork, request: FeatureRequest, place: Place, away: number): (x: number) => number {
  const run = runIndex(work, request);
  if (place === "centre") return (x) => request.y ?? placeOnRun(work, run, x);
  if (place === "valley") {
    const isFirst = run === 0;
    return (x) => {
      const { low, high } = visibleRun(work, run, x);
      return isFirst ? high : low;
    };
  }
  const outside = place === "haz" ? away : 0.05;
  return (x) => toeAt(work, request.side, x, 1.2) + request.side * outside;
}

function placeOf(work: FaceWork, request: FeatureRequest, random: RandomStream): Place {
  if (request.variant === "toe" || request.variant === "haz") return request.variant;
  const canBeValley = request.y === undefined && work.plan.runs.length > 1;
  return canBeValley && random.chance(IN_VALLEY) ? "valley" : "centre";
}

function openingOf({ severity, length }: FeatureRequest): number {
  const asked = severity > 0 ? severity : 0.15;
  return Math.max(FINEST, asked * Math.min(GAPING.most, GAPING.least + GAPING.perMm * length));
}

function drawLines(work: FaceWork, request: FeatureRequest, path: RandomStream): CrackLine[] {
  const place = placeOf(work, request, path);
  const shape = PLACES[place];
  const base = baseLine(work, request, place, path.uniform(1.2, 2.2));
  const straight = crackPath(
    path,
    [request.x - HIDDEN_TIP, 0],
    [request.x + request.length + HIDDEN_TIP, 0],
    shape.wander,
    shape.facet,
    shape.jagged,
  );
  const laid = straight.map(([x, y]): Point => [x, y + base(x)]);
  const settled = settleIntoCreases(work.strip, laid, shape.settle);
  const pieces = request.length > 10 ? 1 + path.integer(Math.min(4, Math.floor(request.length / 8) + 1)) : 1;
  const widest = openingOf(request);
  return echelonPieces(path, settled, pieces, shape.apart).map((points) => ({
    points,
    width: unevenOpening(path, widest * path.uniform(0.85, 1.15)),
    depth: NOTCH,
  }));
}

/**
 * A crack along the weld from `x` over `length` mm, `severity` mm wide (0.07 to 0.22; less where it is short), variant
 * "centre" (default; on the run's middle or in a valley between two), "toe" or "haz", in one to four pieces that overlap.
 * Truth: from the first to the last place where the opening covers a quarter of a pixel or more; no size.
 */
export const longitudinalCrack: FeatureBuilder = (request, random) =>
  crackFeature(request.id, "longitudinal-crack", random, (work) => drawLines(work, request, random.child("path")));
