import { QUANTITIES, QUANTITY_FACTS, type Quantity, SYMBOL_FACTS, SYMBOLS, type SymbolName } from "@/lib/criteria";

/** Every number that a comparison may ask for; each is also the name of its value in the address. */
export type FieldName = SymbolName | Quantity;
export const FIELD_NAMES: readonly FieldName[] = [...SYMBOLS, ...QUANTITIES];

export interface FieldFacts {
  readonly min: number;
  readonly max: number;
  /** Of the slider; any number may be typed. */
  readonly step: number;
  /** Where it stands at first. */
  readonly start: number;
}

/** Reaches wide enough for every limit of the built-in sets; starts are near a limit of one of them. */
export const FIELD_FACTS: Readonly<Record<FieldName, FieldFacts>> = {
  t: { min: 0.5, max: 60, step: 0.5, start: 8 },
  s: { min: 0.5, max: 60, step: 0.5, start: 8 },
  a: { min: 2, max: 20, step: 0.5, start: 5 },
  aA: { min: 2, max: 20, step: 0.5, start: 5 },
  b: { min: 3, max: 60, step: 0.5, start: 14 },
  bRoot: { min: 2, max: 20, step: 0.5, start: 4 },
  z: { min: 3, max: 30, step: 0.5, start: 7 },
  hCap: { min: 0, max: 10, step: 0.1, start: 2 },
  depth: { min: 0, max: 10, step: 0.05, start: 0.45 },
  height: { min: 0, max: 15, step: 0.1, start: 2.7 },
  diameter: { min: 0, max: 20, step: 0.1, start: 1.8 },
  "diameter-sum": { min: 0, max: 60, step: 0.5, start: 6 },
  difference: { min: 0, max: 10, step: 0.1, start: 2.6 },
  gap: { min: 0, max: 10, step: 0.1, start: 1.2 },
  width: { min: 0, max: 20, step: 0.1, start: 1 },
  "leg-shortfall": { min: 0, max: 10, step: 0.1, start: 1 },
  length: { min: 1, max: 300, step: 1, start: 20 },
  "toe-angle": { min: 60, max: 180, step: 1, start: 115 },
};

const isSymbol = (name: FieldName): name is SymbolName => (SYMBOLS as readonly string[]).includes(name);

/** "mm" or "°". */
export const unitOf = (name: FieldName): "mm" | "°" =>
  isSymbol(name) || QUANTITY_FACTS[name].unit === "mm" ? "mm" : "°";

/** "Thickness of the thinner plate or of the wall, t". */
export function labelOf(name: FieldName): string {
  const { name: words, sign } = isSymbol(name) ? SYMBOL_FACTS[name] : QUANTITY_FACTS[name];
  const label = words.charAt(0).toUpperCase() + words.slice(1);
  return sign.includes(" ") ? label : `${label}, ${sign}`;
}
