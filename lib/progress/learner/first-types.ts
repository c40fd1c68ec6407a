import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";

/** What learners meet first: common, and most of it plain to see. Common practice, no source. */
const FIRST: readonly ImperfectionType[] = [
  "surface-pore",
  "continuous-undercut",
  "spatter",
  "slag-residue",
  "stray-arc",
  "overlap",
  "poor-restart",
  "root-penetration",
  "excess-penetration",
  "incompletely-filled-groove",
  "clustered-porosity",
  "root-fusion",
  "grinding-mark",
  "intermittent-undercut",
  "root-concavity",
  "crater-pipe",
];

/** Types in the order in which a learner meets them: those above, then the others as the catalogue has them. */
export const inOrderOfMeeting = (types: readonly ImperfectionType[]): ImperfectionType[] =>
  [...FIRST, ...IMPERFECTION_TYPES.filter((type) => !FIRST.includes(type))].filter((type) => types.includes(type));
