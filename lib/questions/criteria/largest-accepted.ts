import { describeLimit } from "../../criteria";
import type { RandomStream } from "../../random";
import type { Draft, Material } from "../kind";
import { positive, workedChoice } from "../numbers";
import { faceWords, lowerName } from "../words";
import { decidingSymbols, type OnFace, rowWords, valueWords } from "./clear-row";
import { drawLimit, quantityName } from "./worked-limit";
import { wrongLimits } from "./wrong-limits";

/** Options lie further apart than what rounding to hundredths can do, mm. */
const APART = 0.02;

/** Asks for the largest size of one of some types that the criteria accept, or null where they set no such limit. */
export function largestAccepted(material: Material, on: readonly OnFace[], random: RandomStream): Draft | null {
  const limit = drawLimit(material, on, random);
  if (!limit) return null;
  const { criteria, truth } = material;
  const { row, type, face, quantity, formula, value, worked, values } = limit;
  const symbols = [...(formula.symbol === undefined ? [] : [formula.symbol]), ...decidingSymbols(criteria, type)];
  return {
    stem: `By ${criteria.name}, ${valueWords(values, symbols)}: ${lowerName(type)} on ${faceWords(face)}. What is the largest ${quantityName(quantity)} that is accepted?`,
    tolerance: APART,
    right: workedChoice(
      value,
      `${rowWords(criteria, row)}: ${describeLimit(row.limit)}${worked === null ? "" : `; ${worked}`}`,
    ),
    wrong: positive(wrongLimits(limit, truth).map((other) => workedChoice(other.value, other.why))),
    place: null,
  };
}
