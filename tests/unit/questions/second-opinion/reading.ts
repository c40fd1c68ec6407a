import type { Criteria } from "../../../../lib/criteria";
import { CATALOGUE, CLUTTER_WORDS } from "../../../../lib/imperfections";
import type { Question } from "../../../../lib/questions";
import type { Truth } from "../../../../lib/specimen";

export interface Asked {
  readonly question: Question;
  readonly truth: Truth;
  readonly criteria: Criteria;
}

/** Which of the four options are right, worked out from the stem and the piece alone. */
export type Opinion = (asked: Asked) => boolean[];

/** The first number in a text. */
export const numberIn = (text: string): number => Number(/-?\d+(\.\d+)?/.exec(text)?.[0]);

export const numbersIn = (text: string): number[] =>
  [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([digits]) => Number(digits));

export const faceIn = (text: string): "cap" | "root" | "fillet" =>
  text.includes("cap face") ? "cap" : text.includes("root face") ? "root" : "fillet";

/** The key of the catalogue row with that name. */
export function typeNamed(name: string): string | undefined {
  for (const [type, row] of Object.entries(CATALOGUE)) {
    if (row.name.toLowerCase() === name.trim().toLowerCase()) return type;
  }
  return undefined;
}

/** The type whose name, the longest of those that fit, stands in a sentence. */
export function typeWithin(sentence: string): string {
  let best = "";
  let found = "";
  for (const [type, row] of Object.entries(CATALOGUE)) {
    const name = row.name.toLowerCase();
    if (sentence.toLowerCase().includes(name) && name.length > best.length) {
      best = name;
      found = type;
    }
  }
  return found;
}

/** The kind of clutter with that name. */
export function clutterNamed(name: string): string | undefined {
  for (const [kind, words] of Object.entries(CLUTTER_WORDS)) {
    if (words.name.endsWith(name.toLowerCase())) return kind;
  }
  return undefined;
}

/**
 * Right is the option that says the number as precisely as it is written, and it must be the nearest one to whatever somebody
 * reads who is off by the tolerance: a wrong option that lies nearer than twice that counts as right as well.
 */
export const byNumber = ({ question }: Asked, expected: number, written: number, tolerance: number): boolean[] =>
  question.options.map((option) => {
    const off = Math.abs(numberIn(option) - expected);
    return off <= written || off <= 2 * tolerance - written;
  });

export const byText = ({ question }: Asked, isRight: (option: string) => boolean): boolean[] =>
  question.options.map(isRight);
