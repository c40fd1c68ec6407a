import type { ImperfectionType } from "../../../imperfections";
import type { Formula } from "../../formula";
import { ofA, type QualityLevel, THICK, THIN, t } from "./level-row";

/** Types that take metal away from a cross section. Which ones row 4.1 means is our reading, from memory. */
const TAKES_METAL_AWAY = [
  "continuous-undercut",
  "intermittent-undercut",
  "shrinkage-groove",
  "root-concavity",
  "root-penetration",
  "incompletely-filled-groove",
  "sagging",
  "insufficient-throat",
] as const satisfies readonly ImperfectionType[];

/** Row 4.1 of ISO 5817:2014, several imperfections in one cross section, from memory. */
export const ISO_5817_SEVERAL = {
  clause: "4.1",
  name: "Several imperfections in one cross section",
  types: TAKES_METAL_AWAY,
  thin: THIN,
  thick: THICK,
  /** Sum of depths at most, over 3 mm of thickness; thinner plates may have no two of them in one section. */
  butt: { D: t(0.4), C: t(0.3), B: t(0.2) } satisfies Record<QualityLevel, Formula>,
  fillet: { D: ofA(0, 0.25), C: ofA(0, 0.2), B: ofA(0, 0.15) } satisfies Record<QualityLevel, Formula>,
} as const;
