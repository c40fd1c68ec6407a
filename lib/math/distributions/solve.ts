/** Where a function that never falls reaches a value, between two bounds; by halving, to the last digit. */
export function solveRising(rising: (x: number) => number, value: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let n = 0; n < 200; n++) {
    const middle = (from + to) / 2;
    if (middle === from || middle === to) break;
    if (rising(middle) < value) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
