import type { TextStyle } from "./page";
import { escaped } from "./png";

/** A line of text with its baseline at (x, y), dots. */
export function text(x: number, y: number, words: string, style: TextStyle = {}): string {
  const { size = 28, weight = 400, anchor = "start", colour = "#111" } = style;
  return `<text x="${x}" y="${y}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}" fill="${colour}">${escaped(words)}</text>`;
}

export const line = (x1: number, y1: number, x2: number, y2: number, width = 2, colour = "#111"): string =>
  `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" stroke="${colour}" stroke-width="${width}"/>`;
