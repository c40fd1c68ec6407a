import type { LineId, LineOfResult } from "./lines";
import type { ReviewedLine } from "./reviewed";

type Asked = LineOfResult & {
  /** What it earns as it stands, overruled or not, thousandths. */
  readonly said: number;
  readonly isAnnulled: boolean;
};
type Outcome = Pick<ReviewedLine, "reviewed" | "annulled">;

/**
 * The questions of a section without those that were annulled: as if they had not been asked, so that all that the questions
 * are worth is shared out among the others; where none is left it is given in full. Nobody loses by it: an annulled
 * question keeps what it earned where sharing it out would bring less, as with one that was answered by its key.
 */
export function withoutAnnulled(lines: readonly Asked[], whole: number): ReadonlyMap<LineId, Outcome> {
  if (!lines.some(({ isAnnulled }) => isAnnulled)) {
    return new Map(lines.map(({ id, worth, said }) => [id, { reviewed: { worth, earned: said }, annulled: null }]));
  }
  let kept: readonly Asked[] = lines;
  // the least first: what takes the mark up least by staying goes first
  const annulled = lines.filter((line) => line.isAnnulled).toSorted((a, b) => a.said * b.worth - b.said * a.worth);
  for (const line of annulled) {
    const others = kept.filter((one) => one !== line);
    if (sumOf(sharedOut(others, whole), whole) >= sumOf(sharedOut(kept, whole), whole)) kept = others;
  }
  const shares = sharedOut(kept, whole);
  const given = kept.length === 0 ? equalShares(whole, lines.length) : null;
  return new Map(
    lines.map((line, at): readonly [LineId, Outcome] => {
      const share = shares.get(line);
      if (share) return [line.id, { reviewed: share, annulled: line.isAnnulled ? "kept" : null }];
      const earned = given?.[at] ?? 0;
      return [line.id, { reviewed: { worth: earned, earned }, annulled: "shared-out" }];
    }),
  );
}

type Shares = ReadonlyMap<Asked, { readonly worth: number; readonly earned: number }>;

/** The whole shared out equally among these; what each earned of its worth it earns of its new worth. */
function sharedOut(lines: readonly Asked[], whole: number): Shares {
  const worths = equalShares(whole, lines.length);
  return new Map(
    lines.map((line, at) => {
      const worth = worths[at];
      const earned = line.worth === 0 ? 0 : Math.round((line.said * worth) / line.worth);
      return [line, { worth, earned }];
    }),
  );
}

/** What they earn together; all of it where nothing is left to ask. */
const sumOf = (shares: Shares, whole: number): number =>
  shares.size === 0 ? whole : [...shares.values()].reduce((sum, { earned }) => sum + earned, 0);

/** Equal whole parts, the units left over to the earlier ones, as questions are marked. */
const equalShares = (whole: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, at) => Math.floor(whole / count) + (at < whole % count ? 1 : 0));
