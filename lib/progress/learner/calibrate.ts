import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import type { SectionObservations } from "../observations/observation";
import { fitShifts } from "./fit-shifts";
import type { Learner } from "./learner";
import { timesSeen } from "./skill";

/** One imperfection that somebody found or missed. */
export interface CalibrationRow {
  /** Who, by a name that is the same for all of their rows. */
  readonly learner: string;
  readonly type: ImperfectionType;
  /** What strikes the eye of it, mm. */
  readonly size: number;
  /** The learner's general skill before that piece less the model's difficulty, logits. */
  readonly ahead: number;
  readonly found: boolean;
  /** How far it was found in the right place, 0 to 1: what skills are learned from. */
  readonly placed: number;
}

/**
 * What a section adds to the calibration. The learner is the one before it. Only the general skill counts: what all learners find
 * hard in a type shows in their standings with it, and has to go into its difficulty instead.
 * @param name of the learner, as in all of their rows
 */
export const calibrationRows = (name: string, learner: Learner, { truths }: SectionObservations): CalibrationRow[] =>
  truths
    .filter(({ neutral }) => !neutral)
    .map(({ type, eye, difficulty, found, placed }) => ({
      learner: name,
      type,
      size: eye.value,
      ahead: learner.found.general.value - difficulty,
      found,
      placed,
    }));

/** How imperfections of one type and about one size turned out against the model. */
export interface Correction {
  readonly type: ImperfectionType;
  /** Number of the size's step: half an e-fold (65 %) of the size that strikes the eye. */
  readonly step: number;
  readonly observations: number;
  /** How many of them were found. */
  readonly found: number;
  /** To be added to the model's difficulty, logits: above 0 they are harder, beside everything else, than it says. */
  readonly shift: number;
  /** Standard error of the shift. */
  readonly error: number;
}

const STEP = 0.5;
export const calibrationStep = (size: number): number => Math.round(Math.log(size) / STEP) + 0;

/** Sizes of a step, mm. */
export function sizesOfStep(step: number): { readonly from: number; readonly to: number } {
  return { from: Math.exp(STEP * (step - 0.5)), to: Math.exp(STEP * (step + 0.5)) };
}

/** After so many of a type half of its shift is in the learner's standing with it; common practice, no source (simulated learners). */
const LEARNED_BY = 5;

/**
 * What corrections add to the model's difficulty of an imperfection for a learner, logits; 0 where nothing is known of its type and
 * size. The more of a type somebody has met the less it adds: what everybody finds hard is in their own standing with it by then,
 * since that is learned against the model's difficulty.
 */
export function shiftFor(
  corrections: readonly Correction[],
  { found }: Learner,
  type: ImperfectionType,
  size: number,
): number {
  const correction = corrections.find((one) => one.type === type && one.step === calibrationStep(size));
  return correction ? (correction.shift * LEARNED_BY) / (LEARNED_BY + timesSeen(found, type)) : 0;
}

/**
 * Re-estimates difficulties by type and size from what learners found, drawn towards the model (`fitShifts`). Few observations move
 * little. It says how difficulty is expected for later pieces; no mark ever depends on it.
 */
export function calibrate(rows: readonly CalibrationRow[]): Correction[] {
  const cells = new Map<string, CalibrationRow[]>();
  for (const row of rows) {
    const key = `${row.type} ${calibrationStep(row.size)}`;
    const cell = cells.get(key);
    if (cell) cell.push(row);
    else cells.set(key, [row]);
  }
  const all = [...cells.values()];
  const shifts = fitShifts(all);
  return all
    .map((cell, n) => ({
      type: cell[0].type,
      step: calibrationStep(cell[0].size),
      observations: cell.length,
      found: cell.filter(({ found }) => found).length,
      ...shifts[n],
    }))
    .sort((a, b) => IMPERFECTION_TYPES.indexOf(a.type) - IMPERFECTION_TYPES.indexOf(b.type) || a.step - b.step);
}
