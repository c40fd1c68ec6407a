import { type ImperfectionType, imperfection } from "../../imperfections";

/** Which types a piece is to have. */
export interface TypeWish {
  /** Each of them comes at least once. */
  readonly includes: readonly ImperfectionType[];
  /** What alone may come where a blueprint leaves the family open. */
  readonly among: "any" | readonly ImperfectionType[];
}

/** A type that was asked for and cannot be had. */
export interface Unmet {
  readonly type: ImperfectionType;
  /**
   * Never on such a piece; only in sizes near a limit, which the blueprint does not allow; not with a process and position
   * that the other types come with; or everything is taken.
   */
  readonly why: "never" | "near-limits" | "not-together" | "no-room";
}

/** A blueprint with a wish applied, and what of the wish it cannot hold. */
export interface Wished<B> {
  readonly blueprint: B;
  readonly unmet: readonly Unmet[];
  /** So many indications fewer than before, since there are not enough of the types that alone may come. */
  readonly fewer: number;
}

const WHY: Readonly<Record<Unmet["why"], string>> = {
  never: "never comes on such a piece with what is fixed of it",
  "near-limits": "comes only in sizes too near a limit for this blueprint",
  "not-together": "does not come with a process and position that the other types come with",
  "no-room": "has no room beside the others",
};

/** What cannot be had, in one plain sentence; null where everything can. */
export function explainUnmet(unmet: readonly Unmet[]): string | null {
  const said = unmet.map(({ type, why }) => `${imperfection(type).name.toLowerCase()} ${WHY[why]}`);
  return said.length > 0 ? said.join("; ") : null;
}
