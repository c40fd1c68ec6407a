import type { Criteria } from "../criteria";
import { api1104 } from "./api-1104";
import { asmeB313, GROOVE_WELDS } from "./asme-b31-3";
import { awsD11, LOADINGS, STRESSES } from "./aws-d1-1";
import { EXECUTION_CLASSES, en1090 } from "./en1090-2";
import { ISO_5817_EDITIONS, iso5817 } from "./iso5817";
import { PENETRATION_READINGS } from "./iso5817-2023";
import { QUALITY_LEVELS } from "./iso5817-rows/level-row";

/** Every built-in set, ISO 5817:2014 first. What is from memory or unresolved stands in sets of its own id. */
export const BUILT_IN_CRITERIA: readonly Criteria[] = [
  ...ISO_5817_EDITIONS.flatMap((edition) =>
    QUALITY_LEVELS.flatMap((level) =>
      (edition === 2023 && level === "C" ? PENETRATION_READINGS : (["as-2014"] as const)).flatMap((penetration) =>
        [false, true].map((several) => iso5817({ level, edition, penetration, several })),
      ),
    ),
  ),
  ...EXECUTION_CLASSES.map(en1090),
  ...LOADINGS.flatMap((loading) => STRESSES.map((stress) => awsD11({ loading, stress }))),
  ...GROOVE_WELDS.map(asmeB313),
  api1104(),
];

/** By what is sentenced unless something else is chosen. */
export const DEFAULT_CRITERIA = iso5817({ level: "C", edition: 2014 });

/** A built-in set by its id; undefined where there is none. */
export const builtInCriteria = (id: string): Criteria | undefined =>
  BUILT_IN_CRITERIA.find((criteria) => criteria.id === id);
