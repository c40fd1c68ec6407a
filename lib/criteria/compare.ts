import { type ImperfectionType, imperfection, typesOn } from "../imperfections";
import type { Mm } from "../math";
import type { SurfaceFace } from "../weld";
import { assess, type Sentence } from "./assess";
import type { Criteria, Criterion } from "./criteria";
import type { Outcome } from "./finding";
import { type Formula, workOut } from "./formula";
import { type Indication, isPoreGroup, type Measured, type Piece } from "./indication";
import { rowsOn, speaksOf } from "./rows-on";
import { api1104 } from "./sets/api-1104";
import { asmeB313, GROOVE_WELDS } from "./sets/asme-b31-3";
import { awsD11, LOADINGS, type Stress } from "./sets/aws-d1-1";
import { BUILT_IN_CRITERIA } from "./sets/built-in";
import { iso5817 } from "./sets/iso5817";
import { QUALITY_LEVELS } from "./sets/iso5817-rows/level-row";
import { mostOn, SHORT_IMPERFECTION, type SumRule } from "./sum-rule";
import { QUANTITIES, type Quantity, SYMBOLS, type SymbolName, type SymbolValues } from "./symbols";

/** Length of the weld on which a compared imperfection lies in the middle, alone, mm. */
export const COMPARED_WELD: Mm = 300;

/** One set for each document and level that stand side by side; ISO 5817 and what AWS D1.1 asks of a weld lying that way. */
export const comparedCriteria = (stress: Stress): readonly Criteria[] => [
  ...QUALITY_LEVELS.map((level) => iso5817({ level, edition: 2014 })),
  ...LOADINGS.map((loading) => awsD11({ loading, stress })),
  ...GROOVE_WELDS.map(asmeB313),
  api1104(),
];

/** Types on a face that an eye can size or that any built-in set has a row for, in catalogue order. */
export const comparedTypes = (face: SurfaceFace): readonly ImperfectionType[] =>
  typesOn(face).filter(
    (type) =>
      imperfection(type).size !== null ||
      BUILT_IN_CRITERIA.some(({ rows }) => rows.some((row) => speaksOf(row, { type, face }))),
  );

/** What is compared: one imperfection with everything measured, on a piece. */
export interface Subject {
  readonly type: ImperfectionType;
  readonly face: SurfaceFace;
  /** mm; null for a point whose length no set asks for. */
  readonly length: Mm | null;
  readonly measured: Measured;
  readonly values: SymbolValues;
}

/** What some sets ask to be known of a type on a face. */
export interface Asked {
  readonly quantities: readonly Quantity[];
  readonly symbols: readonly SymbolName[];
  /** The quantity that most of them limit, or by which the catalogue sizes the type; null where nothing is measured. */
  readonly axis: Quantity | null;
}

/** What the rows of some sets ask for, whatever the thickness. */
export function askedOf(sets: readonly Criteria[], type: ImperfectionType, face: SurfaceFace): Asked {
  const rows = sets.flatMap((criteria) => criteria.rows.filter((row) => speaksOf(row, { type, face })));
  const limited = rows.flatMap(({ limit }) =>
    limit.kind === "at-most" || limit.kind === "at-least" ? [limit.quantity] : [],
  );
  const rules = rows.flatMap(rulesOf);
  const summed = rules.flatMap((rule) => summedQuantities(rule, type));
  const counted = rules.flatMap((rule) => (rule.counted ? [rule.counted.quantity] : []));
  const formulas = [
    ...rows.flatMap(({ limit }) => (limit.kind === "at-most" ? [limit.formula] : [])),
    ...rules.flatMap((rule) => (rule.counted ? [rule.counted.formula] : [])),
  ];
  const symbols = [
    ...formulas.map(({ symbol }) => symbol),
    ...rows.flatMap(({ ranges }) => ranges.map(({ symbol }) => symbol)),
  ];
  const axis = axisOf(limited, summed, imperfection(type).size);
  const quantities = [...limited, ...summed, ...counted, axis];
  return {
    quantities: QUANTITIES.filter((quantity) => quantities.includes(quantity)),
    symbols: SYMBOLS.filter((symbol) => symbols.includes(symbol)),
    axis,
  };
}

const rulesOf = (row: Criterion): readonly SumRule[] =>
  row.limit.kind === "at-most" && row.limit.shortOnly ? [SHORT_IMPERFECTION, ...row.sums] : row.sums;

function summedQuantities({ sum }: SumRule, type: ImperfectionType): Quantity[] {
  if (sum === "count") return [];
  if (sum === "length") return ["length"];
  // the diameters of a group count spread along it
  return isPoreGroup(type) ? ["diameter-sum", "length"] : ["diameter"];
}

function axisOf(limited: readonly Quantity[], summed: readonly Quantity[], size: Quantity | null): Quantity | null {
  const across = [...limited, ...summed].filter((quantity) => quantity !== "length");
  const times = (quantity: Quantity) =>
    limited.filter((one) => one === quantity).length + (quantity === size ? 0.5 : 0);
  if (across.length > 0) return across.reduce((most, next) => (times(next) > times(most) ? next : most));
  return limited.includes("length") ? "length" : size;
}

