import { assess, type Indication, type Outcome, type Piece, QUANTITY_FACTS, type SymbolValues } from "../../criteria";
import { imperfection } from "../../imperfections";
import { roundTo } from "../../math";
import type { RandomStream } from "../../random";
import { PIECES } from "../../weld";
import type { Material } from "../kind";
import { faceWords, lowerName } from "../words";
import { clearRow, type OnFace } from "./clear-row";
import { workedLimit } from "./worked-limit";

/** One made-up indication with what the criteria make of it. */
export interface Case extends OnFace {
  readonly outcome: Outcome;
  /** "depth 0.3 mm", or "length 12 mm". */
  readonly measure: string;
  /** The finding that decides, in one line without a full stop. */
  readonly text: string;
}

/** No measure lies nearer to its limit than this, mm. */
const CLEAR = 0.15;
const START = 40;

/** Made-up indications of a type on a face that the criteria clearly decide: by a limit in numbers on either side of it, or by a row that permits none. */
export function casesOf(material: Material, on: OnFace, values: SymbolValues, random: RandomStream): Case[] {
  const row = clearRow(material.criteria, on.type, on.face, values);
  if (!row) return [];
  const isLine = imperfection(on.type).extent === "line";
  const length = isLine ? 6 + random.integer(14) : 0;
  if (row.limit.kind === "not-permitted") {
    // with a size like the others, so that the want of one does not tell what is never permitted
    const { size } = imperfection(on.type);
    if (size === null) return isLine ? judged(material, on, values, length, {}, `length ${length} mm`) : [];
    const value = roundTo(random.uniform(0.3, 1.6), 0.1);
    return judged(material, on, values, length, { [size]: value }, sizeWords(size, value));
  }
  const limit = workedLimit(material, on, values);
  if (!limit) return [];
  const sizes = [limit.value * random.uniform(0.4, 0.85), limit.value * random.uniform(1.2, 1.8)].map((size) =>
    roundTo(size, 0.1),
  );
  return sizes
    .filter((size) => size > 0 && Math.abs(size - limit.value) >= CLEAR)
    .flatMap((size) =>
      judged(material, on, values, length, { [limit.quantity]: size }, sizeWords(limit.quantity, size)),
    );
}

const sizeWords = (quantity: keyof typeof QUANTITY_FACTS, value: number): string =>
  `${QUANTITY_FACTS[quantity].name} ${value.toFixed(1)} mm`;

/** The indication with what the criteria make of it. */
export function judged(
  { criteria, truth }: Material,
  { type, face }: OnFace,
  values: SymbolValues,
  length: number,
  measured: Indication["measured"],
  measure: string,
): Case[] {
  const piece: Piece = { length: PIECES[truth.joint.kind].length, values };
  const sentence = assess({ id: "case", type, face, start: START, end: START + length, measured }, piece, criteria);
  return [{ type, face, outcome: sentence.outcome, measure, text: sentence.text }];
}

/** "Continuous undercut on the cap face, depth 0.3 mm". */
export const caseWords = ({ type, face, measure }: Case): string =>
  `${imperfection(type).name}${face === "fillet" ? "" : ` on ${faceWords(face)}`}, ${measure}`;

export const caseInSentence = ({ type, face, measure }: Case): string =>
  `${lowerName(type)} on ${faceWords(face)}, ${measure}`;
