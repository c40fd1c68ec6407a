import { describe, expect, it } from "vitest";
import { startWriting, type Writing, type WritingEvent, write } from "@/lib/bench";
import { type Call, EMPTY_REPORT, MAX_CALLS, reportSchema } from "@/lib/report";

const writingAfter = (events: readonly WritingEvent[], from: Writing = startWriting(EMPTY_REPORT)) =>
  events.reduce(write, from);
const add = (id: string, start: number, end: number | null, across = 3): WritingEvent => ({
  kind: "add",
  id,
  extent: { face: "cap", start, end, across },
});
const callOf = (state: Writing, id: string): Call => state.report.calls.find((call) => call.id === id)!;

describe("once the report is closed", () => {
  const written = writingAfter([add("a", 10, 20), add("b", 50, null)]);
  const closed = write(written, { kind: "close", report: written.report });
  const answer = (question: string, option: number): WritingEvent => ({ kind: "answer", question, option });

  it.each<WritingEvent>([
    add("c", 1, 2),
    { kind: "change", id: "a", field: "size", value: 3 },
    { kind: "move", id: "a", start: 1, end: 2, across: 0 },
    { kind: "remove", id: "a" },
    { kind: "measure", dimension: "cap-height", station: null, field: "value", value: 2 },
    { kind: "state", stated: { statement: "size", answer: "met" } },
    { kind: "unstate", statement: "size" },
    { kind: "sentence-piece", value: "reject" },
    { kind: "leave-field" },
    { kind: "undo" },
    { kind: "redo" },
  ])("$kind changes nothing", (event) => {
    expect(write(closed, event)).toEqual(closed);
  });

  it("answers are written, changed and undone, and the report under them stays", () => {
    const answered = writingAfter([answer("q1", 2), answer("q2", 0), answer("q1", 3)], closed);
    expect(answered.report).toEqual({ ...written.report, answers: { q1: 3, q2: 0 } });
    const undone = writingAfter([{ kind: "undo" }, { kind: "undo" }, { kind: "undo" }, { kind: "undo" }], answered);
    expect(undone.report).toEqual(written.report);
    expect(undone.isClosed).toBe(true);
    expect(writingAfter([{ kind: "redo" }], undone).report.answers).toEqual({ q1: 2 });
  });

  it("rows are opened to be read, as they were written", () => {
    const opened = write(closed, { kind: "open", id: "a" });
    expect([opened.openId, opened.report]).toEqual(["a", written.report]);
  });

  it("and before that nothing is answered", () => {
    expect(write(written, answer("q1", 2))).toEqual(written);
  });
});

describe("writing dimensions", () => {
  const measure = (field: "value" | "at", value: number | null): WritingEvent => ({
    kind: "measure",
    dimension: "cap-height",
    station: null,
    field,
    value,
  });

  it("keeps value and place of each, and forgets one with nothing left in it", () => {
    const state = writingAfter([measure("value", 2.4), measure("at", 120)]);
    expect(state.report.measures).toEqual([{ dimension: "cap-height", station: null, value: 2.4, at: 120 }]);
    expect(reportSchema.safeParse(state.report).success).toBe(true);
    expect(writingAfter([measure("value", null), measure("at", null)], state).report.measures).toEqual([]);
  });

  it("is undone a field at a time, however much was typed in it", () => {
    const typed = writingAfter([measure("value", 2), measure("value", 2.4), measure("at", 120), add("a", 10, 20)]);
    const undone = writingAfter([{ kind: "undo" }, { kind: "undo" }], typed);
    expect(undone.report).toEqual({
      ...EMPTY_REPORT,
      measures: [{ dimension: "cap-height", station: null, value: 2.4, at: null }],
    });
    expect(writingAfter([{ kind: "undo" }], undone).report).toEqual(EMPTY_REPORT);
    expect(writingAfter([{ kind: "redo" }, { kind: "redo" }, { kind: "redo" }], undone).report).toEqual(typed.report);
  });
});

