import type { Mm } from "../math";
import type { SurfaceFace } from "../weld";
import { SURFACE_FACES } from "../weld";
import type { Grid } from "./grid";
import {
  packBlocks,
  packBrushing,
  packHeights,
  packLength,
  unpackBlocks,
  unpackBrushing,
  unpackHeights,
  unpackLength,
} from "./packing";
import { gridsOf, type Patch, type Surface } from "./surface";

/**
 * The transported form of one face. Heights are exact to half a step of 2 micrometres: median predictor (LOCO-I,
 * Weinberger, Seroussi and Sapiro 1996), residuals folded to unsigned and split into byte planes, so that any
 * general-purpose compressor does well on them. Materials travel as ordinary pictures, made and read by the caller.
 */
export const CODEC_VERSION = 1;
const MAGIC = 0x544c4e53;

/** A picture of three channels per pixel, compressed by the caller: a colour, or three shares that have nothing to do with each other. */
export type EncodeImage = (
  rgb: Uint8Array,
  columns: number,
  rows: number,
  content: "colour" | "shares",
) => Promise<Uint8Array>;

export interface DecodedPatch {
  readonly height: Float32Array;
  /** The compressed pictures as they came. */
  readonly albedo: Uint8Array;
  readonly finish: Uint8Array;
  readonly brushing: Patch["brushing"];
}

export interface DecodedFace {
  readonly face: SurfaceFace;
  /** Distance from this face's zero to that of the face on the other side of the plate, mm; null where that is not known, or there is none. */
  readonly facesApart: Mm | null;
  readonly strip: DecodedPatch;
  readonly plate: DecodedPatch;
}

interface Grids {
  readonly strip: Grid;
  readonly plate: Grid;
}

/** First row of the plate patch that the strip covers, and the first one beyond it. */
function coveredRows({ strip, plate }: Grids): { from: number; to: number } {
  const from = Math.round((strip.y0 - plate.y0) * plate.perMm);
  return { from, to: from + strip.rows / 2 };
}

/** Packs a face, with how far the plate's other face lies from it. The result is meant to be compressed as a whole. */
export async function encodeFace(
  surface: Surface,
  encodeImage: EncodeImage,
  facesApart: Mm | null = null,
): Promise<Uint8Array> {
  const { strip, plate } = surface;
  const { columns } = plate.grid;
  const covered = coveredRows({ strip: strip.grid, plate: plate.grid });
  const blocks = [
    packHeights(strip.height, strip.grid.columns),
    packHeights(plate.height.subarray(0, covered.from * columns), columns),
    packHeights(plate.height.subarray(covered.to * columns), columns),
    ...(await Promise.all(
      [strip, plate].flatMap((patch) => [
        encodeImage(patch.albedo, patch.grid.columns, patch.grid.rows, "colour"),
        encodeImage(patch.finish, patch.grid.columns, patch.grid.rows, "shares"),
      ]),
    )),
    packBrushing(strip.brushing),
    packBrushing(plate.brushing),
    ...(facesApart === null ? [] : [packLength(facesApart)]),
  ];
  return packBlocks(MAGIC, CODEC_VERSION, SURFACE_FACES.indexOf(surface.face), blocks);
}

/** Unpacks a face; throws on a wrong magic number, another version or a cut-off file. */
export function decodeFace(bytes: Uint8Array): DecodedFace {
  const { face, blocks } = blocksOfFace(bytes);
  const [stripHeights, before, after, stripAlbedo, stripFinish, plateAlbedo, plateFinish, stripBrush, plateBrush] =
    blocks;
  const apart = blocks.length === 10 ? blocks[9] : null;
  const grids = gridsOf(face);
  const { columns } = grids.plate;
  const covered = coveredRows(grids);
  const strip = new Float32Array(grids.strip.columns * grids.strip.rows);
  unpackHeights(stripHeights, strip, grids.strip.columns);
  const plate = new Float32Array(columns * grids.plate.rows);
  unpackHeights(before, plate.subarray(0, covered.from * columns), columns);
  unpackHeights(after, plate.subarray(covered.to * columns), columns);
  halveStrip(strip, plate, grids);
  return {
    face,
    facesApart: apart && unpackLength(apart),
    strip: {
      height: strip,
      albedo: stripAlbedo,
      finish: stripFinish,
      brushing: unpackBrushing(stripBrush, grids.strip.columns, grids.strip.rows),
    },
    plate: {
      height: plate,
      albedo: plateAlbedo,
      finish: plateFinish,
      brushing: unpackBrushing(plateBrush, grids.plate.columns, grids.plate.rows),
    },
  };
}

/** Fills the covered rows of the plate with the strip, averaged two by two. */
function halveStrip(strip: Float32Array, plate: Float32Array, grids: Grids): void {
  const wide = grids.strip.columns;
  const { columns } = grids.plate;
  const { from } = coveredRows(grids);
  for (let j = 0; j < grids.strip.rows / 2; j++) {
    for (let i = 0, k = (from + j) * columns; i < columns; i++, k++) {
      const q = 2 * j * wide + 2 * i;
      plate[k] = 0.25 * (strip[q] + strip[q + 1] + strip[q + wide] + strip[q + wide + 1]);
    }
  }
}

/** The fine strip of a packed face alone, with its grid: a quarter of the work of unpacking all of it. */
export function decodeStrip(bytes: Uint8Array): DecodedPatch & { readonly face: SurfaceFace; readonly grid: Grid } {
  const { face, blocks } = blocksOfFace(bytes);
  const { strip: grid } = gridsOf(face);
  const height = new Float32Array(grid.columns * grid.rows);
  unpackHeights(blocks[0], height, grid.columns);
  return {
    face,
    grid,
    height,
    albedo: blocks[3],
    finish: blocks[4],
    brushing: unpackBrushing(blocks[7], grid.columns, grid.rows),
  };
}

function blocksOfFace(bytes: Uint8Array): { readonly face: SurfaceFace; readonly blocks: readonly Uint8Array[] } {
  const { tag, blocks } = unpackBlocks(bytes, MAGIC, CODEC_VERSION, "packed surface");
  const face = SURFACE_FACES[tag];
  if (!face) throw new Error(`unknown face ${tag}`);
  // faces packed before thickness was measured, and those of fillets, end with the brushing
  if (blocks.length !== 9 && blocks.length !== 10) throw new Error(`packed surface with ${blocks.length} blocks`);
  return { face, blocks };
}
