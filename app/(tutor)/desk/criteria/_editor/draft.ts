import { readNumber } from "@/app/_bench/report/read-number";
import {
  type Criteria,
  type Criterion,
  type Evidence,
  type Formula,
  LENGTHS,
  type Limit,
  type Problem,
  type Quantity,
  type Range,
  type ReadCriteria,
  readCriteria,
  type SectionRule,
  type SumRule,
  type SymbolName,
  wholeCriteria,
} from "@/lib/criteria";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { SurfaceFace } from "@/lib/weld";

/** Criteria while they are written: numbers as they were typed, right or not. The keys are the page's own. */
export interface Draft {
  readonly name: string;
  readonly edition: string;
  readonly notes: string;
  readonly basedOn: string | null;
  readonly rows: readonly DraftRow[];
  /** Rules about cross sections: kept as they came, not written here. */
  readonly sections: readonly SectionRule[];
  /** Greater than the key of every row there has been. */
  readonly nextKey: number;
}

export interface DraftRow {
  readonly key: number;
  readonly id: string;
  readonly evidence: Evidence;
  readonly clause: string;
  readonly name: string;
  readonly types: readonly ImperfectionType[];
  readonly faces: readonly SurfaceFace[];
  readonly ranges: readonly DraftRange[];
  readonly limit: DraftLimit;
  readonly sums: readonly DraftSum[];
  readonly alsoNeeds: string;
  readonly notes: string;
}

export interface DraftFormula {
  readonly constant: string;
  readonly coefficient: string;
  readonly symbol: SymbolName | "";
  readonly atMost: string;
}

export interface DraftRange {
  readonly symbol: SymbolName;
  readonly lowEdge: "from" | "over";
  readonly low: string;
  readonly highEdge: "upTo" | "under";
  readonly high: string;
}

/** Fields of every kind of limit, so that changing the kind and back loses nothing. */
export interface DraftLimit {
  readonly kind: Limit["kind"];
  readonly quantity: Quantity;
  readonly formula: DraftFormula;
  readonly shortOnly: boolean;
  readonly value: string;
  readonly on: "application" | "condition";
  readonly text: string;
  readonly needs: string;
  readonly percent: string;
}

export interface DraftSum {
  readonly sum: SumRule["sum"];
  /** "all", or which of them count. */
  readonly counted: "all" | "over" | "from";
  readonly quantity: (typeof LENGTHS)[number];
  readonly formula: DraftFormula;
  /** mm; empty for the whole weld. */
  readonly window: string;
  readonly most: "fixed" | "share";
  readonly value: string;
  /** Per cent of the weld's length. */
  readonly share: string;
  readonly shorterUnder: string;
  readonly shorterShare: string;
}

const NO_FORMULA: DraftFormula = { constant: "", coefficient: "", symbol: "", atMost: "" };
export const EMPTY_RANGE: DraftRange = { symbol: "t", lowEdge: "over", low: "", highEdge: "upTo", high: "" };
const EMPTY_LIMIT: DraftLimit = {
  kind: "at-most",
  quantity: "depth",
  formula: NO_FORMULA,
  shortOnly: false,
  value: "",
  on: "application",
  text: "",
  needs: "",
  percent: "",
};
export const EMPTY_SUM: DraftSum = {
  sum: "length",
  counted: "all",
  quantity: "depth",
  formula: NO_FORMULA,
  window: "",
  most: "fixed",
  value: "",
  share: "",
  shorterUnder: "",
  shorterShare: "",
};

export const emptyDraft = (basedOn: string | null): Draft => ({
  name: "",
  edition: "",
  notes: "",
  basedOn,
  rows: [],
  sections: [],
  nextKey: 1,
});

const textOf = (value: number | undefined): string => (value === undefined ? "" : String(value));
/** 0.07 is 7, not 7.000000000000001. */
const percentOf = (share: number | undefined): string =>
  share === undefined ? "" : String(Number((100 * share).toFixed(6)));

const formulaDraft = ({ constant, coefficient, symbol, atMost }: Formula): DraftFormula => ({
  constant: textOf(constant),
  coefficient: textOf(coefficient),
  symbol: symbol ?? "",
  atMost: textOf(atMost),
});

const rangeDraft = ({ symbol, from, over, upTo, under }: Range): DraftRange => ({
  symbol,
  lowEdge: from === undefined ? "over" : "from",
  low: textOf(from ?? over),
  highEdge: under === undefined ? "upTo" : "under",
  high: textOf(upTo ?? under),
});

