import { type RandomStream, randomStream } from "../../random";
import type { ButtJoint, Face } from "../../weld";
import type { SectionTruth } from "../difficulty";
import type { PlateSetting } from "../parent";
import type { FaceLayout } from "../runs";
import type { FeatureRequest, Look } from "../work";
import type { Blueprint } from "./blueprint";
import { PRACTICE } from "./blueprints";
import { asksForPlates, rowsFor } from "./check-blueprint";
import { type DrawnFace, drawFace } from "./draw-face";
import { runsNeeded, weightOf } from "./feature-rows";
import { drawJoint, drawPlates, drawRolled } from "./joint";
import { drawLayouts } from "./layout";
import { drawLook } from "./look";
import { fitPlates, NO_PLATES, type PlatesFit } from "./plate-slots";
import { explainRefusal, type Refusal } from "./refusal";

/** What is to be made of one face. */
export interface FaceRecipe {
  readonly layout: FaceLayout;
  readonly requests: readonly FeatureRequest[];
}

/** A specimen before it is made: one joint, its two plates, the hand that welded it and what goes wrong on its faces. */
export interface RecipeOf<F extends Face> {
  readonly seed: string;
  readonly joint: ButtJoint;
  readonly plates: PlateSetting;
  /** Thickness of the sheet that both plates were cut from, mm. */
  readonly rolled: number;
  readonly look: Look;
  /** Stamped on both faces. */
  readonly number: string;
  readonly faces: Readonly<Record<F, FaceRecipe>>;
}
export type Recipe = RecipeOf<Face>;

/** Which draw of either face is meant: 0 the first, a higher one where what was measured of it did not meet the blueprint. */
export type Attempts = Readonly<Record<Face, number>>;
const FIRST: Attempts = { cap: 0, root: 0 };

export type DrawnRecipe = { readonly ok: true; readonly recipe: Recipe } | Refusal;

/** What both faces of a specimen share, and what is left to draw of either. */
interface Piece {
  readonly shared: Omit<Recipe, "faces">;
  drawFace(face: Face, attempt: number): DrawnFace;
}

function drawPiece(seed: string, blueprint: Blueprint): ({ readonly ok: true } & Piece) | Refusal {
  const random = randomStream(`specimen ${seed}`);
  const joint = drawJoint(random.child("joint"), blueprint.joint);
  const standing = drawStanding(blueprint, random);
  if (!standing) return { ok: false, code: "plates-never-stand-so", face: "cap" };
  const { plates, fit } = standing;
  const layouts = drawLayoutsFor(joint, blueprint, random);
  return {
    ok: true,
    shared: {
      seed,
      joint,
      plates,
      rolled: drawRolled(joint.thickness, random.child("rolled")),
      look: drawLook(random.child("look"), joint.process),
      number: drawNumber(random.child("number")),
    },
    drawFace(face, attempt) {
      const stream = random.child(attempt === 0 ? face : `${face} again ${attempt}`);
      const asked = { face, joint, plates, layout: layouts[face] };
      return drawFace(asked, blueprint.sections[face], face === "cap" ? fit : NO_PLATES, stream);
    },
  };
}

/**
 * Draws what is to be made of one face that should meet a blueprint, or says why there is nothing. The same seed, blueprint
 * and attempt give the same everywhere; joint, plates, look and runs depend on seed and blueprint only.
 */
export function tryFaceRecipe<F extends Face>(
  seed: string,
  blueprint: Blueprint,
  face: F,
  attempt: number,
): { readonly ok: true; readonly recipe: RecipeOf<F> } | Refusal {
  const piece = drawPiece(seed, blueprint);
  if (!piece.ok) return piece;
  const drawn = piece.drawFace(face, attempt);
  if (!drawn.ok) return drawn;
  const faces = { [face]: drawn.recipe } as Record<F, FaceRecipe>;
  return { ok: true, recipe: { ...piece.shared, faces } };
}

/** Draws a recipe of both faces, each at its attempt, or says why there is none. */
export function tryRecipe(seed: string, blueprint: Blueprint, attempts: Attempts = FIRST): DrawnRecipe {
  const piece = drawPiece(seed, blueprint);
  if (!piece.ok) return piece;
  const cap = piece.drawFace("cap", attempts.cap);
  if (!cap.ok) return cap;
  const root = piece.drawFace("root", attempts.root);
  if (!root.ok) return root;
  return { ok: true, recipe: { ...piece.shared, faces: { cap: cap.recipe, root: root.recipe } } };
}

/** What will most likely be measured on both faces of a seed's first draw, or why there is none. */
export function predictPlate(
  seed: string,
  blueprint: Blueprint,
): { readonly ok: true; readonly faces: readonly SectionTruth[] } | Refusal {
  const piece = drawPiece(seed, blueprint);
  if (!piece.ok) return piece;
  const cap = piece.drawFace("cap", FIRST.cap);
  if (!cap.ok) return cap;
  const root = piece.drawFace("root", FIRST.root);
  return root.ok ? { ok: true, faces: [cap.predicted, root.predicted] } : root;
}

/** As `tryRecipe`, for blueprints that are known to be possible, by default for practice. Throws on a refusal. */
export function drawRecipe(seed: string, blueprint: Blueprint = PRACTICE, attempts: Attempts = FIRST): Recipe {
  const drawn = tryRecipe(seed, blueprint, attempts);
  if (!drawn.ok) throw new Error(`no specimen for this blueprint: ${explainRefusal(drawn)}`);
  return drawn.recipe;
}

const TRIES = { plates: 400, layouts: 60 };

function drawStanding({ sections }: Blueprint, random: RandomStream): { plates: PlateSetting; fit: PlatesFit } | null {
  for (let attempt = 0; attempt < TRIES.plates; attempt++) {
    const plates = drawPlates(random.child(attempt === 0 ? "plates" : `plates ${attempt}`));
    const fit = fitPlates(plates, sections.cap);
    if (fit) return { plates, fit };
  }
  return null;
}

/** Runs of both faces, drawn anew while the cap has fewer than its slots need; the last draw where none has enough. */
function drawLayoutsFor(joint: ButtJoint, blueprint: Blueprint, random: RandomStream): Record<Face, FaceLayout> {
  const least = leastRuns(joint, blueprint);
  let layouts = drawLayouts(joint, random.child("layout"));
  for (let attempt = 1; attempt < TRIES.layouts && layouts.cap.runs.length < least; attempt++) {
    layouts = drawLayouts(joint, random.child(`layout ${attempt}`));
  }
  return layouts;
}

function leastRuns({ process, position }: ButtJoint, { sections: { cap } }: Blueprint): number {
  const needed = cap.slots
    .filter((slot) => !asksForPlates("cap", slot))
    .map((slot) => rowsFor("cap", slot, cap).filter((row) => weightOf(row, process, position) > 0))
    .filter((rows) => rows.length > 0)
    .map((rows) => Math.min(...rows.map(runsNeeded)));
  return Math.max(1, ...needed);
}

const drawNumber = (random: RandomStream): string => `T${100 + random.integer(900)}`;
