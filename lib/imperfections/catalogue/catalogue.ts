import type { SurfaceFace } from "../../weld";
import { CAVITIES } from "./cavities";
import { CRACKS } from "./cracks";
import { EXCESS_METAL } from "./excess-metal";
import { FUSION } from "./fusion";
import type { Imperfection } from "./imperfection";
import { MISALIGNMENT } from "./misalignment";
import { MISSING_METAL } from "./missing-metal";
import { OVERLAP } from "./overlap";
import { RESTARTS } from "./restarts";
import { SHAPE } from "./shape";
import { SLAG } from "./slag";
import { SURFACE_MARKS } from "./surface-marks";
import { TOE_GROOVES } from "./toe-grooves";

/**
 * The imperfections an eye can meet on a butt plate or a fillet, family by family: the order of every list of types. Numbers 101 to 103,
 * 105, 106, 1045 to 1047, 2015, 2018, 2024, 3012, 5014, 5015 and 5041 are from memory; the others were seen in public sources
 * that quote ISO 6520-1. Names are from memory where ISO 6520-1 has a longer wording. Recording limits and weights are common
 * practice, no source.
 */
export const CATALOGUE = {
  ...CRACKS,
  ...CAVITIES,
  ...SLAG,
  ...FUSION,
  ...TOE_GROOVES,
  ...EXCESS_METAL,
  ...MISSING_METAL,
  ...OVERLAP,
  ...RESTARTS,
  ...MISALIGNMENT,
  ...SURFACE_MARKS,
  ...SHAPE,
} as const satisfies Record<string, Imperfection>;

export type ImperfectionType = keyof typeof CATALOGUE;
export const IMPERFECTION_TYPES = Object.keys(CATALOGUE) as readonly ImperfectionType[];

/** True where a word is the key of a catalogue row. */
export const isImperfectionType = (word: string): word is ImperfectionType => Object.hasOwn(CATALOGUE, word);

export const imperfection = (type: ImperfectionType): Imperfection => CATALOGUE[type];

/** Types that can occur on a face, in catalogue order. */
export function typesOn(face: SurfaceFace): readonly ImperfectionType[] {
  return IMPERFECTION_TYPES.filter((type) => imperfection(type).faces.includes(face));
}

/** 1 for the same type, 0.5 for the same family or a listed look-alike, else 0. */
export function likeness(a: ImperfectionType, b: ImperfectionType): 0 | 0.5 | 1 {
  if (a === b) return 1;
  const one = imperfection(a);
  const other = imperfection(b);
  return one.family === other.family || one.alike.includes(b) || other.alike.includes(a) ? 0.5 : 0;
}
