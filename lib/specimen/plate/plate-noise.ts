import { noiseField, noiseRows, type WriteRow } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";

/** Seed of the plate's noise on this face; the same for the strip and the sides. */
export const plateSeed = (work: FaceWork): number => work.random.child("plate").seed();

/** Wavelengths along and across in mm, what is added to the seed, octaves and gain. */
const KINDS = {
  blotch: { waveX: 16, waveY: 16, own: 1003, octaves: 4, gain: 0.6 },
  blotchFine: { waveX: 5.5, waveY: 5.5, own: 2004, octaves: 4, gain: 0.62 },
  micro: { waveX: 1.1, waveY: 1.1, own: 3005, octaves: 2, gain: 0.7 },
  flake: { waveX: 19, waveY: 15, own: 4006, octaves: 5, gain: 0.62 },
} as const;
type Kind = keyof typeof KINDS;
type Rows = readonly [from: number, to: number];

/** What noise of a kind is drawn from, as `noiseField` and `noiseRows` take it. */
function wavesOf(work: FaceWork, kind: Kind) {
  const { waveX, waveY, own, octaves, gain } = KINDS[kind];
  return [waveX, waveY, plateSeed(work) + own, octaves, gain] as const;
}

/** The noise that the scale, the ground band and the heat share, so that one follows the other; row by row over one patch. */
export function plateNoiseRows(work: FaceWork, field: Field): Readonly<Record<Kind, WriteRow>> {
  const of = (kind: Kind) => noiseRows(field.grid, ...wavesOf(work, kind));
  return { blotch: of("blotch"), blotchFine: of("blotchFine"), micro: of("micro"), flake: of("flake") };
}

/** One of them: for the strip as it was kept when the plates were made, for a side again, in the rows asked for only. */
export function plateNoise(work: FaceWork, field: Field, kind: Kind, rows: Rows): Float32Array {
  if (field === work.strip) return work.noise[kind];
  return noiseField(field.grid, ...wavesOf(work, kind), rows);
}

/** The same row by row, for those who need no plane of it. */
export function plateNoiseRow(work: FaceWork, field: Field, kind: Kind, rows: Rows): WriteRow {
  const { columns } = field.grid;
  if (field === work.strip) {
    const kept = work.noise[kind];
    return (j, into, at) => into.set(kept.subarray(j * columns, (j + 1) * columns), at);
  }
  return noiseRows(field.grid, ...wavesOf(work, kind), rows);
}
