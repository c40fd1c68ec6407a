import type { Formula } from "../formula";
import type { Limit } from "../limit";
import type { LENGTHS } from "../symbols";

type Length = (typeof LENGTHS)[number];

/** Short ways of writing rows down. */
export const NOT_PERMITTED: Limit = { kind: "not-permitted" };
export const PERMITTED: Limit = { kind: "permitted" };

export const atMost = (quantity: Length, formula: Formula): Limit => ({ kind: "at-most", quantity, formula });
/** The same, and only as a short imperfection (ISO 5817). */
export const shortAtMost = (quantity: Length, formula: Formula): Limit => ({
  kind: "at-most",
  quantity,
  formula,
  shortOnly: true,
});
export const angleFrom = (degrees: number): Limit => ({ kind: "at-least", quantity: "toe-angle", value: degrees });
export const dependsOn = (on: "application" | "condition", text: string): Limit => ({ kind: "depends", on, text });
