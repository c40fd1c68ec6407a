import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import sharp from "sharp";
import { cutOf, type PlacedWindow } from "@/lib/eye-tasks";
import { decodeStrip, packTile, type TileCut } from "@/lib/surface";
import { readSurfaceBytes } from "@/prisma/stores/specimens";
import { encodeWebp } from "../generation/encode-image";

/**
 * The metal of a window and nothing else, packed and compressed with gzip; null where the piece is gone. Unpacking the strip is
 * the one thing that the server's own thread does: about ten milliseconds.
 */
export async function cutWindow(window: PlacedWindow): Promise<Uint8Array<ArrayBuffer> | null> {
  const bytes = await readSurfaceBytes(window.specimenId, window.face);
  if (!bytes) return null;
  const strip = decodeStrip(await promisify(gunzip)(bytes));
  const cut = cutOf(window);
  const [albedo, finish] = await Promise.all([
    cutPicture(strip.albedo, cut, "colour"),
    cutPicture(strip.finish, cut, "shares"),
  ]);
  return new Uint8Array(await promisify(gzip)(packTile(strip, cut, { albedo, finish })));
}

async function cutPicture(
  picture: Uint8Array,
  { column, row, columns, rows, isTurned }: TileCut,
  content: "colour" | "shares",
): Promise<Uint8Array> {
  const cut = sharp(picture).extract({ left: column, top: row, width: columns, height: rows });
  const turned = isTurned ? cut.flip().flop() : cut;
  return encodeWebp(await turned.removeAlpha().raw().toBuffer(), columns, rows, content);
}
