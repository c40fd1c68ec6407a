import { type Family, IMPERFECTION_TYPES, type ImperfectionType, imperfection, typesOn } from "../imperfections";
import type { SurfaceFace } from "../weld";

/** Types of a face, or of any of several, that fit what was typed, best first; all, in catalogue order, for an empty text. */
export function findTypes(face: SurfaceFace | readonly SurfaceFace[], text: string): readonly ImperfectionType[] {
  const wanted = text.trim().toLowerCase();
  const faces = typeof face === "string" ? [face] : face;
  const there = new Set(faces.flatMap((one) => typesOn(one)));
  const types = IMPERFECTION_TYPES.filter((type) => there.has(type));
  if (!wanted) return types;
  return types
    .map((type) => ({ type, rank: rankOf(type, wanted) }))
    .filter(({ rank }) => rank < NO_FIT)
    .sort((one, other) => one.rank - other.rank)
    .map(({ type }) => type);
}

const NO_FIT = 9;

/** 0 the name begins so, 1 a later word does, 2 its initials do, 3 the number does, 4 it is somewhere in name or family. */
function rankOf(type: ImperfectionType, wanted: string): number {
  const { name, number, family } = imperfection(type);
  const lower = name.toLowerCase();
  const words = lower.split(/[\s-]+/);
  const initials = words.map((word) => word[0]).join("");
  if (lower.startsWith(wanted)) return 0;
  if (words.some((word) => word.startsWith(wanted))) return 1;
  if (initials.startsWith(wanted)) return 2;
  if (number.startsWith(wanted)) return 3;
  if (lower.includes(wanted) || FAMILY_NAMES[family].toLowerCase().includes(wanted)) return 4;
  return NO_FIT;
}

/** The families as a learner reads them. */
export const FAMILY_NAMES: Readonly<Record<Family, string>> = {
  crack: "Cracks",
  cavity: "Cavities and pores",
  slag: "Slag",
  fusion: "Fusion and penetration",
  "toe-groove": "Grooves beside the weld",
  "excess-metal": "Too much metal",
  "missing-metal": "Too little metal",
  overlap: "Overlap",
  restart: "Restarts",
  misalignment: "Misalignment",
  shape: "Shape of the weld",
  "surface-mark": "Marks on the plate",
};

/** Types put together by family, families in the order in which they first come up. */
export function byFamily(
  types: readonly ImperfectionType[],
): readonly { family: Family; types: readonly ImperfectionType[] }[] {
  const groups = new Map<Family, ImperfectionType[]>();
  for (const type of types) {
    const { family } = imperfection(type);
    groups.set(family, [...(groups.get(family) ?? []), type]);
  }
  return [...groups].map(([family, members]) => ({ family, types: members }));
}
