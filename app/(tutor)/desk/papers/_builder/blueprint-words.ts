import type { BlueprintLine } from "@/app/_server/blueprint-view";
import { FAMILY_NAMES } from "@/lib/bench";
import { imperfection } from "@/lib/imperfections";
import type { Section } from "@/lib/results";

/** Blueprints as a tutor chooses them. */
export const BLUEPRINT_NAMES: Readonly<Record<Section, Readonly<Record<string, string>>>> = {
  plate: {
    assessment: "for assessment: 12 indications, equally hard",
    "final-mock": "for the last rehearsal: 22 indications",
    practice: "as in practice: 12 to 17 indications",
    clean: "clean: nothing to report",
  },
  fillet: { practice: "as in practice: 4 to 6 indications", clean: "clean: nothing to report" },
};

/** More types than these are counted, not named. */
const TYPES_NAMED = 3;

/** What a line asks for: its types where it names some, else its families. */
export function familyWords({ families, types }: BlueprintLine): string {
  if (types.length > TYPES_NAMED) return `One of ${types.length} types`;
  if (types.length > 0) return types.map((type) => imperfection(type).name).join(", or ");
  if (families === "any") return "Any";
  const [first, ...others] = families.map((family) => FAMILY_NAMES[family]);
  return [first, ...others.map((name) => name.toLowerCase())].join(", or ");
}

export const PLACE_WORDS: Readonly<Record<BlueprintLine["place"], string>> = {
  any: "anywhere",
  toe: "at a toe",
  run: "on a run",
  weld: "along the weld",
  plate: "on a plate",
  stop: "at a stop",
};

export const SIZE_WORDS: Readonly<Record<BlueprintLine["size"], string>> = {
  any: "any",
  small: "small",
  medium: "medium",
  large: "large",
};

/** "7", or "7 to 10". */
export const rangeWords = ([least, most]: readonly [number, number]): string =>
  least === most ? String(least) : `${least} to ${most}`;
