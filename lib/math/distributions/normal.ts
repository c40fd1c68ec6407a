import { lowerGamma, upperGamma } from "./gamma";
import { solveRising } from "./solve";

/** Distribution function of the standard normal, precise in both tails. */
export function normalCdf(z: number): number {
  const half = z ** 2 / 2;
  return z < 0 ? upperGamma(0.5, half) / 2 : (1 + lowerGamma(0.5, half)) / 2;
}

/** The z below which the standard normal lies with a probability, 0 < probability < 1. */
export function normalQuantile(probability: number): number {
  if (probability === 0.5) return 0;
  return probability > 0.5 ? -normalQuantile(1 - probability) : solveRising(normalCdf, probability, -38, 0);
}

export const normalDensity = (z: number): number => Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);

/** The z that has a share `confidence` of the standard normal between -z and z: 1.96 for 0.95. */
export const twoSidedZ = (confidence: number): number => normalQuantile((1 + confidence) / 2);
