import type { ImperfectionType } from "../imperfections";
import { randomStream } from "../random";
import { finishSurface, type Surface } from "../surface";
import { FACES, type Face } from "../weld";
import { checkFinite } from "./check-finite";
import { createWork } from "./create-work";
import { buildFeature } from "./imperfections";
import { measuredAngle, measuredMisalignment, measuredStops } from "./joint-items";
import { cleanJoint, finishPlate, layParentPlate, leaveWorkshopMarks, paintHeat, scatterSpatter } from "./plate";
import { drawRecipe, type Recipe } from "./recipe";
import { layWeld, paintWeld } from "./runs";
import type { ClutterItem, Truth, TruthItem } from "./truth";
import type { FaceWork, Feature } from "./work";

/** Changes whenever the same seed would give another surface or another truth. */
export const GENERATOR_VERSION = "1";

export interface MadeFace {
  readonly face: Face;
  readonly surface: Surface;
  /** What can be found on this face, measured from the finished surface, in order of place. */
  readonly items: readonly TruthItem[];
  /** What else lies there and tempts to a false call, in order of place. */
  readonly clutter: readonly ClutterItem[];
}

export interface Specimen {
  readonly recipe: Recipe;
  readonly surfaces: Readonly<Record<Face, Surface>>;
  readonly truth: Truth;
}

/**
 * Makes one face of a recipe's specimen and measures its truth. `onStage` hears in plain words what is being done. The
 * same recipe gives the same bytes. Throws where a height is not a number.
 */
export function generateFace(recipe: Recipe, face: Face, onStage: (stage: string) => void = () => {}): MadeFace {
  const work = createWork(recipe, face);
  const features = buildFeatures(recipe, face);
  for (const feature of features) feature.plan?.(work);
  onStage("cutting the plates");
  layParentPlate(work);
  cleanJoint(work);
  onStage("welding");
  layWeld(work);
  for (const feature of features) feature.cut?.(work);
  onStage("cleaning");
  paintHeat(work);
  paintWeld(work);
  scatterSpatter(work);
  leaveWorkshopMarks(work);
  finishPlate(work, recipe.number);
  for (const feature of features) feature.paint?.(work);
  checkFinite(work);
  onStage("measuring");
  const items = measureFace(work, features);
  const clutter = clutterOf(work, features);
  const [sideB, sideA] = work.sides;
  return { face, surface: finishSurface(face, work.strip, sideB, sideA), items, clutter };
}

function buildFeatures(recipe: Recipe, face: Face): Feature[] {
  const random = randomStream(recipe.seed);
  return recipe.faces[face].requests.map((request) => buildFeature(request, random.child(request.id)));
}

function measureFace(work: FaceWork, features: readonly Feature[]): TruthItem[] {
  const found = features.map((feature) => feature.measure?.(work) ?? null);
  const planted = found.filter((item) => item !== null);
  const stops = measuredStops(work);
  const standing =
    work.face === "cap"
      ? [measuredMisalignment(work, "cap/linear-misalignment"), measuredAngle(work, "cap/angular-misalignment")]
      : [];
  const ofPlates = standing.filter((item) => item !== null);
  return [...planted, ...stops.filter((stop) => !planted.some((item) => covers(item, stop))), ...ofPlates]
    .sort((a, b) => a.start - b.start || a.across - b.across)
    .map((item, n) => ({ ...item, id: `${work.face}-${n + 1}` }));
}

const clutterOf = (work: FaceWork, features: readonly Feature[]): ClutterItem[] =>
  features
    .map((feature) => feature.clutter?.(work) ?? null)
    .filter((item) => item !== null)
    .sort((a, b) => a.start - b.start || a.across - b.across)
    .map((item, n) => ({ ...item, id: `${work.face}-clutter-${n + 1}` }));

/** A stop within this distance across of the middle of something else, and within its length, is hidden by it, mm. */
const HIDDEN_ACROSS = 6;
/** How far beyond its ends something hides a stop: a planted restart is the same stop, wherever its size was found, mm. */
const HIDDEN_BEYOND = { restart: 9, other: 2 };
/** What lies in a crater does not hide the restart beside it. */
const IN_CRATERS: readonly ImperfectionType[] = ["crater-pipe", "crater-crack"];

function covers(item: TruthItem, stop: TruthItem): boolean {
  if (IN_CRATERS.includes(item.type)) return false;
  const beyond = item.type === stop.type ? HIDDEN_BEYOND.restart : HIDDEN_BEYOND.other;
  const isWithin = item.start - beyond < stop.start && stop.start < item.end + beyond;
  return isWithin && Math.abs(item.across - stop.across) < HIDDEN_ACROSS;
}

/** The truth of a specimen from what was measured on its faces. */
export function assembleTruth(recipe: Recipe, faces: readonly Pick<MadeFace, "items" | "clutter">[]): Truth {
  return {
    version: 1,
    generator: GENERATOR_VERSION,
    joint: recipe.joint,
    items: faces.flatMap(({ items }) => items),
    clutter: faces.flatMap(({ clutter }) => clutter),
  };
}

/** Makes both faces of the specimen of a seed. */
export function generateSpecimen(seed: string): Specimen {
  const recipe = drawRecipe(seed);
  const [cap, root] = FACES.map((face) => generateFace(recipe, face));
  const truth = assembleTruth(recipe, [cap, root]);
  return { recipe, surfaces: { cap: cap.surface, root: root.surface }, truth };
}
