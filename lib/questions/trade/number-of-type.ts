import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../../imperfections";
import { PIECES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { lowerName } from "../words";

/** Numbers that the catalogue has from memory decide nothing. */
const FROM_MEMORY = ["101", "102", "103", "105", "106", "2015", "2018", "5014"];

const isSure = (type: ImperfectionType): boolean => !FROM_MEMORY.includes(imperfection(type).number);

export const numberOfType: Kind = {
  name: "number-of-type",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const { faces } = PIECES[truth.joint.kind];
    const sure = IMPERFECTION_TYPES.filter(isSure);
    const type = random.pick(sure.filter((one) => imperfection(one).faces.some((face) => faces.includes(face))));
    const { number } = imperfection(type);
    return {
      stem: `Which reference number of ISO 6520-1 do you write down for ${lowerName(type)}?`,
      right: {
        text: number,
        value: Number(number),
        why: "ISO 6520-1; the number was seen in public sources that quote it",
      },
      wrong: sure
        // a number of another length would stand out
        .filter((other) => other !== type && imperfection(other).number.length === number.length)
        .map((other) => ({
          text: imperfection(other).number,
          value: Number(imperfection(other).number),
          why: `that is ${lowerName(other)}`,
        })),
      place: null,
    };
  },
};