describe("writing what is measured and stated on a fillet", () => {
  it("keeps each station of a dimension apart", () => {
    const at = (station: number, value: number | null): WritingEvent => ({
      kind: "measure",
      dimension: "throat",
      station,
      field: "value",
      value,
    });
    const state = writingAfter([at(1, 4.5), at(2, 4.8), at(1, 4.6)]);
    expect(state.report.measures).toEqual([
      { dimension: "throat", station: 2, value: 4.8, at: null },
      { dimension: "throat", station: 1, value: 4.6, at: null },
    ]);
    expect(writingAfter([at(2, null)], state).report.measures).toEqual([state.report.measures[1]]);
  });

  it("has one answer to each question, which can be changed, taken away and undone", () => {
    const met: WritingEvent = { kind: "state", stated: { statement: "size", answer: "met" } };
    const convex: WritingEvent = { kind: "state", stated: { statement: "profile", answer: "convex" } };
    const mitre: WritingEvent = { kind: "state", stated: { statement: "profile", answer: "mitre" } };
    const state = writingAfter([convex, met, mitre]);
    expect(state.report.statements).toEqual([
      { statement: "size", answer: "met" },
      { statement: "profile", answer: "mitre" },
    ]);
    expect(reportSchema.safeParse(state.report).success).toBe(true);
    expect(writingAfter([{ kind: "undo" }], state).report.statements).toEqual([
      { statement: "profile", answer: "convex" },
      { statement: "size", answer: "met" },
    ]);
    const without = writingAfter([{ kind: "unstate", statement: "profile" }], state);
    expect(without.report.statements).toEqual([{ statement: "size", answer: "met" }]);
    expect(writingAfter([{ kind: "unstate", statement: "profile" }], without)).toBe(without);
  });
});

