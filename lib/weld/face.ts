/** The two faces of a butt-welded plate: the cap face was looked at by the welder, the root face is the other one. */
export const FACES = ["cap", "root"] as const;
export type Face = (typeof FACES)[number];

/** What a surface can be: a face of a butt plate, or a fillet weld with both its plates, seen along the line between them. */
export const SURFACE_FACES = [...FACES, "fillet"] as const;
export type SurfaceFace = (typeof SURFACE_FACES)[number];

/**
 * Direction of +y on the screen: +1 up, -1 down. Plate A lies at positive y on both faces. The plate is turned about
 * its long axis, so the datum end stays on the left and plate A moves from the top (cap) to the bottom (root). Of a fillet
 * the base plate lies at positive y and is drawn below the standing plate.
 */
export function upOnScreen(face: SurfaceFace): 1 | -1 {
  return face === "cap" ? 1 : -1;
}
