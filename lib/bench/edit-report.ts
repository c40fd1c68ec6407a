import { imperfection } from "../imperfections";
import { type Mm, roundTo } from "../math";
import { type Call, MAX_CALLS, type Measure, type Report, type WrittenSentence } from "../report";
import type { AskedDimension, Stated, Statement, SurfaceFace } from "../weld";

/** The report being written, which row is open, and what can be undone. */
export interface Writing {
  readonly report: Report;
  readonly openId: string | null;
  readonly past: readonly Report[];
  readonly future: readonly Report[];
  /** Row and field of the last change, so that typing in one field is one step to undo. */
  readonly lastEdit: string | null;
  /** From then on the report stands, and only the questions on the piece are answered. */
  readonly isClosed: boolean;
}

/** What is drawn on the plate: an extent along the weld and where across; a point has `end` null. */
export interface DrawnExtent {
  readonly face: SurfaceFace;
  readonly start: Mm;
  readonly end: Mm | null;
  readonly across: Mm;
}

export type CallChange = { [Field in Exclude<keyof Call, "id">]: { field: Field; value: Call[Field] } }[Exclude<
  keyof Call,
  "id"
>];

export type WritingEvent =
  | { readonly kind: "add"; readonly id: string; readonly extent: DrawnExtent }
  | ({ readonly kind: "change"; readonly id: string } & CallChange)
  | { readonly kind: "move"; readonly id: string; readonly start: Mm; readonly end: Mm | null; readonly across: Mm }
  | { readonly kind: "remove"; readonly id: string }
  | (AskedDimension & { readonly kind: "measure"; readonly field: "value" | "at"; readonly value: number | null })
  /** An answer chosen, in place of the one before it. */
  | { readonly kind: "state"; readonly stated: Stated }
  /** No answer. */
  | { readonly kind: "unstate"; readonly statement: Statement }
  /** What is decided on the piece as a whole; null takes it back. */
  | { readonly kind: "sentence-piece"; readonly value: WrittenSentence | null }
  /** The report was closed as it is here; nothing of before can be undone. */
  | { readonly kind: "close"; readonly report: Report }
  /** An option chosen, 0 for the first one, in place of the one before it. */
  | { readonly kind: "answer"; readonly question: string; readonly option: number }
  | { readonly kind: "open"; readonly id: string | null }
  /** What is typed is complete: the next change is another step, and the ends of the open row are put in order. */
  | { readonly kind: "leave-field" }
  /** Another version of the report in place of this one; it can be undone. */
  | { readonly kind: "replace"; readonly report: Report }
  | { readonly kind: "undo" }
  | { readonly kind: "redo" };

/** How many steps can be undone. */
const MAX_STEPS = 200;

/** What still happens to a report that is closed. */
const AFTER_CLOSING: ReadonlySet<WritingEvent["kind"]> = new Set(["answer", "open", "replace", "undo", "redo"]);

export const startWriting = (report: Report, isClosed = false): Writing => ({
  report,
  openId: null,
  isClosed,
  past: [],
  future: [],
  lastEdit: null,
});

/**
 * The writing after an event. An event about a row that is gone, or one too many rows, changes nothing, and neither does an edit
 * of a closed report or an answer before that.
 */
