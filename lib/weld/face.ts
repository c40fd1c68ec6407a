/** The two faces of a butt-welded plate: the cap face was looked at by the welder, the root face is the other one. */
export const FACES = ["cap", "root"] as const;
export type Face = (typeof FACES)[number];

/** What a surface can be: a face of a butt plate, or a fillet weld with both its plates, seen along the line between them. */
export const SURFACE_FACES = [...FACES, "fillet"] as const;
export type SurfaceFace = (typeof SURFACE_FACES)[number];

/** The two plates of a fillet joint. */
export const FILLET_PLATES = ["base", "standing"] as const;
export type FilletPlate = (typeof FILLET_PLATES)[number];

/**
 * How a piece can be turned to the eye: a face of a butt plate or a fillet weld seen along the line between its plates, and a
 * fillet turned by 45 degrees, so that one of its plates lies square to the eye. Seen square on a plate, y is the distance from
 * the root corner along it, with the sign it has for the whole fillet, and heights stand square on that plate.
 */
export const ASPECTS = [...SURFACE_FACES, ...FILLET_PLATES] as const;
export type Aspect = (typeof ASPECTS)[number];

/** The surface that is looked at. */
export const faceOf = (aspect: Aspect): SurfaceFace => (aspect === "base" || aspect === "standing" ? "fillet" : aspect);

/**
 * Direction of +y on the screen: +1 up, -1 down. Plate A lies at positive y on both faces. The plate is turned about
 * its long axis, so the datum end stays on the left and plate A moves from the top (cap) to the bottom (root). Of a fillet
 * the base plate lies at positive y and is drawn below the standing plate.
 */
export function upOnScreen(aspect: Aspect): 1 | -1 {
  return aspect === "cap" ? 1 : -1;
}

/** The side of the centre line in a letter or a word: plate A or B, base or standing plate. */
export function sideLetter(face: SurfaceFace, across: number): string {
  if (face === "fillet") return across >= 0 ? "base" : "standing";
  return across >= 0 ? "A" : "B";
}
