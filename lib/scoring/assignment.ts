/** A best one-to-one assignment with prices that prove it: rowPrices[i] + columnPrices[j] >= values[i][j] for all i, j. */
export interface Assignment {
  readonly total: number;
  /** Column of each row, or -1 where the row stays alone. */
  readonly columnOf: readonly number[];
  readonly rowPrices: readonly number[];
  readonly columnPrices: readonly number[];
}

/**
 * Exact maximum-weight one-to-one assignment of a rectangular matrix of whole numbers, 0 or more, by the Hungarian
 * method with shortest augmenting paths (Kuhn 1955, Munkres 1957; O(rows^2 x columns)). Pairs worth 0 are left alone.
 */
export function assignMost(values: readonly (readonly number[])[]): Assignment {
  const rows = values.length;
  const columns = rows === 0 ? 0 : values[0].length;
  if (rows > columns) return transposed(assignMost(transpose(values, columns)), rows);
  const { matched, rowPotential, columnPotential } = augmentAll(values, rows, columns);
  const columnOf = new Array<number>(rows).fill(-1);
  let total = 0;
  for (let j = 1; j <= columns; j++) {
    const i = matched[j] - 1;
    if (i < 0 || values[i][j - 1] === 0) continue;
    columnOf[i] = j - 1;
    total += values[i][j - 1];
  }
  return {
    total,
    columnOf,
    rowPrices: Array.from({ length: rows }, (_, i) => 0 - rowPotential[i + 1]),
    columnPrices: Array.from({ length: columns }, (_, j) => 0 - columnPotential[j + 1]),
  };
}

/** Minimum-cost potentials and matching for cost = -value; one free column beyond the last keeps all prices >= 0. */
function augmentAll(values: readonly (readonly number[])[], rows: number, columns: number) {
  const width = columns + 1;
  const rowPotential = new Float64Array(rows + 1);
  const columnPotential = new Float64Array(width + 1);
  /** Row (from 1) matched to each column (from 1), 0 for none. */
  const matched = new Int32Array(width + 1);
  const previous = new Int32Array(width + 1);
  const costOf = (i: number, j: number) => (j > columns ? 0 : -values[i - 1][j - 1]);
  for (let row = 1; row <= rows; row++) {
    matched[0] = row;
    const shortest = new Float64Array(width + 1).fill(Number.POSITIVE_INFINITY);
    const isVisited = new Uint8Array(width + 1);
    let column = 0;
    do {
      isVisited[column] = 1;
      const i = matched[column];
      let step = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let j = 1; j <= width; j++) {
        if (isVisited[j]) continue;
        const reduced = costOf(i, j) - rowPotential[i] - columnPotential[j];
        if (reduced < shortest[j]) {
          shortest[j] = reduced;
          previous[j] = column;
        }
        if (shortest[j] < step) {
          step = shortest[j];
          next = j;
        }
      }
      for (let j = 0; j <= width; j++) {
        if (isVisited[j]) {
          rowPotential[matched[j]] += step;
          columnPotential[j] -= step;
        } else shortest[j] -= step;
      }
      column = next;
    } while (matched[column] !== 0);
    while (column !== 0) {
      matched[column] = matched[previous[column]];
      column = previous[column];
    }
  }
  return { matched, rowPotential, columnPotential };
}

function transpose(values: readonly (readonly number[])[], columns: number): number[][] {
  return Array.from({ length: columns }, (_, j) => values.map((row) => row[j]));
}

function transposed(assignment: Assignment, rows: number): Assignment {
  const columnOf = new Array<number>(rows).fill(-1);
  assignment.columnOf.forEach((row, column) => {
    if (row >= 0) columnOf[row] = column;
  });
  return {
    total: assignment.total,
    columnOf,
    rowPrices: assignment.columnPrices,
    columnPrices: assignment.rowPrices,
  };
}
