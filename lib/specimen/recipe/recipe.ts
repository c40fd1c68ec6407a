import { type RandomStream, randomStream } from "../../random";
import type { ButtJoint, Face } from "../../weld";
import type { PlateSetting } from "../parent";
import type { FaceLayout } from "../runs";
import type { FeatureRequest, Look } from "../work";
import { drawJoint, drawPlates } from "./joint";
import { drawLayouts } from "./layout";
import { drawLook } from "./look";
import { drawRequests } from "./requests";

/** What is to be made of one face. */
export interface FaceRecipe {
  readonly layout: FaceLayout;
  readonly requests: readonly FeatureRequest[];
}

/** A specimen before it is made: one joint, its two plates, the hand that welded it and what goes wrong on either face. */
export interface Recipe {
  readonly seed: string;
  readonly joint: ButtJoint;
  readonly plates: PlateSetting;
  readonly look: Look;
  /** Stamped on both faces. */
  readonly number: string;
  readonly faces: Readonly<Record<Face, FaceRecipe>>;
}

/** Draws the recipe of a seed: the same seed gives the same recipe everywhere. */
export function drawRecipe(seed: string): Recipe {
  const random = randomStream(`specimen ${seed}`);
  const joint = drawJoint(random.child("joint"));
  const plates = drawPlates(random.child("plates"));
  const look = drawLook(random.child("look"), joint.process);
  const layouts = drawLayouts(joint, random.child("layout"));
  const face = (name: Face): FaceRecipe =>
    drawRequests({ face: name, joint, plates, layout: layouts[name] }, random.child(name));
  return {
    seed,
    joint,
    plates,
    look,
    number: drawNumber(random.child("number")),
    faces: { cap: face("cap"), root: face("root") },
  };
}

const drawNumber = (random: RandomStream): string => `T${100 + random.integer(900)}`;
