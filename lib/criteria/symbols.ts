import type { SizeKind } from "../imperfections";
import type { Mm } from "../math";

/** What a limit may be a multiple of, all in mm. */
export const SYMBOLS = ["t", "s", "a", "aA", "b", "bRoot", "z", "hCap"] as const;
export type SymbolName = (typeof SYMBOLS)[number];

export interface SymbolFacts {
  /** As it is printed in a formula. */
  readonly sign: string;
  readonly name: string;
}

/** Signs of ISO 5817 where it has one; wording ours. */
export const SYMBOL_FACTS: Readonly<Record<SymbolName, SymbolFacts>> = {
  t: { sign: "t", name: "thickness of the thinner plate or of the wall" },
  s: { sign: "s", name: "nominal thickness of the butt weld" },
  a: { sign: "a", name: "nominal throat" },
  aA: { sign: "aA", name: "actual throat" },
  b: { sign: "b", name: "width of the cap or of the fillet's face, from toe to toe" },
  bRoot: { sign: "b", name: "width of the root run" },
  z: { sign: "z", name: "nominal leg" },
  hCap: { sign: "cap height", name: "height of the cap over the place" },
};

/** Values of the symbols on a piece, measured or nominal, mm; what is not known is left out. */
export type SymbolValues = Readonly<Partial<Record<SymbolName, Mm>>>;

/** What may be measured on an indication. */
export const QUANTITIES = [
  "depth",
  "height",
  "diameter",
  "diameter-sum",
  "difference",
  "gap",
  "width",
  "leg-shortfall",
  "length",
  "toe-angle",
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** Those in mm. */
export const LENGTHS = QUANTITIES.filter((quantity) => quantity !== "toe-angle");

export interface QuantityFacts {
  readonly sign: string;
  readonly name: string;
  readonly unit: "mm" | "degrees";
}

/** Signs of ISO 5817 where it has one; wording ours. The kinds of size of the catalogue are all among them. */
export const QUANTITY_FACTS = {
  depth: { sign: "h", name: "depth", unit: "mm" },
  height: { sign: "h", name: "height", unit: "mm" },
  diameter: { sign: "d", name: "diameter", unit: "mm" },
  "diameter-sum": { sign: "sum of d", name: "sum of the diameters of its pores of 1 mm and more", unit: "mm" },
  difference: { sign: "h", name: "difference of the legs", unit: "mm" },
  gap: { sign: "h", name: "gap", unit: "mm" },
  width: { sign: "h", name: "width over the plate", unit: "mm" },
  "leg-shortfall": { sign: "shortfall of the leg", name: "shortfall of the leg", unit: "mm" },
  length: { sign: "l", name: "length", unit: "mm" },
  "toe-angle": { sign: "toe angle", name: "toe angle", unit: "degrees" },
} as const satisfies Readonly<Record<Quantity | SizeKind, QuantityFacts>>;
