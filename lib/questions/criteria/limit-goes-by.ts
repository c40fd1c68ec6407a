import { describeLimit, rowsOn, type SymbolName } from "../../criteria";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { faceWords, lowerName } from "../words";
import { decidingSymbols, possible, rowWords, valueWords } from "./clear-row";
import { drawLimit } from "./worked-limit";

const NAMES: Readonly<Record<SymbolName | "fixed", string>> = {
  t: "On the thickness of the plate",
  s: "On the thickness of the weld",
  a: "On the throat of the drawing",
  aA: "On the throat as it is welded",
  b: "On the width from toe to toe",
  bRoot: "On the width of the root run",
  z: "On the leg that is asked for",
  hCap: "On the height of the cap there",
  fixed: "On nothing: it is one number",
};

/** Measures that come to the same on most pieces, so that naming one for the other is no error to speak of. */
const ALIKE: readonly (readonly string[])[] = [
  ["t", "s"],
  ["a", "aA", "z"],
  ["b", "bRoot"],
];

export const limitGoesBy: Kind = {
  name: "limit-goes-by",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const limit = drawLimit(material, possible(material.truth), random);
    if (!limit) return null;
    const { criteria } = material;
    const key: keyof typeof NAMES = limit.formula.symbol ?? "fixed";
    // where rows follow each other by some measure, the limit goes by that as well
    const steps = rowsOn(criteria, limit.type, limit.face, limit.values).outside.length > 0;
    if (steps && key === "fixed") return null;
    const deciding: readonly string[] = steps ? decidingSymbols(criteria, limit.type) : [];
    // where its cap is reached, one number is what the limit is on this piece
    const isCapped = limit.value === limit.formula.atMost;
    const others = (Object.keys(NAMES) as (keyof typeof NAMES)[]).filter(
      (other) =>
        other !== key &&
        !(isCapped && other === "fixed") &&
        !deciding.includes(other) &&
        !ALIKE.some((group) => group.includes(key) && group.includes(other)),
    );
    return {
      stem: `By ${criteria.name}, ${valueWords(limit.values, decidingSymbols(criteria, limit.type))}: what does the limit on ${lowerName(limit.type)} on ${faceWords(limit.face)} depend on?`,
      right: { text: NAMES[key], why: `${rowWords(criteria, limit.row)}: ${describeLimit(limit.row.limit)}` },
      wrong: others.map((other) => ({
        text: NAMES[other],
        why:
          other === "fixed"
            ? "the limit grows with the piece, even where it grows up to a point only"
            : "that limits other imperfections, or none",
      })),
      place: null,
    };
  },
};
