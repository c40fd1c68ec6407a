import type { Clutter, ImperfectionType } from "../imperfections";
import { type Mm, median } from "../math";
import { EYE_TASKS, type EyeTaskKind } from "./kinds";

/** What became of one task. */
export interface EyeResult {
  readonly kind: EyeTaskKind;
  /** What was there, as far as the task was about it; null where nothing was. */
  readonly about: ImperfectionType | Clutter | null;
  readonly isRight: boolean;
  /** As in `ToldTask`; null where nothing is measured. */
  readonly error: Mm | null;
}

export interface RightOf {
  readonly asked: number;
  readonly right: number;
}

/** How far off a kind of task was answered. */
export interface ErrorSum {
  /** Median of how far off, whichever way, mm. */
  readonly median: Mm;
  /** Median with its sign, mm: more than 0 where it is mostly too much. */
  readonly bias: Mm;
}

export interface KindSum extends RightOf {
  readonly kind: EyeTaskKind;
  /** Null where the kind measures nothing. */
  readonly error: ErrorSum | null;
}

/** rightOf([{ isRight: true }, { isRight: false }]) = { asked: 2, right: 1 }. */
export const rightOf = (results: readonly Pick<EyeResult, "isRight">[]): RightOf => ({
  asked: results.length,
  right: results.filter(({ isRight }) => isRight).length,
});

/** By kind of task, in the order of the kinds; only those that were asked. */
export function sumsByKind(results: readonly EyeResult[]): readonly KindSum[] {
  return EYE_TASKS.map((kind) => results.filter((result) => result.kind === kind))
    .filter((own) => own.length > 0)
    .map((own) => ({ kind: own[0].kind, ...rightOf(own), error: errorSum(own) }));
}

/** By what was there, those that went wrong most often first; null stands for windows with nothing in them. */
export function sumsByThing(
  results: readonly EyeResult[],
): readonly (RightOf & { readonly about: EyeResult["about"] })[] {
  const names = [...new Set(results.map(({ about }) => about))];
  const wrong = ({ asked, right }: RightOf) => asked - right;
  return names
    .map((about) => ({ about, ...rightOf(results.filter((result) => result.about === about)) }))
    .sort((a, b) => wrong(b) - wrong(a) || b.asked - a.asked);
}

function errorSum(results: readonly EyeResult[]): ErrorSum | null {
  const errors = results.flatMap(({ error }) => (error === null ? [] : [error]));
  if (errors.length === 0) return null;
  return { median: median(errors.map(Math.abs)), bias: median(errors) };
}
