import { FILLET_ENDS, FILLET_STATIONS, type JointKind } from "./pieces";

/** What is measured on a piece besides its imperfections: the first six on a butt plate, the others on a fillet. */
export const DIMENSIONS = [
  "plate-thickness",
  "weld-width",
  "cap-height",
  "root-height",
  "linear-misalignment",
  "angular-misalignment",
  "base-leg",
  "standing-leg",
  "throat",
  "smallest-leg",
  "smallest-throat",
] as const;
export type Dimension = (typeof DIMENSIONS)[number];

export interface DimensionFacts {
  readonly joint: JointKind;
  /** Which value counts: the largest or the least along the weld, wherever it was measured, the one at a marked station, or the one it has everywhere. */
  readonly taken: "largest" | "least" | "at-station" | "anywhere";
  readonly name: string;
  readonly unit: "mm" | "degrees";
  /** What is asked for, in one sentence. */
  readonly asks: string;
  /** Largest value that anybody could mean. */
  readonly most: number;
}

/** Words from ISO 6520-1 and ISO 17659 (from memory); what is asked for is common practice, no source. */
export const DIMENSION_FACTS: Readonly<Record<Dimension, DimensionFacts>> = {
  "plate-thickness": {
    joint: "butt",
    taken: "anywhere",
    name: "Plate thickness",
    unit: "mm",
    asks: "By caliper over a long edge of either plate; both are cut from one sheet. The drawing gives the nominal thickness only.",
    most: 50,
  },
  "weld-width": {
    joint: "butt",
    taken: "largest",
    name: "Weld width",
    unit: "mm",
    asks: "Largest distance between the two toes of the cap.",
    most: 60,
  },
  "cap-height": {
    joint: "butt",
    taken: "largest",
    name: "Excess weld metal",
    unit: "mm",
    asks: "Largest height of the cap over the straight line from plate to plate right beside its toes.",
    most: 20,
  },
  "root-height": {
    joint: "butt",
    taken: "largest",
    name: "Excess penetration",
    unit: "mm",
    asks: "Largest height of the root over the straight line from plate to plate right beside its toes.",
    most: 20,
  },
  "linear-misalignment": {
    joint: "butt",
    taken: "largest",
    name: "Linear misalignment",
    unit: "mm",
    asks: "Largest step between the two plates, each carried on straight to the middle of the weld; 0 where there is none.",
    most: 20,
  },
  "angular-misalignment": {
    joint: "butt",
    taken: "largest",
    name: "Angular misalignment",
    unit: "degrees",
    asks: "Largest angle by which the plates are bent against each other; 0 where they are straight.",
    most: 45,
  },
  "base-leg": {
    joint: "fillet",
    taken: "at-station",
    name: "Leg on the base plate",
    unit: "mm",
    asks: "From the root corner to the toe on the base plate, at the station.",
    most: 30,
  },
  "standing-leg": {
    joint: "fillet",
    taken: "at-station",
    name: "Leg on the standing plate",
    unit: "mm",
    asks: "From the root corner to the toe on the standing plate, at the station.",
    most: 30,
  },
  throat: {
    joint: "fillet",
    taken: "at-station",
    name: "Throat",
    unit: "mm",
    asks: "From the root corner to the face along the bisector, at the station, as a throat gauge shows it.",
    most: 30,
  },
  "smallest-leg": {
    joint: "fillet",
    taken: "least",
    name: "Smallest leg",
    unit: "mm",
    asks: `The shortest leg along the weld, whichever plate it lies on; the first and last ${FILLET_ENDS} mm do not count.`,
    most: 30,
  },
  "smallest-throat": {
    joint: "fillet",
    taken: "least",
    name: "Smallest throat",
    unit: "mm",
    asks: `The smallest throat along the weld, as a throat gauge shows it; the first and last ${FILLET_ENDS} mm do not count.`,
    most: 30,
  },
};

/** One dimension that is asked for; at a station, 1 at the datum end, or null where the whole weld is meant. */
export interface AskedDimension {
  readonly dimension: Dimension;
  readonly station: number | null;
}

/** "Throat, station 2", or "Smallest throat". */
export const nameAsked = ({ dimension, station }: AskedDimension): string =>
  station === null ? DIMENSION_FACTS[dimension].name : `${DIMENSION_FACTS[dimension].name}, station ${station}`;

/** Everything that is asked for on a piece, in the order of the report: the stations one after the other, then the whole weld. */
export const ASKED_DIMENSIONS: Readonly<Record<JointKind, readonly AskedDimension[]>> = {
  butt: askedOf("butt"),
  fillet: askedOf("fillet"),
};

function askedOf(kind: JointKind): AskedDimension[] {
  const own = DIMENSIONS.filter((dimension) => DIMENSION_FACTS[dimension].joint === kind);
  const isAtStation = (dimension: Dimension) => DIMENSION_FACTS[dimension].taken === "at-station";
  const atStations = Array.from({ length: FILLET_STATIONS }, (_, n) =>
    own.filter(isAtStation).map((dimension) => ({ dimension, station: n + 1 })),
  );
  return [
    ...atStations.flat(),
    ...own.filter((dimension) => !isAtStation(dimension)).map((dimension) => ({ dimension, station: null })),
  ];
}
