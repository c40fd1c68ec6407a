import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { drawnSize } from "./sizes";

export const sizeLetter: Kind = {
  name: "size-letter",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const symbol = random.pick(["a", "z"] as const);
    const { value } = drawnSize(truth, symbol, random);
    const leg: Choice = { text: `Each leg is ${value} mm long`, why: "the leg has the letter z" };
    const throat: Choice = { text: `The throat is ${value} mm`, why: "the throat has the letter a" };
    const [right, other] = symbol === "a" ? [throat, leg] : [leg, throat];
    return {
      stem: `Before the triangle of a fillet's symbol stands ${symbol}${value}. What does it ask for?`,
      right: {
        ...right,
        why: `${right.why}, and the size stands before the symbol (ISO 2553, secondary sources agree)`,
      },
      wrong: [
        other,
        { text: `The face is ${value} mm wide`, why: "the width of the face has no letter of its own" },
        { text: `The weld is ${value} mm long`, why: "a length stands behind the symbol" },
        { text: `The thinner plate is ${value} mm thick`, why: "plates are dimensioned by themselves" },
        { text: `The gap is ${value} mm`, why: "a gap belongs to the preparation of a butt weld" },
      ],
      place: null,
    };
  },
};
