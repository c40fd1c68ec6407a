import { promisify } from "node:util";
import { constants, gzip } from "node:zlib";
import { BLUEPRINTS, type MadeFace as Generated, generateMetFace } from "@/lib/specimen";
import { encodeFace } from "@/lib/surface";
import type { ButtJoint, Face } from "@/lib/weld";
import { encodeWebp } from "./encode-image";

export interface MadeFace extends Omit<Generated, "surface"> {
  readonly joint: ButtJoint;
  /** How many faces were made until one met the blueprint. */
  readonly attempts: number;
  /** The packed surface, gzip-compressed as it is stored and sent. */
  readonly packed: Uint8Array;
}

/** Residuals repeat as runs of one value and nothing else: looking for longer matches takes ten times as long and finds less. */
const RUNS_ONLY = { strategy: constants.Z_RLE };

/**
 * Makes one face of the practice specimen of a seed and packs it; the other face has no say in it. `onStage` tells in plain
 * words what is being done.
 */
export async function makeFace(seed: string, face: Face, onStage: (stage: string) => void): Promise<MadeFace> {
  const { surface, recipe, ...made } = generateMetFace(seed, face, BLUEPRINTS.practice, onStage);
  onStage("packing");
  const packed = await promisify(gzip)(await encodeFace(surface, encodeWebp), RUNS_ONLY);
  return { ...made, joint: recipe.joint, packed };
}
