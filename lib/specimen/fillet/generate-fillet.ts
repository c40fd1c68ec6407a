import { randomStream } from "../../random";
import { FILLET_STRIP_GRID, type Grid, nearestColumn, PLATE_PER_MM, type Surface, withGridRoom } from "../../surface";
import { type EndViews, FILLET_HALF_WIDTH, feeledGap, requiredThroat } from "../../weld";
import { leaveBlemishes } from "../blemishes";
import { checkFinite } from "../check-finite";
import { emptyWork, type WorkGrids } from "../create-work";
import { GENERATOR_VERSION } from "../generator-version";
import { measuredStops } from "../joint-items";
import { cleanJoint, finishPlate, layParentPlate, leaveWorkshopMarks, paintHeat, scatterSpatter } from "../plate";
import { paintWeld } from "../runs";
import type { FilletTruth, MeasuredGap, Point, TruthItem } from "../truth";
import type { FaceWork, Feature, FeatureRequest } from "../work";
import { dimensionTruths, sizesAlong } from "./dimensions";
import { endView } from "./end-view";
import type { FilletRecipe } from "./fillet-recipe";
import type { FilletClutterItem, FilletTruthItem } from "./fillet-truth";
import { foldUp } from "./fold-up";
import { gapItems } from "./gap-items";
import { buildFilletFeature, overlapItem } from "./imperfections";
import { layFillet } from "./lay-fillet";
import { laidOutJoint, planFillet } from "./plan-fillet";
import { sizeItems } from "./size-items";
import { statementTruths } from "./statements";
import { markStations } from "./stations";
import { foldedAcross, type Unfolding, unfoldingOf } from "./unfolding";

/** Laid out flat a joint reaches further than folded: half widths of the strip and of all that is made, mm. */
const STRIP_HALF = 37;
const WHOLE_HALF = 72;
const STRIP: Grid = {
  ...FILLET_STRIP_GRID,
  y0: -STRIP_HALF,
  rows: 2 * STRIP_HALF * FILLET_STRIP_GRID.perMm,
};
const sideGrid = (y0: number): Grid => ({
  columns: (STRIP.columns / STRIP.perMm) * PLATE_PER_MM,
  rows: (WHOLE_HALF - STRIP_HALF) * PLATE_PER_MM,
  perMm: PLATE_PER_MM,
  x0: 0,
  y0,
});
const GRIDS: WorkGrids = { strip: STRIP, sides: [sideGrid(-WHOLE_HALF), sideGrid(STRIP_HALF)] };

/** A fillet as made. */
export interface MadeFillet {
  readonly surface: Surface;
  readonly ends: EndViews;
  readonly truth: FilletTruth;
}

function createFilletWork(recipe: FilletRecipe): FaceWork {
  const bothFaces = randomStream(recipe.seed);
  const random = bothFaces.child("fillet");
  const joint = laidOutJoint(recipe, FILLET_HALF_WIDTH);
  return {
    ...emptyWork(GRIDS),
    face: "cap",
    joint,
    plates: { stepAtDatum: 0, stepAtFarEnd: 0, distortion: 0 },
    plan: planFillet(recipe, joint, recipe.look, STRIP, random),
    look: recipe.look,
    random,
    bothFaces,
  };
}

/**
 * Makes the fillet of a recipe and measures its truth. `onStage` hears in plain words what is being done. The same recipe
 * gives the same bytes. Throws where a height is not a
 * number and where a station has no weld.
 */
export function generateFillet(recipe: FilletRecipe, onStage: (stage: string) => void = () => {}): MadeFillet {
  return withGridRoom(() => makeFillet(recipe, onStage));
}

function makeFillet(recipe: FilletRecipe, onStage: (stage: string) => void): MadeFillet {
  const work = createFilletWork(recipe);
  const random = randomStream(recipe.seed);
  const throat = requiredThroat(recipe.joint.size);
  const features = recipe.requests.map((request) => buildFilletFeature(request, random.child(request.id), throat));
  for (const feature of features) feature.plan?.(work);
  const unfolding = unfoldingOf(work.plan, STRIP.perMm);
  onStage("cutting the plates");
  layParentPlate(work);
  cleanJoint(work);
  onStage("welding");
  layFillet(work, unfolding);
  for (const feature of features) feature.cut?.(work);
  onStage("cleaning");
  paintHeat(work);
  withGridRoom(() => paintWeld(work));
  leaveBlemishes(work);
  scatterSpatter(work, recipe.stations);
  leaveWorkshopMarks(work);
  finishPlate(work, recipe.number);
  markStations(work, recipe.stations);
  for (const feature of features) feature.paint?.(work);
  checkFinite(work);
  onStage("measuring");
  const surface = foldUp(work, unfolding);
  const end = (at: "datum" | "farEnd") => endView(recipe.joint, surface, recipe.gap[at], at, random.child(`end ${at}`));
  const ends = { datum: end("datum"), farEnd: end("farEnd") };
  return { surface, ends, truth: truthOf(recipe, surface, ends, work, unfolding, features) };
}

