import { imperfection } from "../../imperfections";
import { DEFAULT_TOLERANCES } from "../../results";
import { isFilletTruth } from "../../specimen";
import type { Choice, Kind } from "../kind";
import { tenths } from "../words";

const LIMIT = imperfection("incorrect-root-gap").recordedFrom;

export const gapAtEnd: Kind = {
  name: "gap-at-end",
  source: "piece",
  sections: ["fillet"],
  draft: ({ truth }) => {
    if (!isFilletTruth(truth)) return null;
    const { datum, farEnd } = truth.gap;
    if ([datum, farEnd].some((gap) => Math.abs(gap - LIMIT) <= DEFAULT_TOLERANCES.size.full)) return null;
    const [here, there] = [datum > LIMIT, farEnd > LIMIT];
    const choices: Choice[] = [
      { text: "At the datum end only", why: "that tries one end, or mixes up the two" },
      { text: "At the far end only", why: "that tries one end, or mixes up the two" },
      { text: "At both of the ends", why: "that takes a touching plate for an open one" },
      { text: "At neither of the ends", why: "that looks along the weld, where the gap is closed by it" },
    ];
    const right = here ? (there ? 2 : 0) : there ? 1 : 3;
    return {
      stem: `At which end of this joint does a feeler of ${LIMIT} mm go under the standing plate?`,
      right: {
        ...choices[right],
        why: `the gap is ${tenths(datum)} at the datum end and ${tenths(farEnd)} at the far end; ${LIMIT} mm is recorded`,
      },
      wrong: choices.filter((_, n) => n !== right),
      place: null,
    };
  },
};
