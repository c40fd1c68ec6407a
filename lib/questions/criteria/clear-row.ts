import {
  type Criteria,
  type Criterion,
  type Evidence,
  rowsOn,
  type SymbolName,
  type SymbolValues,
} from "../../criteria";
import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../../imperfections";
import { roundTo } from "../../math";
import type { RandomStream } from "../../random";
import { isFilletTruth, type Truth } from "../../specimen";
import { PIECES, requiredLeg, requiredThroat, type SurfaceFace } from "../../weld";

/** A limit that rests on memory or on one source alone decides no question. */
const SURE: readonly Evidence[] = ["text", "secondary", "quoted", "own"];
export const isSure = ({ evidence }: Pick<Criterion, "evidence">): boolean => SURE.includes(evidence);

/** Whole or half millimetres, so that what is worked out with them needs no rounding; a and z of a drawing as they are written. */
export function valuesFor(truth: Truth, random: RandomStream): SymbolValues {
  if (!isFilletTruth(truth)) {
    const { thickness } = truth.joint;
    return { t: thickness, s: thickness, b: 10 + random.integer(13), bRoot: 3 + random.integer(4) };
  }
  const { baseThickness, standingThickness, size } = truth.joint;
  const a = roundTo(requiredThroat(size), 0.1);
  return {
    t: Math.min(baseThickness, standingThickness),
    a,
    aA: a,
    z: roundTo(requiredLeg(size), 0.1),
    b: Math.round(2 * a),
  };
}

const NAMES: Readonly<Record<SymbolName, string>> = {
  t: "thickness t",
  s: "nominal thickness s",
  a: "nominal throat a",
  aA: "actual throat aA",
  b: "width from toe to toe b",
  bRoot: "width of the root run b",
  z: "nominal leg z",
  hCap: "height of the cap over the place",
};

/** "thickness t = 8 mm, width from toe to toe b = 14 mm": those that are known, t always first. */
export function valueWords(values: SymbolValues, symbols: readonly SymbolName[]): string {
  const all = (Object.keys(NAMES) as SymbolName[]).filter((symbol) => symbol === "t" || symbols.includes(symbol));
  return all
    .flatMap((symbol) => {
      const value = values[symbol];
      return value === undefined ? [] : [`${NAMES[symbol]} = ${value} mm`];
    })
    .join(", ");
}

/** The one row of a set that speaks of a type on a face of that piece, or null where there is none or more than one, or nobody can say. */
export function clearRow(
  criteria: Criteria,
  type: ImperfectionType,
  face: SurfaceFace,
  values: SymbolValues,
): Criterion | null {
  const { holding, open } = rowsOn(criteria, type, face, values);
  return holding.length === 1 && open.length === 0 && isSure(holding[0]) ? holding[0] : null;
}

/** Symbols that decide which rows of a set hold, for one type or for any: without their values nobody can say. */
export const decidingSymbols = ({ rows }: Criteria, type: ImperfectionType | null = null): SymbolName[] => [
  ...new Set(
    rows
      .filter(({ types }) => type === null || types.includes(type))
      .flatMap(({ ranges }) => ranges.map(({ symbol }) => symbol)),
  ),
];

export interface OnFace {
  readonly type: ImperfectionType;
  readonly face: SurfaceFace;
}

/** Every type that a piece can have, on every face where it can lie. */
export const possible = (truth: Truth): OnFace[] =>
  PIECES[truth.joint.kind].faces.flatMap((face) =>
    IMPERFECTION_TYPES.filter((type) => imperfection(type).faces.includes(face)).map((type) => ({ type, face })),
  );

/** "ISO 5817:2014, 1.7 Undercut". */
export const rowWords = (criteria: Criteria, { clause, name }: Pick<Criterion, "clause" | "name">): string =>
  `${criteria.edition}, ${clause} ${name}`;
