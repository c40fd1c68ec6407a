import { type ImperfectionType, imperfection } from "../../imperfections";
import type { Face } from "../../weld";
import { WITHIN_MARKS } from "./blueprint";
import { APART } from "./zones";

/** How a face, as measured, departs from its section's blueprint; lengths and sizes in mm. */
export type Departure =
  | { readonly code: "slot-not-filled"; readonly slot: number }
  | { readonly code: "too-many"; readonly extras: number; readonly most: number }
  | { readonly code: "near-limit"; readonly type: ImperfectionType; readonly size: number }
  | { readonly code: "too-close"; readonly types: readonly [ImperfectionType, ImperfectionType] }
  | { readonly code: "clean-length"; readonly length: number; readonly least: number }
  | { readonly code: "expected-mark"; readonly mark: number; readonly wanted: number };

/** A departure in one plain sentence that names the face, as `explainRefusal` does for what cannot be drawn at all. */
export function explainDeparture(departure: Departure, face: Face): string {
  const at = departure.code === "slot-not-filled" ? `${face} face, slot ${departure.slot + 1}: ` : `${face} face: `;
  return at + reason(departure);
}

function reason(departure: Departure): string {
  switch (departure.code) {
    case "slot-not-filled":
      return "less was measured of its kind, size and place than it asks for";
    case "too-many":
      return `${departure.extras} more were measured than the slots ask for; at most ${departure.most}`;
    case "near-limit":
      return `${nameOf(departure.type)} of ${departure.size.toFixed(2)} mm lies too near a limit`;
    case "too-close": {
      const [one, other] = departure.types.map(nameOf);
      return `${one} and ${other} lie neither ${APART.along} mm apart along the weld nor ${APART.across} mm across`;
    }
    case "clean-length":
      return `${departure.length.toFixed(0)} mm of the weld stayed clean; at least ${departure.least} mm`;
    case "expected-mark":
      return `the expected mark is ${departure.mark.toFixed(1)}; it is to lie within ${WITHIN_MARKS} of ${departure.wanted}`;
  }
}

const nameOf = (type: ImperfectionType): string => imperfection(type).name.toLowerCase();
