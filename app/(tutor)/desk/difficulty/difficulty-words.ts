import type { FigureTable } from "@/app/_progress/figure";
import { MEASURE_WORDS } from "@/app/_progress/words";
import type { DifficultyRow } from "@/app/_server/use-cases/read-difficulty";
import { imperfection } from "@/lib/imperfections";
import { logistic, logit } from "@/lib/math";

/** Of what the model expects to be found so often, it is said how often it was. */
export const EXPECTED = 0.8;
/** About 95 %. */
const SURE = 1.96;

const share = (shift: number): number => Math.round(100 * logistic(logit(EXPECTED) - shift));

/** How many of 100 are found where the model expects 80, and from how many to how many that may be. */
export const foundOf = ({ shift, error }: DifficultyRow) => ({
  found: share(shift),
  low: share(shift + SURE * error),
  high: share(shift - SURE * error),
});

export const isSure = ({ shift, error }: DifficultyRow): boolean => Math.abs(shift) > SURE * error;

export function verdictOf(row: DifficultyRow): string {
  if (!isSure(row)) return "as expected so far";
  return row.shift > 0 ? "harder than expected" : "easier than expected";
}

const mm = (value: number): string => (value < 10 ? value.toFixed(1) : value.toFixed(0));

export const sizeWords = ({ measure, from, to }: DifficultyRow): string =>
  `${MEASURE_WORDS[measure].title} ${mm(from)} to ${mm(to)} mm`;

/** Everything, also what there is little of. */
export const difficultyTable = (rows: readonly DifficultyRow[]): FigureTable => ({
  headers: [
    "Imperfection",
    "What strikes the eye",
    "From, mm",
    "To, mm",
    "There",
    "Found",
    "Shift, logits",
    "Standard error, logits",
    "Verdict",
  ],
  rows: rows.map((row) => [
    imperfection(row.type).name,
    MEASURE_WORDS[row.measure].title,
    row.from.toFixed(2),
    row.to.toFixed(2),
    row.observations,
    row.found,
    row.shift.toFixed(2),
    row.error.toFixed(2),
    verdictOf(row),
  ]),
});
