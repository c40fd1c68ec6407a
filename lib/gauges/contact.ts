import type { Mm } from "../math";
import { senseOf } from "./body";
import { GAUGES } from "./kinds";
import type { Standing } from "./set-down";

/** Whether the moving part, at a place on its scale, is clear of the metal, touches it, or would be inside it. */
export type Contacting = "clear" | "touching" | "inside";

/** A hand feels contact within this, mm. Common practice, no source. */
const FEEL: Mm = 0.02;

/** How the moving part stands at a place on the scale: contactAt(standing, standing.stop) = "touching". */
export function contactAt(standing: Standing, position: Mm): Contacting {
  const clear = senseOf(standing.placement) * (position - standing.stop);
  return Math.abs(clear) <= FEEL ? "touching" : clear > 0 ? "clear" : "inside";
}

/** Where the moving part comes to rest when it is pushed to a place: at the metal, at an end of its run, or there. */
export function slideTo(standing: Standing, wanted: Mm): Mm {
  const { lowest, highest } = runOf(standing);
  const bounded = Math.min(Math.max(wanted, lowest), highest);
  return senseOf(standing.placement) > 0 ? Math.max(bounded, standing.stop) : Math.min(bounded, standing.stop);
}

/** Where it stands when the gauge is set down: drawn back from the metal as far as it goes. */
export const drawnBack = ({ placement }: Pick<Standing, "placement">): Mm =>
  senseOf(placement) > 0 ? runOf({ placement }).highest : runOf({ placement }).lowest;

/** The place on the scale `by` mm nearer to the metal than `position`, whatever may be in the way. */
export const nearerBy = ({ placement }: Pick<Standing, "placement">, position: Mm, by: Mm): Mm =>
  position - senseOf(placement) * by;

/** The moving part may run half a step past the ends of its scale. */
function runOf({ placement }: Pick<Standing, "placement">): { lowest: Mm; highest: Mm } {
  const { range, step } = GAUGES[placement.kind];
  if (range === null) throw new Error(`${placement.kind} has no scale`);
  return { lowest: range.lowest - step / 2, highest: range.highest + step / 2 };
}
