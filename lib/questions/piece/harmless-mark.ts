import { CLUTTER_WORDS, type Clutter, type ImperfectionType, imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { clutterName, faceWords, inside, looks, stretchWords } from "../words";
import { acrossWords, isAlone, placeOf } from "./items";
import { harmlessNames } from "./other-names";

/** What each harmless thing is taken for; common practice, no source. */
const TEMPTS: Readonly<Record<Clutter, readonly ImperfectionType[]>> = {
  "chalk-mark": ["spatter", "slag-residue"],
  "pen-mark": ["slag-residue", "stray-arc"],
  scratch: ["longitudinal-crack", "stray-arc"],
  "mill-scale-edge": ["longitudinal-crack", "overlap"],
  "rust-patch": ["stray-arc", "slag-residue"],
  "tight-toe": ["overlap", "longitudinal-crack"],
  "coarse-ripple": ["poor-restart", "overlap"],
  "removed-spatter": ["surface-pore", "spatter"],
  "glass-spots": ["slag-residue", "surface-pore"],
};

export const harmlessMark: Kind = {
  name: "harmless-mark",
  source: "piece",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const clear = truth.clutter.filter((item) => isAlone(item, truth));
    if (clear.length === 0) return null;
    const item = random.pick(clear);
    const tempting = TEMPTS[item.kind].map((type) => ({
      text: imperfection(type).name,
      why: `it looks otherwise: ${looks(type)}`,
    }));
    return {
      stem: `What lies on ${faceWords(item.face)} ${stretchWords(item)} from the datum end, ${acrossWords(item.across, truth)}?`,
      right: { text: clutterName(item.kind), why: inside(CLUTTER_WORDS[item.kind].tell) },
      wrong: [...tempting, ...harmlessNames(item.kind)],
      place: placeOf(item),
    };
  },
};
