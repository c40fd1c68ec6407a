import { BURST_SECONDS, type EyeChoice, type EyeDrill, type EyeTaskKind, lengthOf } from "@/lib/eye";
import {
  CLUTTER_WORDS,
  type Clutter,
  type ImperfectionType,
  imperfection,
  isImperfectionType,
} from "@/lib/imperfections";

interface EyeWords {
  readonly title: string;
  readonly does: string;
}

export const EYE_WORDS: Readonly<Record<EyeDrill, EyeWords>> = {
  mixed: { title: "Mixed round", does: "Every kind of task in turn, mostly on what you miss or mix up." },
  spot: {
    title: "Spot it",
    does: "A window on a weld. Is there something to report, or nothing, or only chalk and rust?",
  },
  name: { title: "Name it", does: "Something is there. Say what it is, among what it is easily taken for." },
  pair: { title: "Look-alikes", does: "Two windows side by side: which of them has what is asked for?" },
  ends: { title: "Find the ends", does: "Mark where it starts and where it ends along the weld." },
  size: { title: "Size it", does: "Estimate by eye beside a scale, before anybody measures." },
  burst: { title: "Warm-up burst", does: "Spot and name, one after the other, to get your eye in before a piece." },
};

/** lengthWords({ drill: "spot", isTimed: false }) = "12 tasks". */
export const lengthWords = (choice: Pick<EyeChoice, "drill" | "isTimed">): string =>
  choice.drill === "burst" && choice.isTimed ? `${BURST_SECONDS} seconds` : `${lengthOf(choice)} tasks`;

export const TASK_WORDS: Readonly<Record<EyeTaskKind, string>> = {
  spot: "Spotted",
  name: "Named",
  pair: "Look-alikes told apart",
  ends: "Ends found",
  size: "Sizes estimated",
};

/** thingName("surface-pore") = "Surface pore"; clutter without its article; windows with nothing in them by what they have. */
export function thingName(about: ImperfectionType | Clutter | null): string {
  if (about === null) return "Nothing there";
  if (isImperfectionType(about)) return imperfection(about).name;
  const { name } = CLUTTER_WORDS[about];
  return sentence(name.replace(/^(an?|the) /, ""));
}

/** sentence("a scratch") = "A scratch". */
export const sentence = (text: string): string => text[0].toUpperCase() + text.slice(1);

/** An imperfection inside a sentence: inSentence("surface-pore") = "surface pore". */
export const inSentence = (type: ImperfectionType): string => {
  const { name } = imperfection(type);
  return name[0].toLowerCase() + name.slice(1);
};

/** Most names are used without an article: "What is there: surface pore". */
export const numbered = (type: ImperfectionType): string => `${imperfection(type).name} (${imperfection(type).number})`;

const SIDES = ["left", "right"] as const;
/** sideOf(0) = "left". */
export const sideOf = (window: number): (typeof SIDES)[number] => SIDES[window === 0 ? 0 : 1];
