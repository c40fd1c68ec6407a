import sharp from "sharp";
import type { EncodeImage } from "@/lib/surface";

/**
 * WebP at a quality at which the eye finds no difference on lit steel; low effort, because a learner is waiting. Steel is
 * nearly grey: sharp chroma costs three times as long and brings the colours no nearer. Shares that are no colours need it or
 * a higher quality, which takes the same bytes.
 */
export const encodeWebp: EncodeImage = async (rgb, columns, rows, content) =>
  sharp(rgb, { raw: { width: columns, height: rows, channels: 3 } })
    .webp({ quality: content === "colour" ? 82 : 88, effort: 2 })
    .toBuffer();
