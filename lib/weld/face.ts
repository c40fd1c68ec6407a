/** The two faces of a butt-welded plate: the cap face was looked at by the welder, the root face is the other one. */
export const FACES = ["cap", "root"] as const;
export type Face = (typeof FACES)[number];

/**
 * Direction of +y on the screen: +1 up, -1 down. Plate A lies at positive y on both faces. The plate is turned about
 * its long axis, so the datum end stays on the left and plate A moves from the top (cap) to the bottom (root).
 */
export function upOnScreen(face: Face): 1 | -1 {
  return face === "cap" ? 1 : -1;
}
