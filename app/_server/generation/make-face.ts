import { promisify } from "node:util";
import { constants, gzip } from "node:zlib";
import type { PaperPiece } from "@/lib/sittings";
import { type FilletTruth, type MadeFace as Generated, generateFilletSpecimen, generateMetFace } from "@/lib/specimen";
import { encodeFace, type Surface } from "@/lib/surface";
import type { ButtJoint, EndViews, Face, SurfaceFace } from "@/lib/weld";
import { filletAsked, plateAsked } from "./asked-piece";
import { encodeWebp } from "./encode-image";

interface Packed {
  /** How many were made until one met the blueprint. */
  readonly attempts: number;
  /** The packed surface, gzip-compressed as it is stored and sent. */
  readonly packed: Uint8Array;
}

/** One face of a plate, measured by itself. */
export interface MadePlateFace extends Omit<Generated, "surface">, Packed {
  readonly joint: ButtJoint;
}

/** The one face of a fillet: the whole piece. */
export interface MadeFilletFace extends Packed {
  readonly face: "fillet";
  readonly truth: FilletTruth;
  readonly ends: EndViews;
}

export type MadeFace = MadePlateFace | MadeFilletFace;

/** Residuals repeat as runs of one value and nothing else: looking for longer matches takes ten times as long and finds less. */
const RUNS_ONLY = { strategy: constants.Z_RLE };

/** What one face is made from: a seed, and what a paper fixes; null for practice. */
export interface FaceOrder {
  readonly seed: string;
  readonly asked: PaperPiece | null;
  readonly face: SurfaceFace;
}

/** Makes one face of a specimen and packs it. `onStage` tells in plain words what is being done. */
export function makeFace({ seed, asked, face }: FaceOrder, onStage: (stage: string) => void): Promise<MadeFace> {
  return face === "fillet" ? makeFillet(seed, asked, onStage) : makePlateFace(seed, asked, face, onStage);
}

/** One face of the plate of a seed; the other face has no say in it. */
async function makePlateFace(
  seed: string,
  asked: PaperPiece | null,
  face: Face,
  onStage: (stage: string) => void,
): Promise<MadePlateFace> {
  const { surface, recipe, ...made } = generateMetFace(seed, face, plateAsked(asked), onStage);
  return { ...made, joint: recipe.joint, packed: await pack(surface, made.facesApart, onStage) };
}

async function makeFillet(
  seed: string,
  asked: PaperPiece | null,
  onStage: (stage: string) => void,
): Promise<MadeFilletFace> {
  const { blueprint, choice } = filletAsked(asked);
  const { surface, truth, ends, attempts } = generateFilletSpecimen(seed, blueprint, choice, onStage);
  return { face: "fillet", truth, ends, attempts, packed: await pack(surface, null, onStage) };
}

async function pack(
  surface: Surface,
  facesApart: number | null,
  onStage: (stage: string) => void,
): Promise<Uint8Array> {
  onStage("packing");
  return promisify(gzip)(await encodeFace(surface, encodeWebp, facesApart), RUNS_ONLY);
}
