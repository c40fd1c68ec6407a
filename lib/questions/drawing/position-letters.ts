import { POSITION_NAMES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { capital } from "../words";

/** Two further positions of ISO 6947, in which nothing is welded here (secondary sources agree). */
const OTHERS: Readonly<Record<string, string>> = { PD: "horizontal overhead", PG: "vertical down" };
const ALL: Readonly<Record<string, string>> = { ...POSITION_NAMES, ...OTHERS };

export const positionLetters: Kind = {
  name: "position-letters",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    // what the piece itself was welded in stands in words on the bench
    const position = random.pick(Object.keys(ALL).filter((letters) => letters !== truth.joint.position));
    return {
      stem: `A welding procedure gives the position ${position}. Which position is that?`,
      right: { text: capital(ALL[position]), why: `that is ${position} (ISO 6947, secondary sources agree)` },
      wrong: Object.entries(ALL)
        .filter(([letters]) => letters !== position)
        .map(([letters, name]) => ({ text: capital(name), why: `that is ${letters}` })),
      place: null,
    };
  },
};