function limitDraft(limit: Limit): DraftLimit {
  const start = { ...EMPTY_LIMIT, kind: limit.kind };
  switch (limit.kind) {
    case "not-permitted":
    case "permitted":
      return start;
    case "at-most": {
      const { quantity, formula, shortOnly = false } = limit;
      return { ...start, quantity, formula: formulaDraft(formula), shortOnly };
    }
    case "at-least":
      return { ...start, quantity: limit.quantity, value: textOf(limit.value) };
    case "depends":
      return { ...start, on: limit.on, text: limit.text };
    case "not-by-eye":
      return { ...start, needs: limit.needs };
    case "area-at-most":
      return { ...start, percent: textOf(limit.percent) };
  }
}

function sumDraft({ sum, counted, window, most }: SumRule): DraftSum {
  const which = counted
    ? { counted: counted.edge, quantity: counted.quantity, formula: formulaDraft(counted.formula) }
    : {};
  const shorter = most.kind === "fixed" ? most.shorterWeld : undefined;
  return {
    ...EMPTY_SUM,
    sum,
    ...which,
    window: textOf(window),
    most: most.kind,
    value: most.kind === "fixed" ? textOf(most.value) : "",
    share: most.kind === "share" ? percentOf(most.share) : "",
    shorterUnder: textOf(shorter?.under),
    shorterShare: percentOf(shorter?.share),
  };
}

function rowDraft(row: Criterion, key: number): DraftRow {
  const { id, evidence, clause, name, types, faces, ranges, limit, sums, alsoNeeds = "", notes } = row;
  return {
    key,
    id,
    evidence,
    clause,
    name,
    types,
    faces,
    ranges: ranges.map(rangeDraft),
    limit: limitDraft(limit),
    sums: sums.map(sumDraft),
    alsoNeeds,
    notes,
  };
}

/** Criteria as they are kept, to be written on. */
export function draftOf({ name, edition, notes, rows, sections }: Criteria, basedOn: string | null): Draft {
  const drafts = rows.map((row, n) => rowDraft(row, n + 1));
  return { name, edition, notes, basedOn, rows: drafts, sections, nextKey: drafts.length + 1 };
}

/** An id that no row of the draft has, in the order in which they are added. */
function freeId({ rows, nextKey }: Draft): string {
  let n = nextKey;
  while (rows.some(({ id }) => id === `own-${n}`)) n += 1;
  return `own-${n}`;
}

/** The draft with an empty row at its end. */
export function withNewRow(draft: Draft): Draft {
  const row: DraftRow = {
    key: draft.nextKey,
    id: freeId(draft),
    evidence: "own",
    clause: `Row ${draft.rows.length + 1}`,
    name: "",
    types: [],
    faces: [],
    ranges: [],
    limit: EMPTY_LIMIT,
    sums: [],
    alsoNeeds: "",
    notes: "",
  };
  return { ...draft, rows: [...draft.rows, row], nextKey: draft.nextKey + 1 };
}

/** The draft with rows of other criteria at its end, to be changed; from then on they are the tutor's own. */
export function withRowsOf(draft: Draft, rows: readonly Criterion[]): Draft {
  let grown = draft;
  for (const row of rows) {
    const added: DraftRow = { ...rowDraft(row, grown.nextKey), id: freeId(grown), evidence: "own" };
    grown = { ...grown, rows: grown.rows.concat(added), nextKey: grown.nextKey + 1 };
  }
  return grown;
}

/** The row with other types; the first one also gives it a name and what is measured on it. */
export function withTypes(row: DraftRow, types: readonly ImperfectionType[]): DraftRow {
  const [first] = types;
  if (row.types.length > 0 || first === undefined || row.name !== "") return { ...row, types };
  const { name, size, faces } = imperfection(first);
  const quantity = LENGTHS.find((one) => one === size) ?? row.limit.quantity;
  return {
    ...row,
    types,
    name,
    faces: row.faces.length > 0 ? row.faces : faces,
    limit: { ...row.limit, quantity },
  };
}

/** What a text means as a number: nothing where it is empty, and the text itself where it is none, for the schema to refuse. */
function numberIn(text: string): number | string | undefined {
  const read = readNumber(text);
  return read === null ? undefined : (read ?? text);
}
function shareIn(text: string): number | string | undefined {
  const percent = numberIn(text);
  return typeof percent === "number" ? Number((percent / 100).toFixed(8)) : percent;
}

