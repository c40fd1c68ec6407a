import { noiseField } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";

/** Noise that the scale, the ground band and the heat share, so that one follows the other. */
export interface PlateNoise {
  readonly blotch: Float32Array;
  readonly blotchFine: Float32Array;
  readonly micro: Float32Array;
  readonly flake: Float32Array;
}

/** Seed of the plate's noise on this face; the same for the strip and the sides. */
export const plateSeed = (work: FaceWork): number => work.random.child("plate").seed();

type Rows = readonly [from: number, to: number];
const KINDS = {
  blotch: (field: Field, seed: number, rows?: Rows) => noiseField(field.grid, 16, 16, seed + 1003, 4, 0.6, rows),
  blotchFine: (field: Field, seed: number, rows?: Rows) => noiseField(field.grid, 5.5, 5.5, seed + 2004, 4, 0.62, rows),
  micro: (field: Field, seed: number, rows?: Rows) => noiseField(field.grid, 1.1, 1.1, seed + 3005, 2, 0.7, rows),
  flake: (field: Field, seed: number, rows?: Rows) => noiseField(field.grid, 19, 15, seed + 4006, 5, 0.62, rows),
};

/** Waves of 16, 5.5, 1.1 and 19 mm over one patch. */
export function drawPlateNoise(work: FaceWork, field: Field): PlateNoise {
  const seed = plateSeed(work);
  return {
    blotch: KINDS.blotch(field, seed),
    blotchFine: KINDS.blotchFine(field, seed),
    micro: KINDS.micro(field, seed),
    flake: KINDS.flake(field, seed),
  };
}

/** One of them again: for the strip as it was drawn, for a side in the rows asked for only. */
export function plateNoise(work: FaceWork, field: Field, kind: keyof PlateNoise, rows?: Rows): Float32Array {
  return field === work.strip ? work.noise[kind] : KINDS[kind](field, plateSeed(work), rows);
}
