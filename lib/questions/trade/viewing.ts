import { BOTH_SECTIONS, type Kind } from "../kind";

interface ViewingFact {
  readonly name: string;
  readonly stem: string;
  readonly unit: string;
  readonly right: number;
  readonly why: string;
  readonly wrong: readonly (readonly [value: number, why: string])[];
}

/** A kind that asks for one number of ISO 17637 that secondary sources agree on. */
export const viewing = ({ name, stem, unit, right, why, wrong }: ViewingFact): Kind => {
  const text = (value: number) => `${value} ${unit}`;
  return {
    name,
    source: "trade",
    sections: BOTH_SECTIONS,
    draft: () => ({
      stem,
      right: { text: text(right), value: right, why: `${why} (ISO 17637, secondary sources agree)` },
      wrong: wrong.map(([value, because]) => ({ text: text(value), value, why: because })),
      place: null,
    }),
  };
};
