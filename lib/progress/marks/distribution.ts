/** How the marks of a section lie. Marks as shown, 0 to 100. */
export interface MarkDistribution {
  readonly count: number;
  /** Null where there are none. */
  readonly mean: number | null;
  readonly median: number | null;
  readonly lowerQuartile: number | null;
  readonly upperQuartile: number | null;
  /** Ten steps of ten marks: 0 up to 10 without 10, and so on; 100 stands in the last. */
  readonly tens: readonly number[];
  readonly passed: number;
}

/** Quartiles by linear interpolation between order statistics (type 7 of R. J. Hyndman and Y. Fan, Am. Stat. 50, 1996). */
export function markDistribution(
  marks: readonly { readonly shown: number; readonly passed: boolean }[],
): MarkDistribution {
  const sorted = marks.map(({ shown }) => shown).sort((a, b) => a - b);
  const at = (share: number): number | null => {
    if (sorted.length === 0) return null;
    const place = share * (sorted.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  };
  const tens = Array.from(
    { length: 10 },
    (_, ten) => sorted.filter((mark) => Math.min(9, Math.floor(mark / 10)) === ten).length,
  );
  return {
    count: sorted.length,
    mean: sorted.length === 0 ? null : sorted.reduce((sum, mark) => sum + mark, 0) / sorted.length,
    median: at(0.5),
    lowerQuartile: at(0.25),
    upperQuartile: at(0.75),
    tens,
    passed: marks.filter(({ passed }) => passed).length,
  };
}
