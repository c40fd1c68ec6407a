import { type DecodedPatch, decodeFace, type Grid, gridsOf } from "@/lib/surface";
import type { FaceHeights, UnpackAnswer, UnpackedFace, UnpackedPatch, UnpackRequest } from "./protocol";
import { packRelief } from "./relief";

const scope = self as unknown as DedicatedWorkerGlobalScope;

/** Faces are fetched side by side but unpacked one after the other, so that the first one is there in half the time. */
let turn: Promise<void> = Promise.resolve();

scope.onmessage = ({ data }: MessageEvent<UnpackRequest>) => {
  const packed = fetchPacked(data.url);
  // what goes wrong is told in its turn
  packed.catch(() => undefined);
  turn = turn.then(() => unpackAndSend(data.face, packed));
};

async function unpackAndSend(face: UnpackRequest["face"], packed: Promise<Uint8Array<ArrayBuffer>>): Promise<void> {
  try {
    const { unpacked, heights } = await unpack(face, await packed);
    const { strip, plate } = unpacked;
    const moved = [strip, plate].flatMap((patch) => [
      patch.height.buffer,
      patch.relief.buffer,
      patch.albedo,
      patch.finish,
      patch.brushing.values.buffer,
    ]);
    answer({ kind: "unpacked", unpacked, heights }, [...moved, heights.strip.buffer, heights.plate.buffer]);
  } catch (error) {
    answer({ kind: "failed", face, reason: error instanceof Error ? error.message : String(error) });
  }
}

function answer(message: UnpackAnswer, moved: Transferable[] = []) {
  scope.postMessage(message, moved);
}

async function fetchPacked(url: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(url, { credentials: "same-origin" });
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function unpack(
  face: UnpackRequest["face"],
  packed: Uint8Array<ArrayBuffer>,
): Promise<{ unpacked: UnpackedFace; heights: FaceHeights }> {
  const decoded = decodeFace(await unzip(packed));
  const heights = { strip: decoded.strip.height.slice(), plate: decoded.plate.height.slice() };
  const grids = gridsOf(decoded.face);
  const [strip, plate] = await Promise.all([
    unpackPatch(decoded.strip, grids.strip),
    unpackPatch(decoded.plate, grids.plate),
  ]);
  return { unpacked: { face, strip, plate, highest: highestOf(plate.height, strip.height) }, heights };
}

/** The server sends a face as the gzip file that it keeps, since Next takes the Content-Encoding off a route's answer. */
async function unzip(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const isZipped = bytes[0] === 0x1f && bytes[1] === 0x8b;
  if (!isZipped) return bytes;
  const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(plain).arrayBuffer());
}

async function unpackPatch(patch: DecodedPatch, grid: Grid): Promise<UnpackedPatch> {
  const [albedo, finish] = await Promise.all([decodePicture(patch.albedo), decodePicture(patch.finish)]);
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
function decodePicture(bytes: Uint8Array): Promise<ImageBitmap> {
  const blob = new Blob([bytes.slice()], { type: "image/webp" });
  return createImageBitmap(blob, { colorSpaceConversion: "none", premultiplyAlpha: "none" });
}

function highestOf(...fields: Float32Array[]): number {
  let highest = 0;
  for (const field of fields) for (let k = 0; k < field.length; k++) if (field[k] > highest) highest = field[k];
  return highest;
}
