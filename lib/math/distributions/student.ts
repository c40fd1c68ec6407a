import { incompleteBeta } from "./beta";
import { solveRising } from "./solve";

/** Distribution function of Student's t (Abramowitz and Stegun 1964, 26.7.1). */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  const tail = incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t ** 2), degreesOfFreedom / 2, 0.5) / 2;
  return t < 0 ? tail : 1 - tail;
}

/** The t that has a share `confidence` between -t and t: 2.120 for 0.95 and 16 degrees of freedom. */
export const twoSidedT = (confidence: number, degreesOfFreedom: number): number =>
  solveRising((t) => studentCdf(t, degreesOfFreedom), (1 + confidence) / 2, 0, 1000);
