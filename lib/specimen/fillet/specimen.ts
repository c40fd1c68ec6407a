import type { FilletTruth, TruthItem } from "../truth";
import { drawFilletRecipe } from "./draw-recipe";
import { FILLET_BLUEPRINTS, type FilletBlueprint } from "./fillet-blueprint";
import type { FilletChoice, FilletRecipe } from "./fillet-recipe";
import { generateFillet, type MadeFillet } from "./generate-fillet";

/** A fillet that meets its blueprint. */
export interface FilletSpecimen extends MadeFillet {
  readonly recipe: FilletRecipe;
  /** How many were made until one met the blueprint, 1 for the first. */
  readonly attempts: number;
}

/** So many fillets are made before a blueprint counts as one that cannot be met. */
const MOST_ATTEMPTS = 30;

/**
 * Makes the fillet specimen of a seed and a blueprint, by default for practice and with nothing fixed, drawing what goes wrong anew until what is
 * measured meets the blueprint. Throws where none met it, saying what was wrong with the last one.
 */
export function generateFilletSpecimen(
  seed: string,
  blueprint: FilletBlueprint = FILLET_BLUEPRINTS.practice,
  choice: FilletChoice = {},
  onStage: (stage: string) => void = () => {},
): FilletSpecimen {
  let last = "";
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
    const recipe = drawFilletRecipe(seed, blueprint, choice, attempt);
    const made = generateFillet(recipe, onStage);
    const departure = departureOf(made.truth, blueprint);
    if (departure === null) return { ...made, recipe, attempts: attempt + 1 };
    last = departure;
  }
  throw new Error(`no fillet in ${MOST_ATTEMPTS} met the blueprint; the last one: ${last}`);
}

/** Recorded imperfections lie at least this far apart along the weld, or across; mm. */
const APART = { along: 10, across: 3 };

/** What keeps a fillet from meeting a blueprint, in plain words; null where nothing does. */
function departureOf(
  { items }: FilletTruth,
  { indications: [least, most], includes = [] }: FilletBlueprint,
): string | null {
  const recorded = items.filter(({ neutral }) => !neutral);
  if (recorded.length < least || recorded.length > most) return `${recorded.length} recorded`;
  const missing = includes.find((type) => !recorded.some((item) => item.type === type));
  if (missing) return `no ${missing} was measured`;
  const close = recorded.find((item, n) => recorded.slice(n + 1).some((other) => !areApart(item, other)));
  return close ? `${close.type} at ${close.start} mm lies on another` : null;
}

function areApart(a: TruthItem, b: TruthItem): boolean {
  const along = Math.max(a.start - b.end, b.start - a.end);
  return along >= APART.along || Math.abs(a.across - b.across) >= APART.across;
}
