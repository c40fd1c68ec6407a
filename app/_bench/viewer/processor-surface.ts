import type { Patch, Surface } from "@/lib/surface";
import { faceOf } from "@/lib/weld";
import type { UnpackedFace, UnpackedPatch } from "./protocol";

/** What is seen from an aspect as the processor's own drawing reads it. The pictures of the materials stay open for others. */
export function surfaceOf({ aspect, strip, plate, grids }: UnpackedFace): Surface {
  return { face: faceOf(aspect), strip: patchOf(strip, grids.strip), plate: patchOf(plate, grids.plate) };
}

function patchOf(patch: UnpackedPatch, grid: Patch["grid"]): Patch {
  return {
    grid,
    height: patch.height,
    albedo: threeChannels(patch.albedo),
    finish: threeChannels(patch.finish),
    brushing: patch.brushing,
  };
}

/** Red, green and blue of a picture, interleaved. */
export function threeChannels(picture: ImageBitmap): Uint8Array {
  const context = new OffscreenCanvas(picture.width, picture.height).getContext("2d", { willReadFrequently: true })!;
  context.drawImage(picture, 0, 0);
  const { data } = context.getImageData(0, 0, picture.width, picture.height);
  const bytes = new Uint8Array((data.length / 4) * 3);
  for (let p = 0, k = 0; p < data.length; p += 4) {
    bytes[k++] = data[p];
    bytes[k++] = data[p + 1];
    bytes[k++] = data[p + 2];
  }
  return bytes;
}
