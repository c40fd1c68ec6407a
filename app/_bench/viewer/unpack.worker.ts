import {
  type DecodedFace,
  type DecodedPatch,
  decodeFace,
  type Grid,
  gridsOf,
  halfOf,
  type Patch,
  STRIP_PER_MM,
  type Surface,
  turnedFillet,
  unpackTile,
} from "@/lib/surface";
import { FILLET_PLATES, type FilletPlate } from "@/lib/weld";
import { surfaceOf } from "./processor-surface";
import type { UnpackAnswer, UnpackedFace, UnpackedPatch, UnpackRequest } from "./protocol";
import { packRelief } from "./relief";

const scope = self as unknown as DedicatedWorkerGlobalScope;

/** Faces are fetched side by side but unpacked one after the other, so that the first one is there in half the time. */
let turn: Promise<void> = Promise.resolve();

scope.onmessage = ({ data }: MessageEvent<UnpackRequest>) => {
  const packed = fetchPacked(data.url);
  // what goes wrong is told in its turn
  packed.catch(() => undefined);
  turn = turn.then(() => unpackAndSend(data, packed));
};

async function unpackAndSend(
  { face, isWindow = false }: UnpackRequest,
  packed: Promise<Uint8Array<ArrayBuffer>>,
): Promise<void> {
  try {
    if (isWindow) return send(await unpackWindow(await unzip(await packed)), null);
    const decoded = decodeFace(await unzip(await packed));
    const unpacked = await unpack(decoded);
    // turning takes what is gone from here once it is sent
    const whole = face === "fillet" ? copyOf(surfaceOf(unpacked)) : null;
    send(unpacked, decoded.facesApart);
    if (whole) for (const plate of FILLET_PLATES) send(await seenSquareOn(plate, whole), null);
  } catch (error) {
    answer({ kind: "failed", face, reason: error instanceof Error ? error.message : String(error) });
  }
}

function copyOf({ face, strip, plate }: Surface): Surface {
  const copied = (patch: Patch): Patch => ({
    ...patch,
    height: patch.height.slice(),
    brushing: { ...patch.brushing, values: patch.brushing.values.slice() },
  });
  return { face, strip: copied(strip), plate: copied(plate) };
}

/** What the painter takes leaves this thread, so the page gets heights of its own. */
function send(unpacked: UnpackedFace, facesApart: number | null): void {
  const { strip, plate } = unpacked;
  const heights = { strip: strip.height.slice(), plate: plate.height.slice(), facesApart };
  const moved = [strip, plate].flatMap((patch) => [
    patch.height.buffer,
    patch.relief.buffer,
    patch.albedo,
    patch.finish,
    patch.brushing.values.buffer,
  ]);
  answer({ kind: "unpacked", unpacked, heights }, [...moved, heights.strip.buffer, heights.plate.buffer]);
}

/** A fillet turned square to one of its plates. */
async function seenSquareOn(aspect: FilletPlate, whole: Surface): Promise<UnpackedFace> {
  const turned = turnedFillet(whole, aspect);
  const [strip, plate] = await Promise.all([turned.strip, turned.plate].map(packPatch));
  return {
    aspect,
    strip,
    plate,
    grids: { strip: turned.strip.grid, plate: turned.plate.grid },
    highest: highestOf(plate.height, strip.height),
  };
}

async function packPatch({ grid, height, albedo, finish, brushing }: Patch): Promise<UnpackedPatch> {
  const { columns, rows } = grid;
  const [albedoPicture, finishPicture] = await Promise.all(
    [albedo, finish].map((bytes) => pictureOf(bytes, columns, rows)),
  );
  return {
    columns,
    rows,
    height,
    relief: packRelief(height, grid),
    albedo: albedoPicture,
    finish: finishPicture,
    brushing: { ...brushing, values: brushing.values.slice() },
  };
}

function pictureOf(bytes: Uint8Array, columns: number, rows: number): Promise<ImageBitmap> {
  const pixels = new Uint8ClampedArray(4 * columns * rows).fill(255);
  for (let p = 0, k = 0; p < pixels.length; p += 4) {
    pixels[p] = bytes[k++];
    pixels[p + 1] = bytes[k++];
    pixels[p + 2] = bytes[k++];
  }
  return createImageBitmap(new ImageData(pixels, columns, rows), AS_DATA);
}

function answer(message: UnpackAnswer, moved: Transferable[] = []) {
  scope.postMessage(message, moved);
}

async function fetchPacked(url: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(url, { credentials: "same-origin" });
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function unpack(decoded: DecodedFace): Promise<UnpackedFace> {
  const grids = gridsOf(decoded.face);
  const [strip, plate] = await Promise.all([
    unpackPatch(decoded.strip, grids.strip),
    unpackPatch(decoded.plate, grids.plate),
  ]);
  return { aspect: decoded.face, strip, plate, grids, highest: highestOf(plate.height, strip.height) };
}

/** A window is all strip; what lies coarser beneath it is worked out from it. */
async function unpackWindow(bytes: Uint8Array): Promise<UnpackedFace> {
  const tile = unpackTile(bytes, STRIP_PER_MM);
  const half = halfOf(tile);
  const [strip, plate] = await Promise.all([
    unpackPatch(tile, tile.grid),
    unpackPatch({ ...tile, ...half }, half.grid),
  ]);
  const grids = { strip: tile.grid, plate: half.grid };
  return { aspect: tile.face, strip, plate, grids, highest: highestOf(strip.height) };
}

/** The server sends a face as the gzip file that it keeps, since Next takes the Content-Encoding off a route's answer. */
async function unzip(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const isZipped = bytes[0] === 0x1f && bytes[1] === 0x8b;
  if (!isZipped) return bytes;
  const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(plain).arrayBuffer());
}

async function unpackPatch(patch: DecodedPatch, grid: Grid): Promise<UnpackedPatch> {
  const [albedo, finish] = await Promise.all([decodePicture(patch.albedo, grid), decodePicture(patch.finish, grid)]);
  const { columns, rows, values } = patch.brushing;
  return {
    columns: grid.columns,
    rows: grid.rows,
    height: patch.height,
    relief: packRelief(patch.height, grid),
    albedo,
    finish,
    brushing: { columns, rows, values: values.slice() },
  };
}

/** The pixel values are data: no colour profile and no alpha may touch them. */
const AS_DATA = { colorSpaceConversion: "none", premultiplyAlpha: "none" } as const;

function decodePicture(bytes: Uint8Array, { columns, rows }: Grid): Promise<ImageBitmap> {
  const blob = new Blob([bytes.slice()], { type: "image/webp" });
  return createImageBitmap(blob, { ...AS_DATA, resizeWidth: columns, resizeHeight: rows });
}

function highestOf(...fields: Float32Array[]): number {
  let highest = 0;
  for (const field of fields) for (let k = 0; k < field.length; k++) if (field[k] > highest) highest = field[k];
  return highest;
}
