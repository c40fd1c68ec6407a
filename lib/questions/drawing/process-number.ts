import { PROCESS_NAMES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { capital } from "../words";

/** Further processes of ISO 4063 with which nothing is welded here (secondary sources agree). */
const OTHERS: Readonly<Record<string, string>> = {
  "114": "self-shielded cored wire",
  "121": "submerged arc, solid wire",
  "131": "inert gas, solid wire",
  "15": "plasma arc",
};
const ALL: Readonly<Record<string, string>> = { ...PROCESS_NAMES, ...OTHERS };

export const processNumber: Kind = {
  name: "process-number",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    // what the piece itself was welded with stands in words on the bench
    const process = random.pick(Object.keys(ALL).filter((number) => number !== truth.joint.process));
    return {
      stem: `In the tail of a welding symbol stands ${process}. Which process does it ask for?`,
      right: { text: capital(ALL[process]), why: `that is ${process} (ISO 4063, secondary sources agree)` },
      wrong: Object.entries(ALL)
        .filter(([number]) => number !== process)
        .map(([number, name]) => ({ text: capital(name), why: `that is ${number}` })),
      place: null,
    };
  },
};