const writtenFormula = ({ constant, coefficient, symbol, atMost }: DraftFormula) => ({
  constant: numberIn(constant),
  coefficient: numberIn(coefficient),
  symbol: symbol === "" ? undefined : symbol,
  atMost: numberIn(atMost),
});

export const writtenRange = ({ symbol, lowEdge, low, highEdge, high }: DraftRange) => ({
  symbol,
  [lowEdge]: numberIn(low),
  [highEdge]: numberIn(high),
});

export function writtenLimit(limit: DraftLimit) {
  const { kind, quantity, shortOnly, on, text, needs } = limit;
  switch (kind) {
    case "not-permitted":
    case "permitted":
      return { kind };
    case "at-most":
      return { kind, quantity, formula: writtenFormula(limit.formula), shortOnly: shortOnly || undefined };
    case "at-least":
      return { kind, quantity, value: numberIn(limit.value) };
    case "depends":
      return { kind, on, text };
    case "not-by-eye":
      return { kind, needs };
    case "area-at-most":
      return { kind, percent: numberIn(limit.percent) };
  }
}

export function writtenSum(rule: DraftSum) {
  const { sum, counted, quantity, most, shorterUnder, shorterShare } = rule;
  const hasShorter = shorterUnder !== "" || shorterShare !== "";
  const shorterWeld = hasShorter ? { under: numberIn(shorterUnder), share: shareIn(shorterShare) } : undefined;
  return {
    sum,
    counted: counted === "all" ? undefined : { edge: counted, quantity, formula: writtenFormula(rule.formula) },
    // a share of the weld's length is one of the whole weld
    window: most === "share" ? undefined : numberIn(rule.window),
    most:
      most === "share"
        ? { kind: most, share: shareIn(rule.share) }
        : { kind: most, value: numberIn(rule.value), shorterWeld },
  };
}

const writtenRow = ({ key, ranges, limit, sums, alsoNeeds, ...rest }: DraftRow) => ({
  ...rest,
  ranges: ranges.map(writtenRange),
  limit: writtenLimit(limit),
  sums: sums.map(writtenSum),
  alsoNeeds: alsoNeeds.trim() === "" ? undefined : alsoNeeds,
});

/** The own criteria of a draft as they are sent: what the schema reads, right or not. */
export const written = ({ name, edition, notes, rows, sections }: Draft) => ({
  version: 1,
  id: "draft",
  name,
  edition,
  notes,
  rows: rows.map(writtenRow),
  sections,
});

/** The own criteria of a draft, or everything that is not right in it. */
export const readDraft = (draft: Draft): ReadCriteria => readCriteria(written(draft));

/** True where a problem is one of row `n`, counted from 1. */
export const isOfRow = ({ field }: Problem, n: number): boolean =>
  field === `rows ${n}` || field.startsWith(`rows ${n},`);

/** What the draft says as far as it is right: rows with something to put right are left out. */
export function soundCriteria(draft: Draft): Criteria {
  const read = readDraft(draft);
  const problems = read.ok ? [] : read.problems;
  const rows = draft.rows.filter((_, n) => !problems.some((problem) => isOfRow(problem, n + 1)));
  const name = draft.name.trim() || "This set";
  const again = readCriteria(written({ ...draft, rows, name, edition: "as it stands", notes: "" }));
  const own: Criteria = again.ok
    ? again.criteria
    : { version: 1, id: "draft", name, edition: "as it stands", notes: "", rows: [], sections: [] };
  return wholeCriteria({ basedOn: draft.basedOn, own });
}

/** A message of the schema for somebody who sees the field: without its name in front, and in per cent where it is shown so. */
export function problemText({ field, problem }: Problem): string {
  if (field.endsWith("share")) return "A share in per cent, above 0 and at most 100.";
  const text = problem.replace(/^[a-zA-Z]+(, mm)?: /, "");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** The draft with one row changed. Rows of one id are one row split by face; changed, it is one of its own. */
export function withRow(draft: Draft, row: DraftRow): Draft {
  const isShared = draft.rows.some(({ id, key }) => id === row.id && key !== row.key);
  const own = isShared ? { ...row, id: freeId(draft) } : row;
  return { ...draft, rows: draft.rows.map((one) => (one.key === row.key ? own : one)) };
}
