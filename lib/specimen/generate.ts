import type { ImperfectionType } from "../imperfections";
import { randomStream } from "../random";
import { finishSurface, type Surface, withGridRoom } from "../surface";
import type { ButtJoint, Face } from "../weld";
import { leaveBlemishes } from "./blemishes";
import { checkFinite } from "./check-finite";
import { createWork } from "./create-work";
import { dimensionsOf, skinOf, thicknessTruth } from "./face-dimensions";
import { GENERATOR_VERSION } from "./generator-version";
import { buildFeature } from "./imperfections";
import { measuredAngle, measuredMisalignment, measuredStops } from "./joint-items";
import {
  cleanJoint,
  finishPlate,
  finishWeldEnds,
  layParentPlate,
  leaveWorkshopMarks,
  paintHeat,
  scatterSpatter,
} from "./plate";
import {
  type Attempts,
  type Blueprint,
  explainDeparture,
  explainRefusal,
  meetsBlueprint,
  PRACTICE,
  type Recipe,
  type RecipeOf,
  tryFaceRecipe,
} from "./recipe";
import { layWeld, paintWeld } from "./runs";
import type { ButtTruth, ClutterItem, DimensionTruth, TruthItem } from "./truth";
import type { FaceWork, Feature } from "./work";

export interface MadeFace {
  readonly face: Face;
  readonly surface: Surface;
  /** What can be found on this face, measured from the finished surface, in order of place. */
  readonly items: readonly TruthItem[];
  /** What else lies there and tempts to a false call, in order of place. */
  readonly clutter: readonly ClutterItem[];
  readonly dimensions: readonly DimensionTruth[];
  /** Distance from this face's zero to the other one's, mm: the sheet as rolled. */
  readonly facesApart: number;
  /** From the middle of the sheet to this finished face beside the plates' edges, mm. */
  readonly fromMiddle: number;
}

/** A face that meets its section of a blueprint. */
export interface MetFace<F extends Face> extends MadeFace {
  /** Recipe as this face was made. */
  readonly recipe: RecipeOf<F>;
  /** How many faces were drawn until one met the blueprint, 1 for the first. */
  readonly attempts: number;
}

export interface Specimen {
  readonly recipe: Recipe;
  readonly surfaces: Readonly<Record<Face, Surface>>;
  readonly truth: ButtTruth;
  /** How many faces were made on either side until one met the blueprint. */
  readonly attempts: Attempts;
}

/**
 * Makes one face of a recipe's specimen and measures its truth. `onStage` hears in plain words what is being done;
 * `afterStep` hears the name of every step when it is done, for those who measure. The same recipe gives the same bytes.
 * Throws where a height is not a number.
 */
export function generateFace<F extends Face>(
  recipe: RecipeOf<F>,
  face: F,
  onStage: (stage: string) => void = () => {},
  afterStep: (step: string) => void = () => {},
): MadeFace {
  return withGridRoom(() => {
    const made = makeFace(recipe, face, onStage, afterStep);
    return { ...made.measured, surface: made.finish() };
  });
}

/** What was measured on a face as it was made, and how to finish its surface, which has its price: not every face is wanted. */
interface Making {
  readonly measured: Omit<MadeFace, "surface">;
  readonly finish: () => Surface;
}

