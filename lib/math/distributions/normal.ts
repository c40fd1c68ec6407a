import { lowerGamma, upperGamma } from "./gamma";

/** Distribution function of the standard normal, precise in both tails. */
export function normalCdf(z: number): number {
  const half = z ** 2 / 2;
  return z < 0 ? upperGamma(0.5, half) / 2 : (1 + lowerGamma(0.5, half)) / 2;
}

/**
 * The z below which the standard normal lies with a probability, 0 < probability < 1: from the rational approximation of Abramowitz
 * and Stegun 1964, 26.2.23, by Halley's steps.
 */
export function normalQuantile(probability: number): number {
  if (probability === 0.5) return 0;
  if (probability > 0.5) return -normalQuantile(1 - probability);
  const t = Math.sqrt(-2 * Math.log(probability));
  let z = (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3) - t;
  for (let n = 0; n < 3; n++) {
    const newton = (normalCdf(z) - probability) / normalDensity(z);
    z -= newton / (1 + (z * newton) / 2);
  }
  return z;
}

export const normalDensity = (z: number): number => Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);

/** The z that has a share `confidence` of the standard normal between -z and z: 1.96 for 0.95. */
export const twoSidedZ = (confidence: number): number => normalQuantile((1 + confidence) / 2);