function truthOf(
  recipe: FilletRecipe,
  surface: Surface,
  ends: MadeFillet["ends"],
  work: FaceWork,
  unfolding: Unfolding,
  features: readonly Feature[],
): FilletTruth {
  const gap: MeasuredGap = { datum: feeledGap(ends.datum), farEnd: feeledGap(ends.farEnd) };
  const planted = features.map((feature) => feature.measure?.(work) ?? null).filter((item) => item !== null);
  const rolled = recipe.requests.map((request) => rolledOut(request, surface)).filter((item) => item !== null);
  const stops = measuredStops(work).filter((stop) => !planted.some((item) => isSameStop(item, stop)));
  const places = [...[...planted, ...stops].map((item) => foldedItem(item, unfolding)), ...rolled];
  const along = sizesAlong(surface);
  const sizes = sizeItems(along, requiredThroat(recipe.joint.size)).filter(
    (item) => !places.some((other) => explains(other, item)),
  );
  const clutter = features
    .map((feature) => feature.clutter?.(work) ?? null)
    .filter((item) => item !== null)
    .map((item): FilletClutterItem => {
      const folded = (point: Point) => foldedPoint(unfolding, point);
      const [, across] = folded([(item.start + item.end) / 2, item.across]);
      return { ...item, face: "fillet", across, outline: item.outline.map(folded) };
    });
  return {
    version: 1,
    generator: GENERATOR_VERSION,
    joint: recipe.joint,
    items: inOrder([...places, ...sizes, ...gapItems(gap, recipe.joint.length)]).map((item, n) => ({
      ...item,
      id: `fillet-${n + 1}`,
    })),
    clutter: inOrder(clutter).map((item, n) => ({ ...item, id: `fillet-clutter-${n + 1}` })),
    dimensions: dimensionTruths(surface, along, recipe.stations),
    statements: statementTruths(along, recipe.joint.size),
    stations: recipe.stations,
    gap,
  };
}

/** An overlap is measured where it lies on its plate: laid out flat, a flat weld has no edge to go by. */
function rolledOut({ id, type, x, length, side }: FeatureRequest, surface: Surface): FilletTruthItem | null {
  return type === "overlap" ? overlapItem(surface, id, side, { from: x - 6, to: x + length + 6 }) : null;
}

const inOrder = <T extends { readonly start: number; readonly across: number }>(items: readonly T[]): T[] =>
  [...items].sort((a, b) => a.start - b.start || a.across - b.across);

/** A planted restart is the same stop, wherever its size was found; other things hide a stop that lies within them; mm. */
function isSameStop(item: TruthItem, stop: TruthItem): boolean {
  const beyond = item.type === stop.type ? 9 : 2;
  const isInCrater = item.type === "crater-pipe" || item.type === "crater-crack";
  return !isInCrater && item.start - beyond < stop.start && stop.start < item.end + beyond;
}

/** What changes a toe changes the legs too: it is not charged twice. Share of its length that it must cover. */
const COVERS = 0.5;
/** A restart brings a little too much or too little over this length, mm. */
const STOP_LENGTH = 16;
const CHANGES_LEGS: readonly string[] = [
  "overlap",
  "continuous-undercut",
  "intermittent-undercut",
  "incorrect-weld-toe",
];

function explains(place: FilletTruthItem, size: FilletTruthItem): boolean {
  const common = Math.min(place.end, size.end) - Math.max(place.start, size.start);
  if (place.type === "poor-restart") return common >= 0 && size.end - size.start < STOP_LENGTH;
  return !place.neutral && CHANGES_LEGS.includes(place.type) && common > COVERS * (size.end - size.start);
}

const foldedPoint = (unfolding: Unfolding, [x, y]: Point): Point => [
  x,
  foldedAcross(unfolding, nearestColumn(STRIP, x), y),
];

/** An item measured on the joint laid out flat, with its places as they lie once the plates are folded up. */
function foldedItem(item: TruthItem, unfolding: Unfolding): FilletTruthItem {
  const folded = (point: Point) => foldedPoint(unfolding, point);
  return {
    ...item,
    face: "fillet",
    across: folded([(item.start + item.end) / 2, item.across])[1],
    worst: folded(item.worst),
    outline: item.outline.map(folded),
  };
}
