/** What is measured on a piece besides its imperfections. */
export const DIMENSIONS = [
  "weld-width",
  "cap-height",
  "root-height",
  "linear-misalignment",
  "angular-misalignment",
] as const;
export type Dimension = (typeof DIMENSIONS)[number];

export interface DimensionFacts {
  readonly name: string;
  readonly unit: "mm" | "degrees";
  /** What is asked for, in one sentence. */
  readonly asks: string;
  /** Largest value that anybody could mean. */
  readonly most: number;
}

/** Words from ISO 6520-1 and ISO 17659 (from memory); what is asked for is common practice, no source. */
export const DIMENSION_FACTS: Readonly<Record<Dimension, DimensionFacts>> = {
  "weld-width": {
    name: "Weld width",
    unit: "mm",
    asks: "Largest distance between the two toes of the cap.",
    most: 60,
  },
  "cap-height": {
    name: "Excess weld metal",
    unit: "mm",
    asks: "Largest height of the cap above the plates.",
    most: 20,
  },
  "root-height": {
    name: "Excess penetration",
    unit: "mm",
    asks: "Largest height of the root above the plates.",
    most: 20,
  },
  "linear-misalignment": {
    name: "Linear misalignment",
    unit: "mm",
    asks: "Largest step between the two plates; 0 where there is none.",
    most: 20,
  },
  "angular-misalignment": {
    name: "Angular misalignment",
    unit: "degrees",
    asks: "Largest angle by which the plates are bent against each other; 0 where they are straight.",
    most: 45,
  },
};
