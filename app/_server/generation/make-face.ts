import { promisify } from "node:util";
import { gzip } from "node:zlib";
import { type ClutterItem, drawRecipe, generateFace, type TruthItem } from "@/lib/specimen";
import { encodeFace } from "@/lib/surface";
import type { Face } from "@/lib/weld";
import { encodeWebp } from "./encode-image";

export interface MadeFace {
  readonly face: Face;
  readonly items: readonly TruthItem[];
  readonly clutter: readonly ClutterItem[];
  /** The packed surface, gzip-compressed as it is stored and sent. */
  readonly packed: Uint8Array;
}

/** Makes one face of the specimen of a seed and packs it. `onStage` tells in plain words what is being done. */
export async function makeFace(seed: string, face: Face, onStage: (stage: string) => void): Promise<MadeFace> {
  const { surface, items, clutter } = generateFace(drawRecipe(seed), face, onStage);
  onStage("packing");
  const packed = await promisify(gzip)(await encodeFace(surface, encodeWebp), { level: 6 });
  return { face, items, clutter, packed };
}
