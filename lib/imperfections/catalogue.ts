import type { Face } from "../weld";

/** Families: what is alike in kind. A call in the right family earns half of the marks for the type. */
export const FAMILIES = [
  "crack",
  "cavity",
  "slag",
  "fusion",
  "toe-groove",
  "excess-metal",
  "missing-metal",
  "overlap",
  "restart",
  "misalignment",
  "surface-mark",
] as const;
export type Family = (typeof FAMILIES)[number];

/** What a gauge measures on an imperfection. */
export type SizeKind = "depth" | "height" | "diameter";

export interface Imperfection {
  /** Reference number of ISO 6520-1. */
  readonly number: string;
  readonly name: string;
  readonly family: Family;
  /** Types that an eye easily takes for this one although their family differs; they count as the same family in marking. */
  readonly alike: readonly string[];
  readonly faces: readonly Face[];
  /** A point has one position along the weld, a line a start and an end. */
  readonly extent: "point" | "line";
  /** What is measured, or null where nobody measures anything but the extent. */
  readonly size: SizeKind | null;
  /** Below this size (mm) it is visible but not recorded. */
  readonly recordedFrom: number;
  /** Below this length (mm) it is not recorded. */
  readonly recordedLength: number;
  /** Risk, 1 to 1.5: planar imperfections weigh most. */
  readonly weight: number;
  /** Where to look and what it looks like, for the learner's catalogue. */
  readonly looks: string;
}

/**
 * The imperfections an eye can meet on a butt plate. Numbers 104, 2013, 2017, 2025, 4011, 4013, 4021, 5011, 5012, 5013,
 * 502, 504, 506, 5071, 510, 511, 515, 516, 517 were seen in public sources that quote ISO 6520-1; 101, 102, 601, 602, 604,
 * 605 and 615 are from memory. Recording limits and weights are common practice, no source.
 */
