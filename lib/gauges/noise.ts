import type { Mm } from "../math";
import { GAUGES, type GaugeKind } from "./kinds";

/** The random numbers that seating draws from: one stream for an attempt and a face. */
export interface SeatingRandom {
  child(name: string): { normal(mean: number, deviation: number): number };
}

/**
 * What setting a gauge down adds to what it shows, mm: normal, with the kind's own deviation. It depends on the stream
 * and on where and how the gauge stands, to a tenth of a millimetre and of a degree: the same placement shows the same.
 */
export function seatingNoise<P extends { readonly kind: GaugeKind }>(random: SeatingRandom, placement: P): Mm {
  const where = Object.entries(placement)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, value]) => `${name}=${typeof value === "number" ? (Math.round(value * 10) / 10).toFixed(1) : value}`);
  return random.child(`seating/${where.join("/")}`).normal(0, GAUGES[placement.kind].noise);
}
