import type { Specimen } from "@/lib/specimen";
import { type Picture, renderView } from "@/lib/surface";
import { BUTT_PLATE_LENGTH, FACES } from "@/lib/weld";
import { itemWords } from "./item-words";
import { escaped, placed, sheetPng } from "./png";
import { LIGHTS } from "./views";

const PER_MM = 5;
const HALF = 20;
const CAPTION = 18;

/** One strip of the sheet made ready. */
export interface RandomStrip {
  readonly picture: Picture;
  readonly caption: string;
}

/** The weld of both faces of a specimen, each under one light, with what was measured. */
export function randomStrips({ recipe, surfaces, truth }: Specimen): RandomStrip[] {
  const { process, position, thickness } = truth.joint;
  return FACES.map((face, n) => {
    const items = truth.items.filter((item) => item.face === face && !item.neutral);
    const words = items.map((item) => {
      const { number, where, size } = itemWords(item);
      return [number, where, size].filter(Boolean).join(" ");
    });
    return {
      picture: renderView(surfaces[face], {
        x0: 0,
        x1: BUTT_PLATE_LENGTH,
        y0: -HALF,
        y1: HALF,
        perMm: PER_MM,
        light: LIGHTS[n],
      }),
      caption: `${recipe.seed}  ${process} ${position} t ${thickness}  ${face}:  ${words.join("   ")}`,
    };
  });
}

export function randomSheet(strips: readonly RandomStrip[]): Promise<Buffer> {
  const high = 2 * HALF * PER_MM + CAPTION;
  const texts = strips.map(
    ({ caption }, n) => `<text x="4" y="${n * high + 13}" font-size="11" fill="#e8e6df">${escaped(caption)}</text>`,
  );
  return sheetPng(
    BUTT_PLATE_LENGTH * PER_MM,
    strips.length * high,
    "#1e2225",
    strips.map(({ picture }, n) => placed(picture, 0, n * high + CAPTION)),
    texts.join(""),
  );
}
