import { CLUTTER_WORDS, type Clutter, type ImperfectionType, imperfection } from "../imperfections";
import { roundTo } from "../math";
import type { TruthItem } from "../specimen";
import type { SurfaceFace } from "../weld";

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "continuous undercut", to stand inside a sentence. */
export const lowerName = (type: ImperfectionType): string => imperfection(type).name.toLowerCase();

/** "Patch of rust", to stand beside the names of imperfections. */
export const clutterName = (kind: Clutter): string => capital(CLUTTER_WORDS[kind].name.replace(/^(a|an|the) /, ""));

/** A sentence as it stands inside another one: a small letter first and no full stop. */
export const inside = (sentence: string): string =>
  sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, "");

/** What a type looks like, to stand inside a sentence; hints on measuring that follow are left out. */
export const looks = (type: ImperfectionType): string => inside(imperfection(type).looks.split(/(?<=\.) /)[0]);

const FACE_WORDS: Readonly<Record<SurfaceFace, string>> = {
  cap: "the cap face",
  root: "the root face",
  fillet: "the fillet",
};
export const faceWords = (face: SurfaceFace): string => FACE_WORDS[face];

/** Places are written to the millimetre. */
export const wholeMm = (place: number): number => Math.round(place);

/** "from 120 to 145 mm", or "at 88 mm" for a point. */
export function stretchWords({ start, end }: Pick<TruthItem, "start" | "end">): string {
  const [from, to] = [wholeMm(start), wholeMm(end)];
  return from === to ? `at ${from} mm` : `from ${from} to ${to} mm`;
}

/** A measure with one decimal: "2.6 mm", "7.0 mm". */
export const tenths = (value: number): string => `${roundTo(value, 0.1).toFixed(1)} mm`;

/** A worked-out length with two decimals: "0.45 mm", "2.00 mm". */
export const hundredths = (value: number): string => `${roundTo(value, 0.01).toFixed(2)} mm`;
