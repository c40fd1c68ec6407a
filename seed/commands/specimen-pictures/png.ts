import sharp, { type OverlayOptions } from "sharp";
import { type Picture, renderView, type Surface, type View } from "@/lib/surface";

/** A drawn view as a PNG file. */
export const savePng = (surface: Surface, view: View): Promise<Buffer> => pngOf(renderView(surface, view));

export function pngOf({ width, height, pixels }: Picture): Promise<Buffer> {
  return sharp(Buffer.from(pixels.buffer), { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .png({ compressionLevel: 6 })
    .toBuffer();
}

/** A picture placed on a sheet with its upper left corner at (left, top), pixels. */
export const placed = ({ width, height, pixels }: Picture, left: number, top: number): OverlayOptions => ({
  input: Buffer.from(pixels.buffer),
  raw: { width, height, channels: 4 },
  left,
  top,
});

/** A sheet of one colour with pictures and, above them, line work and text (SVG) of the same size. */
export function sheetPng(
  width: number,
  height: number,
  background: string,
  pictures: readonly OverlayOptions[],
  drawing: string,
  dotsPerInch = 96,
): Promise<Buffer> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" font-family="Inter, DejaVu Sans, sans-serif">${drawing}</svg>`;
  return sharp({ create: { width, height, channels: 3, background } })
    .composite([...pictures, { input: Buffer.from(svg), left: 0, top: 0 }])
    .withMetadata({ density: dotsPerInch })
    .png({ compressionLevel: 7 })
    .toBuffer();
}

/** Text safe inside SVG. */
export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