function makeFace<F extends Face>(
  recipe: RecipeOf<F>,
  face: F,
  onStage: (stage: string) => void,
  afterStep: (step: string) => void,
): Making {
  const work = createWork(recipe, face);
  const features = buildFeatures(recipe, face);
  for (const feature of features) feature.plan?.(work);
  afterStep("plan");
  onStage("cutting the plates");
  layParentPlate(work);
  afterStep("parent plate");
  cleanJoint(work);
  afterStep("joint cleaned");
  onStage("welding");
  layWeld(work);
  afterStep("weld");
  for (const feature of features) feature.cut?.(work);
  afterStep("features cut");
  onStage("cleaning");
  paintHeat(work);
  afterStep("heat");
  withGridRoom(() => paintWeld(work));
  afterStep("weld painted");
  leaveBlemishes(work);
  afterStep("blemishes");
  scatterSpatter(work);
  leaveWorkshopMarks(work);
  finishWeldEnds(work);
  finishPlate(work, recipe.number);
  afterStep("workshop");
  for (const feature of features) feature.paint?.(work);
  afterStep("features painted");
  checkFinite(work);
  onStage("measuring");
  const items = measureFace(work, features);
  const clutter = clutterOf(work, features);
  const dimensions = dimensionsOf(work);
  const fromMiddle = recipe.rolled / 2 + skinOf(work);
  afterStep("measuring");
  const finish = () => {
    const [sideB, sideA] = work.sides;
    const surface = finishSurface(face, work.strip, sideB, sideA);
    afterStep("finished surface");
    return surface;
  };
  return { measured: { face, items, clutter, dimensions, facesApart: recipe.rolled, fromMiddle }, finish };
}

function buildFeatures<F extends Face>(recipe: RecipeOf<F>, face: F): Feature[] {
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

/** The truth of a specimen from what was measured on both its faces. */
export function assembleTruth(
  joint: ButtJoint,
  faces: readonly Pick<MadeFace, "items" | "clutter" | "dimensions" | "fromMiddle">[],
): ButtTruth {
  return {
    version: 1,
    generator: GENERATOR_VERSION,
    joint,
    items: faces.flatMap(({ items }) => items),
    clutter: faces.flatMap(({ clutter }) => clutter),
    dimensions: [
      thicknessTruth(faces.map(({ fromMiddle }) => fromMiddle)),
      ...faces.flatMap(({ dimensions }) => dimensions),
    ],
    statements: [],
  };
}

/** So many faces are drawn before a blueprint counts as one that cannot be met. */
const MOST_ATTEMPTS = 40;

/**
 * Makes one face of the specimen of a seed and a blueprint, drawing what goes wrong on it anew until what is measured meets
 * the blueprint. The other face has no say, so both can be made at the same time. Throws where no draw had room and no face
 * met it, saying what was wrong with the last one.
 */
export function generateMetFace<F extends Face>(
  seed: string,
  face: F,
  blueprint: Blueprint = PRACTICE,
  onStage: (stage: string) => void = () => {},
): MetFace<F> {
  let last = "";
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
    const drawn = tryFaceRecipe(seed, blueprint, face, attempt);
    if (!drawn.ok) {
      last = explainRefusal(drawn);
      continue;
    }
    const { recipe } = drawn;
    const made = withGridRoom(() => {
      const { measured, finish } = makeFace(recipe, face, onStage, () => {});
      const meets = meetsBlueprint({ ...measured, joint: recipe.joint }, blueprint.sections[face]);
      if (meets.ok) return { ...measured, surface: finish() };
      last = explainDeparture(meets, face);
      return null;
    });
    if (made) return { ...made, recipe, attempts: attempt + 1 };
  }
  throw new Error(`no ${face} face in ${MOST_ATTEMPTS} met the blueprint. The last one: ${last}`);
}

/** Makes both faces of the specimen of a seed and a blueprint, by default for practice. Throws as `generateMetFace` does. */
export function generateSpecimen(seed: string, blueprint: Blueprint = PRACTICE): Specimen {
  const cap = generateMetFace(seed, "cap", blueprint);
  const root = generateMetFace(seed, "root", blueprint);
  const recipe: Recipe = { ...cap.recipe, faces: { ...cap.recipe.faces, ...root.recipe.faces } };
  return {
    recipe,
    surfaces: { cap: cap.surface, root: root.surface },
    truth: assembleTruth(recipe.joint, [cap, root]),
    attempts: { cap: cap.attempts, root: root.attempts },
  };
}
