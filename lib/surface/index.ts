export { boxBlur } from "./blur";
export {
  CODEC_VERSION,
  type DecodedFace,
  type DecodedPatch,
  decodeFace,
  decodeStrip,
  type EncodeImage,
  encodeFace,
} from "./codec";
export { finishSurface, type Planes, toPatch } from "./finish";
export {
  columnOf,
  columnX,
  forEachPixel,
  type Grid,
  nearestColumn,
  nearestRow,
  pixelsIn,
  rowOf,
  rowY,
  sampleAt,
} from "./grid";
export { byteGrid, copiedGrid, floatGrid, unsetFloatGrid, withGridRoom } from "./grid-room";
export { fractal1, fractal2, gradient1, gradient2, gradientRow, hash01, value1 } from "./noise";
export { noiseField, noiseRows, rowsBetween } from "./noise-field";
export type { WriteRow } from "./raster";
export { type Light, occlusionOf, type Picture, renderQuick, renderView, type View } from "./shade";
export {
  FILLET_PLATE_GRID,
  FILLET_STRIP_GRID,
  gridsOf,
  heightAt,
  type Patch,
  PLATE_GRID,
  PLATE_PER_MM,
  STRIP_GRID,
  STRIP_HALF_WIDTH,
  STRIP_PER_MM,
  type Surface,
} from "./surface";
export { type DecodedTile, halfOf, packTile, TILE_PIXELS, type TileCut, type TilePictures, unpackTile } from "./tile";
export { turnedFillet } from "./turned";
