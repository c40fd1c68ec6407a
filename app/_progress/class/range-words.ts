import type { Share } from "@/lib/progress";

/** What a range of a class means, and why it may be wider than the number of pieces lets one think. */
export const CLASS_RANGE_NOTE =
  "A range behind a figure of the class is where that figure lies for learners like these, 95 times of 100. It goes by how much your learners differ from each other: while there are few of them it stays wide, however many pieces each has done. Where it cannot be seen how they differ, because only one has done it or nearly all came out one way, some difference is assumed.";

/** "52 to 77 %" of a share that enough is known of; empty otherwise. */
export const rangeWords = ({ interval, needed }: Share): string =>
  interval === null || needed > 0 ? "" : `${Math.round(100 * interval.low)} to ${Math.round(100 * interval.high)} %`;
