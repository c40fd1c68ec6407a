import { type Interval, normalDensity, normalQuantile, twoSidedZ } from "../../math";
import type { PieceTally } from "../tallies/piece-tally";
import type { TypeTallies } from "../tallies/type-tally";
import { stillNeeded } from "./enough";

/** How well what is to be called is told from what is not, and how readily anything is called. */
export interface SignalDetection {
  readonly hitRate: number;
  readonly falseAlarmRate: number;
  /** d': 0 is guessing. */
  readonly sensitivity: number;
  /** c: above 0 too little is called, below 0 too much. */
  readonly criterion: number;
  /** 95 %, by the variance of Gourevitch and Galanter (Psychometrika 32, 1967). */
  readonly sensitivityInterval: Interval;
  readonly criterionInterval: Interval;
  /** How many more of either it takes until these say something; 0 if there are enough. */
  readonly needed: number;
}

/**
 * d' = z(H) - z(F) and c = -(z(H) + z(F)) / 2 with the log-linear correction: half a case more in each cell, whatever the rates
 * (M. J. Hautus, Behavior Research Methods 27, 1995).
 */
export function signalDetection(hits: number, signals: number, falseAlarms: number, noises: number): SignalDetection {
  const hitRate = (hits + 0.5) / (signals + 1);
  const falseAlarmRate = (falseAlarms + 0.5) / (noises + 1);
  const [zHit, zFalse] = [normalQuantile(hitRate), normalQuantile(falseAlarmRate)];
  const variance = varianceOf(hitRate, zHit, signals + 1) + varianceOf(falseAlarmRate, zFalse, noises + 1);
  const half = twoSidedZ(0.95) * Math.sqrt(variance);
  const sensitivity = zHit - zFalse;
  const criterion = -(zHit + zFalse) / 2;
  return {
    hitRate,
    falseAlarmRate,
    sensitivity,
    criterion,
    sensitivityInterval: { low: sensitivity - half, high: sensitivity + half },
    criterionInterval: { low: criterion - half / 2, high: criterion + half / 2 },
    needed: Math.max(stillNeeded(signals), stillNeeded(noises)),
  };
}

const varianceOf = (rate: number, z: number, count: number): number =>
  (rate * (1 - rate)) / (count * normalDensity(z) ** 2);

/** Imperfections are what is to be called; clutter, which somebody may take for one, is what is not. Features too small to record are neither. */
export function detectionAgainstClutter(types: TypeTallies, { clutter }: Pick<PieceTally, "clutter">): SignalDetection {
  const tallies = Object.values(types);
  const noise = Object.values(clutter);
  return signalDetection(
    tallies.reduce((sum, { found }) => sum + found, 0),
    tallies.reduce((sum, { total }) => sum + total, 0),
    noise.reduce((sum, { called }) => sum + called, 0),
    noise.reduce((sum, { total }) => sum + total, 0),
  );
}
