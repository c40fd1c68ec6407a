import { randomStream } from "@/lib/random";
import { createWork } from "@/lib/specimen/create-work";
import { layParentPlate } from "@/lib/specimen/plate";
import type { Recipe } from "@/lib/specimen/recipe";
import { drawJoint } from "@/lib/specimen/recipe/joint";
import { drawLayouts } from "@/lib/specimen/recipe/layout";
import { drawLook } from "@/lib/specimen/recipe/look";
import { layWeld } from "@/lib/specimen/runs";
import type { FaceWork } from "@/lib/specimen/work";
import type { Face, Position, Process } from "@/lib/weld";

export interface SoundChoice {
  readonly seed: string;
  readonly process: Process;
  readonly position: Position;
  readonly thickness?: readonly [least: number, most: number];
}

/** A joint of the process and position chosen between flush plates, with nothing planted on either face. */
export function soundRecipeOf({ seed, process, position, thickness = [6, 25] }: SoundChoice): Recipe {
  const random = randomStream(`sound ${process} ${position} ${seed}`);
  const joint = drawJoint(random.child("joint"), { processes: [process], positions: [position], thickness });
  const layouts = drawLayouts(joint, random.child("layout"));
  return {
    seed: `sound ${process} ${position} ${seed}`,
    joint,
    rolled: joint.thickness + 0.1,
    plates: { stepAtDatum: 0, stepAtFarEnd: 0, distortion: 0.8 },
    look: drawLook(random.child("look"), process),
    number: "T100",
    faces: { cap: { layout: layouts.cap, requests: [] }, root: { layout: layouts.root, requests: [] } },
  };
}

/** One face of a recipe as far as plates and weld metal: heights are final but for scratches, spatter and ground ends. */
export function weldedFace(recipe: Recipe, face: Face): FaceWork {
  const work = createWork(recipe, face);
  layParentPlate(work);
  layWeld(work);
  return work;
}
