declare module "munkres-js" {
  /** Pairs [row, column] of a one-to-one assignment of least total cost. */
  export default function computeMunkres(costs: number[][]): [row: number, column: number][];
}
