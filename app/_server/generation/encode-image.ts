import sharp from "sharp";
import type { EncodeImage } from "@/lib/surface";

/** WebP at a quality at which the eye finds no difference on lit steel; low effort, because a learner is waiting. */
export const encodeWebp: EncodeImage = async (rgb, columns, rows) =>
  sharp(rgb, { raw: { width: columns, height: rows, channels: 3 } })
    .webp({ quality: 84, effort: 2, smartSubsample: true })
    .toBuffer();
