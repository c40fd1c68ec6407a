import type { Criteria } from "./criteria";
import { mergeCriteria } from "./merge";
import { builtInCriteria } from "./sets/built-in";

/** Criteria that a tutor made, as they are kept. */
export interface InHouseSet {
  readonly id: string;
  /** The built-in set that says the rest; null where the own rows are all there is. */
  readonly basedOn: string | null;
  /** The rows of the tutor's own, under the same id. */
  readonly own: Criteria;
  /** Who made it; null where that account is gone. */
  readonly madeBy: string | null;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  /** When it was put away; null while it is in use. */
  readonly archivedAt: Date | null;
}

/** What such a set says: its own rows on top of those that it builds on. Throws where the built-in set is gone. */
export function wholeCriteria({ basedOn, own }: Pick<InHouseSet, "basedOn" | "own">): Criteria {
  if (basedOn === null) return own;
  const lower = builtInCriteria(basedOn);
  if (!lower) throw new Error(`no built-in criteria have the id ${basedOn}`);
  return mergeCriteria(lower, own);
}
