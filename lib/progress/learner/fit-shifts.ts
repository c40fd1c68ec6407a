import { logistic } from "../../math";

/** One outcome: who, how far ahead of the model's difficulty, logits, and with what success, 0 to 1. */
interface Outcome {
  readonly learner: string;
  readonly ahead: number;
  readonly placed: number;
}

export interface Shift {
  /** Logits. */
  readonly shift: number;
  /** Standard error. */
  readonly error: number;
}

/** How far shifts scatter before anything is known, and how little they may, logits; common practice, no source. */
const SCATTER = { first: 0.5, least: 0.1 };
/** How far learners are from what their skill says of them: nearly anything, so that it never passes for a difficulty. */
const LEARNERS = 2;
const ROUNDS = 100;
/** Far less than any error, logits. */
const CLOSE = 1e-4;

/**
 * How much harder each cell of outcomes is than it was taken for. A learner who finds more, or less, than their skill says in
 * everything they meet tells nothing of a difficulty, so each has an ability of their own besides: difficulties are known beside
 * each other only (G. Rasch, Probabilistic Models for Some Intelligence and Attainment Tests, 1960), and shifts are 0 on average.
 * Shifts are the most probable ones under a normal prior whose scatter is that of all of them together (empirical Bayes by
 * expectation maximisation with a normal approximation, cf. B. Efron and C. Morris, J. Am. Stat. Assoc. 70, 1975): Newton steps for
 * abilities and shifts in turn.
 */
export function fitShifts(cells: readonly (readonly Outcome[])[]): Shift[] {
  const rows = numbered(cells);
  const shifts = new Float64Array(cells.length);
  const abilities = new Float64Array(1 + rows.who.reduce((most, who) => Math.max(most, who), -1));
  let errors = shifts;
  let scatter = SCATTER.first;
  for (let round = 0; round < ROUNDS; round++) {
    const before = shifts.slice();
    const mean = meanOf(abilities);
    const ofLearners = new Steps(abilities.length, LEARNERS, (who) => abilities[who] - mean);
    for (let row = 0; row < rows.count; row++) {
      const who = rows.who[row];
      ofLearners.add(who, rows.placed[row], logistic(rows.ahead[row] + abilities[who] - shifts[rows.cell[row]]));
    }
    for (let who = 0; who < abilities.length; who++) abilities[who] += ofLearners.step(who);
    const ofCells = new Steps(cells.length, scatter, (cell) => shifts[cell]);
    const told = new Float64Array(rows.pairs.cell.length);
    for (let row = 0; row < rows.count; row++) {
      const cell = rows.cell[row];
      const missed = logistic(shifts[cell] - rows.ahead[row] - abilities[rows.who[row]]);
      ofCells.add(cell, 1 - rows.placed[row], missed);
      told[rows.pair[row]] += missed * (1 - missed);
    }
    for (let cell = 0; cell < shifts.length; cell++) shifts[cell] += ofCells.step(cell);
    // what all cells have in common is the learners'
    const common = meanOf(shifts);
    for (let cell = 0; cell < shifts.length; cell++) shifts[cell] -= common;
    for (let who = 0; who < abilities.length; who++) abilities[who] -= common;
    errors = errorsOf(rows, told, cells.length, abilities.length, scatter);
    if (shifts.every((shift, cell) => Math.abs(shift - before[cell]) < CLOSE)) break;
    if (cells.length > 1) scatter = Math.max(SCATTER.least, rootMeanSquare(shifts, errors));
  }
  return Array.from(shifts, (shift, cell) => ({ shift, error: errors[cell] }));
}

/** Outcomes as plain numbers: cell and learner of each, and which of the pairs of both it belongs to. */
interface Rows {
  readonly count: number;
  readonly cell: Int32Array;
  readonly who: Int32Array;
  readonly pair: Int32Array;
  readonly ahead: Float64Array;
  readonly placed: Float64Array;
  readonly pairs: { readonly cell: readonly number[]; readonly who: readonly number[] };
}

function numbered(cells: readonly (readonly Outcome[])[]): Rows {
  const names = new Map<string, number>();
  const pairs: { cell: number[]; who: number[] } = { cell: [], who: [] };
  const rows = cells.flatMap((outcomes, cell) => {
    const pairOf = new Map<number, number>();
    return outcomes.map(({ learner, ahead, placed }) => {
      const who = names.get(learner) ?? names.size;
      names.set(learner, who);
      const pair = pairOf.get(who) ?? pairs.cell.length;
      if (!pairOf.has(who)) {
        pairOf.set(who, pair);
        pairs.cell.push(cell);
        pairs.who.push(who);
      }
      return { cell, who, pair, ahead, placed };
    });
  });
  return {
    count: rows.length,
    cell: Int32Array.from(rows, ({ cell }) => cell),
    who: Int32Array.from(rows, ({ who }) => who),
    pair: Int32Array.from(rows, ({ pair }) => pair),
    ahead: Float64Array.from(rows, ({ ahead }) => ahead),
    placed: Float64Array.from(rows, ({ placed }) => placed),
    pairs,
  };
}

/** Newton steps of many logistic parameters at once, each with a normal prior. */
class Steps {
  private readonly gradient: Float64Array;
  private readonly information: Float64Array;

  constructor(count: number, scatter: number, offOf: (n: number) => number) {
    this.gradient = Float64Array.from({ length: count }, (_, n) => -offOf(n) / scatter ** 2);
    this.information = new Float64Array(count).fill(1 / scatter ** 2);
  }

  add(n: number, outcome: number, expected: number): void {
    this.gradient[n] += outcome - expected;
    this.information[n] += expected * (1 - expected);
  }

  /** At most one logit, since far out the curve is flat. */
  step(n: number): number {
    return Math.max(-1, Math.min(1, this.gradient[n] / this.information[n]));
  }
}

/**
 * Standard errors of shifts: what a cell tells of a learner's own ability tells nothing of the cell.
 * @param told information of each pair of cell and learner
 */
function errorsOf(
  { pairs }: Rows,
  told: Float64Array,
  cells: number,
  learners: number,
  scatter: number,
): Float64Array<ArrayBuffer> {
  const ofCell = new Float64Array(cells).fill(1 / scatter ** 2);
  const ofLearner = new Float64Array(learners).fill(1 / LEARNERS ** 2);
  for (let pair = 0; pair < told.length; pair++) ofLearner[pairs.who[pair]] += told[pair];
  for (let pair = 0; pair < told.length; pair++) {
    ofCell[pairs.cell[pair]] += told[pair] - told[pair] ** 2 / ofLearner[pairs.who[pair]];
  }
  return ofCell.map((information) => 1 / Math.sqrt(information));
}

const meanOf = (values: Float64Array): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

const rootMeanSquare = (shifts: Float64Array, errors: Float64Array): number =>
  Math.sqrt(shifts.reduce((sum, shift, n) => sum + shift ** 2 + errors[n] ** 2, 0) / shifts.length);