export const CATALOGUE = {
  "longitudinal-crack": {
    number: "101",
    name: "Longitudinal crack",
    family: "crack",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 0,
    weight: 1.5,
    looks:
      "A thin, jagged dark line along the weld, at its centre, its toe or just beside it. Does not fade when the light turns.",
  },
  "transverse-crack": {
    number: "102",
    name: "Transverse crack",
    family: "crack",
    alike: [],
    faces: ["cap", "root"],
    extent: "point",
    size: null,
    recordedFrom: 0,
    recordedLength: 0,
    weight: 1.5,
    looks: "A thin, jagged dark line across the ripples.",
  },
  "crater-crack": {
    number: "104",
    name: "Crater crack",
    family: "crack",
    alike: ["crater-pipe"],
    faces: ["cap", "root"],
    extent: "point",
    size: null,
    recordedFrom: 0,
    recordedLength: 0,
    weight: 1.4,
    looks: "A fine star or line in the dish where an electrode ended.",
  },
  "surface-pore": {
    number: "2017",
    name: "Surface pore",
    family: "cavity",
    alike: [],
    faces: ["cap", "root"],
    extent: "point",
    size: "diameter",
    recordedFrom: 0.5,
    recordedLength: 0,
    weight: 1,
    looks: "A single round or oval hole in the weld metal, often near a start.",
  },
  "clustered-porosity": {
    number: "2013",
    name: "Clustered porosity",
    family: "cavity",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "diameter",
    recordedFrom: 0.3,
    recordedLength: 0,
    weight: 1,
    looks: "A group of holes in otherwise sound, rippled metal. Measure the largest mouth.",
  },
  "crater-pipe": {
    number: "2025",
    name: "End crater pipe",
    family: "cavity",
    alike: ["crater-crack"],
    faces: ["cap"],
    extent: "point",
    size: "diameter",
    recordedFrom: 0.5,
    recordedLength: 0,
    weight: 1.1,
    looks: "A hole in the middle of the dish where an electrode ended.",
  },
  "root-porosity": {
    number: "516",
    name: "Root porosity",
    family: "cavity",
    alike: [],
    faces: ["root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 2,
    weight: 1.1,
    looks: "A crusty, spongy stretch of root full of small ragged cells.",
  },
  "slag-residue": {
    number: "615",
    name: "Slag residue",
    family: "slag",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 2,
    weight: 1,
    looks: "A dark, glassy strip at a toe or between runs that does not shine like metal.",
  },
  "sidewall-fusion": {
    number: "4011",
    name: "Lack of side-wall fusion",
    family: "fusion",
    alike: ["incompletely-filled-groove"],
    faces: ["cap"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.3,
    recordedLength: 2,
    weight: 1.5,
    looks:
      "The weld's edge stands away from the bevel: a dark, uneven slot along the toe with the prepared face beside it.",
  },
  "root-fusion": {
    number: "4013",
    name: "Lack of root fusion",
    family: "fusion",
    alike: [],
    faces: ["root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.3,
    recordedLength: 2,
    weight: 1.5,
    looks: "The root bead took on one plate only; the other root edge is still there with a dark line beside it.",
  },
  "root-penetration": {
    number: "4021",
    name: "Incomplete root penetration",
    family: "fusion",
    alike: ["root-concavity"],
    faces: ["root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.4,
    recordedLength: 2,
    weight: 1.5,
    looks: "The root bead stops: two parallel plate edges with a rough, oxidised gap between them.",
  },
  "continuous-undercut": {
    number: "5011",
    name: "Continuous undercut",
    family: "toe-groove",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.25,
    recordedLength: 3,
    weight: 1.2,
    looks: "An unbroken sharp groove melted into the plate along a toe.",
  },
  "intermittent-undercut": {
    number: "5012",
    name: "Intermittent undercut",
    family: "toe-groove",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.25,
    recordedLength: 3,
    weight: 1.2,
    looks: "A chain of short bites in the plate along a toe with sound toe between them.",
  },
  "shrinkage-groove": {
    number: "5013",
    name: "Shrinkage groove",
    family: "toe-groove",
    alike: [],
    faces: ["root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.25,
    recordedLength: 3,
    weight: 1.2,
    looks: "A smooth, dull valley along an edge of the root bead, sometimes along both.",
  },
  "excess-weld-metal": {
    number: "502",
    name: "Excess weld metal",
    family: "excess-metal",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "height",
    recordedFrom: 3,
    recordedLength: 5,
    weight: 1,
    looks: "The cap stands clearly higher than its neighbourhood. Use the gauge: from above it hardly shows.",
  },
  "excess-penetration": {
    number: "504",
    name: "Excess penetration",
    family: "excess-metal",
    alike: ["poor-restart"],
    faces: ["root"],
    extent: "line",
    size: "height",
    recordedFrom: 2.6,
    recordedLength: 2,
    weight: 1,
    looks: "The root bead stands out high and smooth, rising and falling gradually.",
  },
  "incompletely-filled-groove": {
    number: "511",
    name: "Incompletely filled groove",
    family: "missing-metal",
    alike: ["sidewall-fusion"],
    faces: ["cap"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.4,
    recordedLength: 3,
    weight: 1.2,
    looks: "The weld lies below the plate and a strip of bevel is still to be seen along one or both edges.",
  },
  "root-concavity": {
    number: "515",
    name: "Root concavity",
    family: "missing-metal",
    alike: ["root-penetration"],
    faces: ["root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.3,
    recordedLength: 3,
    weight: 1,
    looks: "A smooth, bright trough in the root bead, both edges fused.",
  },
  overlap: {
    number: "506",
    name: "Overlap",
    family: "overlap",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 3,
    weight: 1.3,
    looks: "Weld metal rolled out over the plate with a tight dark crease under its edge.",
  },
  "burn-through": {
    number: "510",
    name: "Burn-through",
    family: "missing-metal",
    alike: [],
    faces: ["root"],
    extent: "point",
    size: null,
    recordedFrom: 0,
    recordedLength: 0,
    weight: 1.4,
    looks: "A hole or collapsed pit in the root bead with a sagging, ragged rim.",
  },
  "poor-restart": {
    number: "517",
    name: "Poor restart",
    family: "restart",
    alike: ["excess-penetration"],
    faces: ["cap", "root"],
    extent: "point",
    size: "height",
    recordedFrom: 0.8,
    recordedLength: 0,
    weight: 1,
    looks: "A hump with a crescent edge and a crease where a new electrode was started on the old crater.",
  },
  "linear-misalignment": {
    number: "5071",
    name: "Linear misalignment",
    family: "misalignment",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "height",
    recordedFrom: 1,
    recordedLength: 20,
    weight: 1,
    looks:
      "One plate stands higher than the other along the joint; one toe lies in shadow. Measured once, on the cap face.",
  },
  "stray-arc": {
    number: "601",
    name: "Stray arc",
    family: "surface-mark",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 1,
    weight: 1,
    looks: "A burnt spot or a string of pits on the plate beside the weld, ringed with oxide.",
  },
  spatter: {
    number: "602",
    name: "Spatter",
    family: "surface-mark",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 6,
    weight: 1,
    looks: "A dense patch of globules stuck to the plate. A few scattered grains are not recorded.",
  },
  "grinding-mark": {
    number: "604",
    name: "Grinding mark",
    family: "surface-mark",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.2,
    recordedLength: 5,
    weight: 1,
    looks: "A bright hollow cut by a disc, with parallel scratches.",
  },
  "chipping-mark": {
    number: "605",
    name: "Chipping mark",
    family: "surface-mark",
    alike: [],
    faces: ["cap", "root"],
    extent: "line",
    size: "depth",
    recordedFrom: 0.2,
    recordedLength: 1,
    weight: 1,
    looks: "Short, bright V-shaped cuts from a chisel or chipping hammer.",
  },
} as const satisfies Record<string, Imperfection>;

export type ImperfectionType = keyof typeof CATALOGUE;
export const IMPERFECTION_TYPES = Object.keys(CATALOGUE) as readonly ImperfectionType[];

export const imperfection = (type: ImperfectionType): Imperfection => CATALOGUE[type];

/** Types that can occur on a face, in catalogue order. */
export function typesOn(face: Face): readonly ImperfectionType[] {
  return IMPERFECTION_TYPES.filter((type) => imperfection(type).faces.includes(face));
}

/** 1 for the same type, 0.5 for the same family or a listed look-alike, else 0. */
export function likeness(a: ImperfectionType, b: ImperfectionType): 0 | 0.5 | 1 {
  if (a === b) return 1;
  const one = imperfection(a);
  return one.family === imperfection(b).family || one.alike.includes(b) ? 0.5 : 0;
}
