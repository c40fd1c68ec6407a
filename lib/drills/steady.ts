import type { SeatingRandom } from "../gauges";

/** A stream that adds nothing: where it is the seat that is judged, or the scale, and not the hand. */
export const STEADY: SeatingRandom = { child: () => ({ normal: (mean) => mean }) };
