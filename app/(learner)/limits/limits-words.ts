import {
  OUTCOME_NAMES,
  OUTCOMES,
  type Outcome,
  QUANTITY_FACTS,
  type Quantity,
  type Stretch,
  withUnit,
} from "@/lib/criteria";

/** Short names of the sets, for the picture; the table has the whole ones. */
const SHORT_NAMES: Readonly<Record<string, string>> = {
  "iso-5817-2014-b": "ISO 5817 level B",
  "iso-5817-2014-c": "ISO 5817 level C",
  "iso-5817-2014-d": "ISO 5817 level D",
  "aws-d1.1-static-across": "AWS D1.1 static",
  "aws-d1.1-static-other": "AWS D1.1 static",
  "aws-d1.1-cyclic-across": "AWS D1.1 cyclic",
  "aws-d1.1-cyclic-other": "AWS D1.1 cyclic",
  "asme-b31.3-normal-girth": "ASME B31.3 girth",
  "asme-b31.3-normal-longitudinal": "ASME B31.3 longitudinal",
  "api-1104": "API 1104",
};
export const shortName = ({ id, name }: { readonly id: string; readonly name: string }): string =>
  SHORT_NAMES[id] ?? name;

export const sizeText = (value: number, quantity: Quantity): string => withUnit(value, QUANTITY_FACTS[quantity].unit);

const isWorse = (one: Outcome, other: Outcome): boolean => OUTCOMES.indexOf(one) < OUTCOMES.indexOf(other);

/** A bar in words: "accept up to 0.4 mm, then reject". */
export function stretchesText(stretches: readonly Stretch[], axis: Quantity | null): string {
  const last = stretches[stretches.length - 1];
  if (axis === null || stretches.length === 1) {
    const whatever =
      axis === null || last.outcome === "not-covered" ? "" : `, whatever the ${QUANTITY_FACTS[axis].name}`;
    return `${OUTCOME_NAMES[last.outcome]}${whatever}`;
  }
  const parts = stretches.slice(0, -1).map(({ outcome, to }, n) => {
    const edge = isWorse(stretches[n + 1].outcome, outcome) ? "up to" : "under";
    return `${OUTCOME_NAMES[outcome]} ${edge} ${sizeText(to, axis)}`;
  });
  return `${parts.join(", ")}, then ${OUTCOME_NAMES[last.outcome]}`;
}
