import { type Mm, roundTo } from "../math";
import { type Face, upOnScreen } from "../weld";
import { ontoPlate, type Place } from "./viewport";

/** Screen directions of the arrow keys: right and up. */
const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export interface Modifiers {
  readonly shift: boolean;
  readonly alt: boolean;
}

/** Step of one key press, mm: 1, with Shift 10, with Alt 0.1. */
export const stepOf = ({ shift, alt }: Modifiers): Mm => (shift ? 10 : alt ? 0.1 : 1);

/** The cursor after an arrow key, kept on the plate and on a tenth of a mm; null for any other key. */
export function moveCursor(cursor: Place, face: Face, key: string, modifiers: Modifiers): Place | null {
  const arrow = ARROWS[key];
  if (!arrow) return null;
  const step = stepOf(modifiers);
  return ontoPlate({
    x: roundTo(cursor.x + arrow[0] * step, 0.1),
    y: roundTo(cursor.y + arrow[1] * step * upOnScreen(face), 0.1),
  });
}

/** The place in words: "123.4 mm from the datum, 2.1 mm towards plate A". */
export function describePlace(place: Place): string {
  const along = `${place.x.toFixed(1)} mm from the datum`;
  if (Math.abs(place.y) < 0.05) return `${along}, on the centre line`;
  return `${along}, ${Math.abs(place.y).toFixed(1)} mm towards plate ${place.y > 0 ? "A" : "B"}`;
}
