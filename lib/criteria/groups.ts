import type { Criteria } from "./criteria";
import { BUILT_IN_CRITERIA } from "./sets/built-in";

/** A set of criteria by what people know it by. */
export interface CriteriaEntry {
  readonly id: string;
  readonly name: string;
  readonly edition: string;
  readonly origin: "in-house" | "built-in";
}

/** Sets that stand under one heading. */
export interface CriteriaGroup {
  readonly title: string;
  readonly sets: readonly CriteriaEntry[];
}

/** Criteria to choose from: the workshop's own in the given order, then the built-in ones by document. No group is empty. */
export function groupCriteria(inHouse: readonly Criteria[]): readonly CriteriaGroup[] {
  const entry = ({ id, name, edition }: Criteria, origin: CriteriaEntry["origin"]) => ({ id, name, edition, origin });
  const own = inHouse.map((criteria) => entry(criteria, "in-house"));
  const editions = [...new Set(BUILT_IN_CRITERIA.map(({ edition }) => edition))];
  const builtIn = editions.map((title) => ({
    title,
    sets: BUILT_IN_CRITERIA.filter(({ edition }) => edition === title).map((criteria) => entry(criteria, "built-in")),
  }));
  return [...(own.length > 0 ? [{ title: "In-house", sets: own }] : []), ...builtIn];
}
