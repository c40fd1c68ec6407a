import { type FoundOf, isJudged } from "@/lib/progress";

/** How dark a cell of the heat map is: 0 where nothing is missed, 4 where nearly everything is; null where it is not enough to say. */
export type Shade = 0 | 1 | 2 | 3 | 4 | null;

/** A fifth of what there was for each step. */
export function shadeOf(cell: FoundOf | null): Shade {
  if (cell === null || !isJudged(cell)) return null;
  const missed = (cell.total - cell.found) / cell.total;
  return Math.min(4, Math.floor(5 * missed + 1e-9)) as Shade;
}

/** The number in a cell: found of how many; in brackets where it is not enough to say, empty where there was none. */
export function cellWords(cell: FoundOf | null): string {
  if (cell === null) return "";
  const counted = `${cell.found}/${cell.total}`;
  return isJudged(cell) ? counted : `(${counted})`;
}

/** Lightness falls from step to step, so that a copy in grey tells them apart; writing turns light on the darkest two. */
export const SHADE_LOOKS: Readonly<Record<0 | 1 | 2 | 3 | 4, string>> = {
  0: "bg-heat-0",
  1: "bg-heat-1",
  2: "bg-heat-2",
  3: "bg-heat-3 text-sheet",
  4: "bg-heat-4 text-sheet",
};

export const lookOf = (shade: Shade): string => (shade === null ? "text-ink-2" : SHADE_LOOKS[shade]);