describe("writing the report", () => {
  it("opens a new row with face, place and extent filled in", () => {
    const state = writingAfter([add("a", 131.52, 120.04)]);
    expect(state.openId).toBe("a");
    expect(callOf(state, "a")).toEqual({
      id: "a",
      face: "cap",
      type: null,
      start: 120,
      end: 131.5,
      across: 3,
      size: null,
      sentence: null,
    });
    expect(reportSchema.safeParse(state.report).success).toBe(true);
  });

  it("makes a point of a stretch that turns out to be one, at its middle", () => {
    const state = writingAfter([add("a", 100, 103), { kind: "change", id: "a", field: "type", value: "surface-pore" }]);
    expect(callOf(state, "a")).toMatchObject({ start: 101.5, end: null });
  });

  it("drops a size that nobody measures and a type that the other face does not have", () => {
    const state = writingAfter([
      add("a", 100, 110),
      { kind: "change", id: "a", field: "type", value: "continuous-undercut" },
      { kind: "change", id: "a", field: "size", value: 0.6 },
      { kind: "change", id: "a", field: "type", value: "irregular-surface" },
    ]);
    expect(callOf(state, "a").size).toBeNull();
    const turned = write(state, { kind: "change", id: "a", field: "face", value: "root" });
    expect(callOf(turned, "a")).toMatchObject({ face: "root", type: null });
  });

  it("undoes and redoes, and typing in one field is one step", () => {
    const start = writingAfter([add("a", 100, 110)]);
    const typed = writingAfter(
      [1, 12, 12.5].map((value) => ({ kind: "change", id: "a", field: "size", value }) as const),
      start,
    );
    const undone = write(typed, { kind: "undo" });
    expect(undone.report).toBe(start.report);
    expect(write(undone, { kind: "redo" }).report).toBe(typed.report);
  });

  it("starts another step once the field was left", () => {
    const state = writingAfter([
      add("a", 100, 110),
      { kind: "change", id: "a", field: "size", value: 1 },
      { kind: "leave-field" },
      { kind: "change", id: "a", field: "size", value: 2 },
      { kind: "undo" },
    ]);
    expect(callOf(state, "a").size).toBe(1);
  });

  it("puts the ends in order once they are written, as part of the step before", () => {
    const typed = writingAfter([
      add("a", 84, 123.6),
      { kind: "leave-field" },
      { kind: "change", id: "a", field: "start", value: 200 },
    ]);
    expect(callOf(typed, "a")).toMatchObject({ start: 200, end: 123.6 });
    const left = write(typed, { kind: "leave-field" });
    expect(callOf(left, "a")).toMatchObject({ start: 123.6, end: 200 });
    expect(callOf(write(left, { kind: "undo" }), "a")).toMatchObject({ start: 84, end: 123.6 });
    const closed = write(typed, { kind: "open", id: null });
    expect(callOf(closed, "a")).toMatchObject({ start: 123.6, end: 200 });
  });

  it("takes another version in place of this one, and this one back with undo", () => {
    const here = writingAfter([add("a", 1, 2), add("b", 3, 4)]);
    const other = writingAfter([add("z", 5, 6)]).report;
    const taken = write(here, { kind: "replace", report: other });
    expect(taken.report).toEqual(other);
    expect(taken.openId).toBeNull();
    expect(write(taken, { kind: "undo" }).report).toBe(here.report);
  });

  it("brings a removed row back with undo", () => {
    const state = writingAfter([add("a", 1, 2), add("b", 3, 4), { kind: "remove", id: "a" }]);
    expect(state.report.calls.map(({ id }) => id)).toEqual(["b"]);
    expect(write(state, { kind: "undo" }).report.calls.map(({ id }) => id)).toEqual(["a", "b"]);
  });

  it("closes the open row with its removal and with the undo of its adding", () => {
    expect(writingAfter([add("a", 1, 2), { kind: "remove", id: "a" }]).openId).toBeNull();
    expect(writingAfter([add("a", 1, 2), { kind: "undo" }]).openId).toBeNull();
  });

  it("forgets what could be redone once something new is written", () => {
    const state = writingAfter([add("a", 1, 2), { kind: "undo" }, add("b", 3, 4)]);
    expect(state.future).toEqual([]);
    expect(write(state, { kind: "redo" })).toBe(state);
  });

  it("does not take more rows than a report holds, nor one id twice", () => {
    const many = writingAfter(Array.from({ length: MAX_CALLS + 5 }, (_, n) => add(`r${n}`, n / 2, null)));
    expect(many.report.calls).toHaveLength(MAX_CALLS);
    expect(writingAfter([add("a", 1, 2), add("a", 3, 4)]).report.calls).toHaveLength(1);
  });

  it("sentences a row and the piece, and takes either back, each as one step to undo", () => {
    const decided = writingAfter([
      add("a", 1, 2),
      { kind: "change", id: "a", field: "sentence", value: "reject" },
      { kind: "sentence-piece", value: "refer" },
    ]);
    expect([decided.report.calls[0].sentence, decided.report.pieceSentence]).toEqual(["reject", "refer"]);
    // another name for it is no other decision
    const renamed = write(decided, { kind: "change", id: "a", field: "type", value: "surface-pore" });
    expect(renamed.report.calls[0].sentence).toBe("reject");
    const back = write(decided, { kind: "sentence-piece", value: null });
    expect(back.report.pieceSentence).toBeNull();
    expect(write(decided, { kind: "undo" }).report).toMatchObject({
      calls: [{ sentence: "reject" }],
      pieceSentence: null,
    });
    expect(write(decided, { kind: "sentence-piece", value: "refer" })).toBe(decided);
  });

  it("leaves everything as it is for a row that is gone", () => {
    const state = writingAfter([add("a", 1, 2)]);
    expect(write(state, { kind: "change", id: "x", field: "size", value: 1 })).toBe(state);
    expect(write(state, { kind: "remove", id: "x" })).toBe(state);
  });
});
