import { describeLimit } from "../../criteria";
import { roundTo } from "../../math";
import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { faceWords, hundredths, lowerName, tenths } from "../words";
import { decidingSymbols, possible, rowWords, valueWords } from "./clear-row";
import { drawLimit } from "./worked-limit";
import { wrongLimits } from "./wrong-limits";

/** A depth and every limit that is offered lie further apart than this, mm: a depth gauge is read to tenths. */
const CLEAR = 0.04;

export const undercutSentence: Kind = {
  name: "undercut-sentence",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const { criteria, truth } = material;
    const undercuts = possible(truth).filter(
      ({ type }) => type === "continuous-undercut" || type === "intermittent-undercut",
    );
    const limit = drawLimit(material, undercuts, random);
    if (!limit) return null;
    const depth = roundTo(limit.value * random.uniform(0.4, 1.7), 0.1);
    if (depth < 0.1) return null;
    const length = 10 + random.integer(20);
    const sentence = (value: number, why: string): Choice => ({
      text:
        depth > value
          ? `Reject: ${tenths(depth)} is over ${hundredths(value)}`
          : `Accept: ${tenths(depth)} is not over ${hundredths(value)}`,
      value,
      why,
    });
    const all = [limit.value, ...wrongLimits(limit, truth).map(({ value }) => value)];
    if (Math.abs(depth - limit.value) < CLEAR || all.length < 4) return null;
    const { symbol } = limit.formula;
    const symbols = [...(symbol === undefined ? [] : [symbol]), ...decidingSymbols(criteria, limit.type)];
    return {
      stem: `By ${criteria.name}, ${valueWords(limit.values, symbols)}: ${lowerName(limit.type)} on ${faceWords(limit.face)}, ${tenths(depth)} deep and ${length} mm long. What is the sentence, and what decides it?`,
      tolerance: 0.02,
      right: sentence(
        limit.value,
        `${rowWords(criteria, limit.row)}: ${describeLimit(limit.row.limit)}${limit.worked === null ? "" : `; ${limit.worked}`}`,
      ),
      wrong: wrongLimits(limit, truth)
        .filter(({ value }) => value > 0 && Math.abs(depth - value) >= CLEAR)
        .map(({ value, why }) => sentence(value, why)),
      place: null,
    };
  },
};
