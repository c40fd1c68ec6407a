import { type Mm, roundTo } from "../math";
import { type Aspect, faceOf, upOnScreen } from "../weld";
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
export function moveCursor(cursor: Place, aspect: Aspect, key: string, modifiers: Modifiers): Place | null {
  const arrow = ARROWS[key];
  if (!arrow) return null;
  const step = stepOf(modifiers);
  return ontoPlate(aspect, {
    x: roundTo(cursor.x + arrow[0] * step, 0.1),
    y: roundTo(cursor.y + arrow[1] * step * upOnScreen(aspect), 0.1),
  });
}

/** What lies on either side of the middle: plate A or B, a fillet's base or standing plate. */
export function sideNames(aspect: Aspect): readonly [positive: string, negative: string] {
  return faceOf(aspect) === "fillet" ? ["the base plate", "the standing plate"] : ["plate A", "plate B"];
}

/** A place on a piece in words: "123.4 mm from the datum, 2.1 mm towards plate A". */
export function describePlace(aspect: Aspect, place: Place): string {
  const along = `${place.x.toFixed(1)} mm from the datum`;
  if (Math.abs(place.y) < 0.05) return `${along}, on the centre line`;
  const [positive, negative] = sideNames(aspect);
  return `${along}, ${Math.abs(place.y).toFixed(1)} mm towards ${place.y > 0 ? positive : negative}`;
}
