import type { Mm } from "../math";

// What the words of a trail go by. All of it is common practice, no source.

/** So long a place has to have been in sight to count as looked at, close or from afar, s. */
export const LEAST_LOOK = 2;
/** The light came from a side for so long, for the side to be named, s. */
export const LEAST_SIDE = 1;
/** Without any movement of torch, plate or lens for so long nobody may be looking any more, s. */
export const IDLE_AFTER = 20;
/** Along the weld a trail is kept in stretches of this length, mm. */
export const BIN: Mm = 5;