/** A stretch of sizes for which the outcome is the same, in the unit of the axis. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
}

/** What one set says of the subject, and what it would say were only the size on the axis another. */
export interface ComparedSet {
  readonly criteria: Criteria;
  readonly sentence: Sentence;
  /** From 0 to the end of the axis; a size where two meet belongs to the milder one. */
  readonly stretches: readonly Stretch[];
}

export interface Comparison {
  readonly axis: Quantity | null;
  /** The size of the subject on the axis; null where there is no axis. */
  readonly size: number | null;
  /** Where the axis ends, beyond the size and all limits; 1 where there is no axis. */
  readonly end: number;
  readonly sets: readonly ComparedSet[];
}

/** Ends of an axis that divide well. */
const ENDS = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400];

/**
 * Holds one imperfection, alone on a weld of `COMPARED_WELD` mm, against several sets. The stretches are worked out by
 * sentencing it again at a size inside each of them, so that they never tell anything else than the sentences do.
 */
export function compare(sets: readonly Criteria[], subject: Subject): Comparison {
  const { axis } = askedOf(sets, subject.type, subject.face);
  const piece: Piece = { length: COMPARED_WELD, values: subject.values };
  const size = axis === null ? null : axis === "length" ? (subject.length ?? 0) : (subject.measured[axis] ?? 0);
  const sentenceAt = (criteria: Criteria, at: number | null) =>
    assess(indicationAt(subject, axis, at), piece, criteria);
  const cut = sets.map((criteria) => {
    if (axis === null) return [{ from: 0, to: 1, outcome: sentenceAt(criteria, null).outcome }];
    const edges = [...new Set([0, ...edgesOf(criteria, subject, axis)])].sort((a, b) => a - b);
    return merged(
      edges.map((from, n) => {
        const to = edges[n + 1] ?? Number.POSITIVE_INFINITY;
        const inside = n + 1 < edges.length ? (from + to) / 2 : from + 1;
        return { from, to, outcome: sentenceAt(criteria, inside).outcome };
      }),
    );
  });
  const turns = cut.flatMap((stretches) => stretches.slice(1).map(({ from }) => from));
  const end = axis === null ? 1 : endOf(axis, Math.max(size ?? 0, ...turns));
  return {
    axis,
    size,
    end,
    sets: sets.map((criteria, n) => ({
      criteria,
      sentence: sentenceAt(criteria, size),
      stretches: cut[n].map((stretch) => ({ ...stretch, to: Math.min(stretch.to, end) })),
    })),
  };
}

function endOf(axis: Quantity, most: number): number {
  if (axis === "toe-angle") return 180;
  return ENDS.find((end) => end >= 1.15 * most) ?? 1.15 * most;
}

function indicationAt({ type, face, length, measured }: Subject, axis: Quantity | null, at: number | null): Indication {
  const along = axis === "length" ? at : length;
  const half = Math.min(along ?? 0, COMPARED_WELD) / 2;
  const sized = axis === null || axis === "length" || at === null ? measured : { ...measured, [axis]: at };
  const middle = COMPARED_WELD / 2;
  return { id: "compared", type, face, start: middle - half, end: middle + half, measured: sized };
}

/** Sizes at which the outcome by a set may turn. */
function edgesOf(criteria: Criteria, { type, face, length, values }: Subject, axis: Quantity): number[] {
  const { holding, open } = rowsOn(criteria, type, face, values);
  const rows = [...holding, ...open.map(({ row }) => row)];
  const limitOf = (formula: Formula): number[] => {
    const worked = workOut(formula, values);
    return "value" in worked ? [worked.value] : worked.under === null ? [] : [worked.under];
  };
  const ofLimit = ({ limit }: Criterion): number[] => {
    if (limit.kind === "at-most" && limit.quantity === axis) return limitOf(limit.formula);
    return limit.kind === "at-least" && limit.quantity === axis ? [limit.value] : [];
  };
  const ofRule = (rule: SumRule): number[] => {
    const counted = rule.counted?.quantity === axis ? limitOf(rule.counted.formula) : [];
    if (!summedQuantities(rule, type).includes(axis)) return counted;
    const most = mostOn(rule, COMPARED_WELD);
    // a group longer than the stretch that is summed over has only a part of its pores in it
    const spread = axis === "diameter-sum" && rule.window ? Math.max(1, (length ?? 0) / rule.window) : 1;
    return [...counted, most * spread];
  };
  return rows.flatMap((row) => [...ofLimit(row), ...rulesOf(row).flatMap(ofRule)]).filter((edge) => edge > 0);
}

/** Neighbours of the same outcome as one. */
function merged(stretches: readonly Stretch[]): Stretch[] {
  const starts = stretches.filter(({ outcome }, n) => n === 0 || outcome !== stretches[n - 1].outcome);
  return starts.map((stretch, n) => ({ ...stretch, to: starts[n + 1]?.from ?? Number.POSITIVE_INFINITY }));
}