export function write(state: Writing, event: WritingEvent): Writing {
  if (state.isClosed && !AFTER_CLOSING.has(event.kind)) return state;
  switch (event.kind) {
    case "add": {
      const { calls } = state.report;
      if (calls.length >= MAX_CALLS || calls.some((call) => call.id === event.id)) return state;
      const next = edited(state, { calls: [...calls, newCall(event.id, event.extent)] }, null);
      return { ...next, openId: event.id };
    }
    case "change":
      return editedCall(state, event.id, (call) => withChange(call, event), `${event.id}/${event.field}`);
    case "move":
      return editedCall(state, event.id, (call) => ({ ...call, ...extentOf(event) }), `${event.id}/extent`);
    case "remove": {
      const calls = state.report.calls.filter((call) => call.id !== event.id);
      if (calls.length === state.report.calls.length) return state;
      return { ...edited(state, { calls }, null), openId: state.openId === event.id ? null : state.openId };
    }
    case "measure": {
      const { dimension, station, field, value } = event;
      const measures = withMeasure(state.report.measures, { dimension, station }, { [field]: value });
      return edited(state, { measures }, `${dimension}/${station}/${field}`);
    }
    case "state": {
      const others = state.report.statements.filter(({ statement }) => statement !== event.stated.statement);
      return edited(state, { statements: [...others, event.stated] }, `${event.stated.statement}/answer`);
    }
    case "unstate": {
      const statements = state.report.statements.filter(({ statement }) => statement !== event.statement);
      if (statements.length === state.report.statements.length) return state;
      return edited(state, { statements }, `${event.statement}/answer`);
    }
    case "sentence-piece":
      if (event.value === state.report.pieceSentence) return state;
      return edited(state, { pieceSentence: event.value }, "piece/sentence");
    case "close":
      return startWriting(event.report, true);
    case "answer": {
      const { answers } = state.report;
      if (!state.isClosed || answers[event.question] === event.option) return state;
      return edited(state, { answers: { ...answers, [event.question]: event.option } }, `${event.question}/answer`);
    }
    case "open": {
      const exists = event.id === null || state.report.calls.some((call) => call.id === event.id);
      const settled = state.isClosed ? state : withEndsInOrder(state);
      return exists ? { ...settled, openId: event.id, lastEdit: null } : state;
    }
    case "leave-field":
      return { ...withEndsInOrder(state), lastEdit: null };
    case "replace":
      return { ...edited(state, event.report, null), openId: null };
    case "undo": {
      const report = state.past[state.past.length - 1];
      if (!report) return state;
      return restored(state, report, state.past.slice(0, -1), [state.report, ...state.future]);
    }
    case "redo": {
      const [report, ...future] = state.future;
      if (!report) return state;
      return restored(state, report, [...state.past, state.report], future);
    }
  }
}

function newCall(id: string, extent: DrawnExtent): Call {
  return { id, face: extent.face, type: null, size: null, sentence: null, ...extentOf(extent) };
}

/** The open row runs from the lower end to the higher one; this belongs to the edit before it and is no step of its own. */
function withEndsInOrder(state: Writing): Writing {
  const open = state.report.calls.find((call) => call.id === state.openId);
  if (!open || open.start === null || open.end === null || open.start <= open.end) return state;
  const ordered: Call = { ...open, start: open.end, end: open.start };
  const calls = state.report.calls.map((call) => (call === open ? ordered : call));
  return { ...state, report: { ...state.report, calls } };
}

function extentOf({ start, end, across }: Pick<DrawnExtent, "start" | "end" | "across">) {
  const [low, high] = end === null || end >= start ? [start, end] : [end, start];
  return {
    start: roundTo(low, 0.1),
    end: high === null ? null : roundTo(high, 0.1),
    across: roundTo(across, 0.1),
  };
}

/** One field changed, and what follows from it: no type of the other face, no end of a point, no size of the unsized. */
function withChange(call: Call, change: CallChange): Call {
  const next: Call = { ...call, [change.field]: change.value };
  if (!next.type) return next;
  const kind = imperfection(next.type);
  if (!kind.faces.includes(next.face)) return { ...next, type: null };
  const asPoint = change.field === "type" && kind.extent === "point" && next.end !== null && next.start !== null;
  return {
    ...next,
    size: kind.size === null ? null : next.size,
    ...(asPoint ? { start: roundTo((next.start! + next.end!) / 2, 0.1), end: null } : {}),
  };
}

function editedCall(state: Writing, id: string, edit: (call: Call) => Call, editKey: string): Writing {
  if (!state.report.calls.some((call) => call.id === id)) return state;
  const calls = state.report.calls.map((call) => (call.id === id ? edit(call) : call));
  return edited(state, { calls }, editKey);
}

/** A dimension with nothing written stands in no report. */
function withMeasure(
  measures: readonly Measure[],
  asked: AskedDimension,
  change: Partial<Pick<Measure, "value" | "at">>,
): Measure[] {
  const old = measures.find(({ dimension, station }) => dimension === asked.dimension && station === asked.station);
  const next: Measure = { ...asked, value: null, at: null, ...old, ...change };
  const isBlank = next.value === null && next.at === null;
  const others = measures.filter((measure) => measure !== old);
  return isBlank ? others : [...others, next];
}

function edited(state: Writing, change: Partial<Report>, editKey: string | null): Writing {
  const isSameField = editKey !== null && editKey === state.lastEdit;
  return {
    ...state,
    report: { ...state.report, ...change },
    past: isSameField ? state.past : [...state.past, state.report].slice(-MAX_STEPS),
    future: [],
    lastEdit: editKey,
  };
}

function restored(state: Writing, report: Report, past: readonly Report[], future: readonly Report[]): Writing {
  const isOpenStill = report.calls.some((call) => call.id === state.openId);
  return { ...state, report, openId: isOpenStill ? state.openId : null, past, future, lastEdit: null };
}
