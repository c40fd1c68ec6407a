import { describe, expect, it } from "vitest";
import {
  blanksOf,
  byFamily,
  checkForHandIn,
  coverageOf,
  findTypes,
  isUnsent,
  NOTHING_SEEN,
  type SavingEvent,
  save,
  seenStretches,
  shareSeen,
  startSaving,
  ticksBetween,
  waitBeforeSending,
  withLook,
} from "@/lib/bench";
import { FAMILIES, imperfection, typesOn } from "@/lib/imperfections";
import { type Call, EMPTY_REPORT, type Report } from "@/lib/report";

const call = (rest: Partial<Call>): Call => ({
  id: "a",
  face: "cap",
  type: null,
  start: null,
  end: null,
  across: null,
  size: null,
  sentence: null,
  ...rest,
});

describe("before handing in", () => {
  it("finds what is blank, in reading order", () => {
    expect(blanksOf(call({}))).toEqual(["type", "start", "across"]);
    expect(blanksOf(call({ type: "continuous-undercut", start: 1, across: 0 }))).toEqual(["end", "size"]);
    expect(blanksOf(call({ type: "surface-pore", start: 1, across: 0, size: 1 }))).toEqual([]);
    expect(blanksOf(call({ type: "overlap", start: 1, end: 4, across: 0 }))).toEqual([]);
  });

  it("asks about the same thing written twice, and not about neighbours", () => {
    const undercut = { type: "continuous-undercut", start: 100, end: 110, across: 7 } as const;
    const check = (other: Partial<Call>) =>
      checkForHandIn({ ...EMPTY_REPORT, calls: [call({ ...undercut, size: 1 }), call({ id: "b", ...other })] }, "butt")
        .alike;
    expect(check({ ...undercut, type: "intermittent-undercut", start: 111 })).toEqual([[1, 2]]);
    expect(check({ ...undercut, type: null })).toEqual([[1, 2]]);
    expect(check({ ...undercut, across: -7 })).toEqual([]);
    expect(check({ ...undercut, face: "root", type: null })).toEqual([]);
    expect(check({ ...undercut, start: 120, end: 125 })).toEqual([]);
    expect(check({ ...undercut, type: "spatter" })).toEqual([]);
  });

  it("asks for what is missing on a piece of its kind: every station, the whole weld and every statement", () => {
    const blank = checkForHandIn(EMPTY_REPORT, "fillet");
    expect([blank.unmeasured.length, blank.unstated]).toEqual([11, ["profile", "asymmetry", "size"]]);
    const measured = checkForHandIn(
      {
        ...EMPTY_REPORT,
        measures: [{ dimension: "throat", station: 2, value: 4.5, at: null }],
        statements: [{ statement: "size", answer: "met" }],
      },
      "fillet",
    );
    expect(measured.unmeasured.filter(({ dimension }) => dimension === "throat").map(({ station }) => station)).toEqual(
      [1, 3],
    );
    expect(measured.unstated).toEqual(["profile", "asymmetry"]);
    const onPlate = checkForHandIn(EMPTY_REPORT, "butt");
    expect([onPlate.unmeasured.length, onPlate.unstated]).toEqual([6, []]);
  });

  it("names the rows without a sentence, and the piece", () => {
    const calls = [call({ sentence: "refer" }), call({ id: "b" }), call({ id: "c", sentence: "accept" })];
    const check = (report: Partial<Report>) => checkForHandIn({ ...EMPTY_REPORT, ...report }, "butt");
    expect(check({ calls })).toMatchObject({ unsentenced: [2], isPieceUnsentenced: true });
    expect(check({ pieceSentence: "reject" })).toMatchObject({ unsentenced: [], isPieceUnsentenced: false });
  });

  it("numbers blanks as the rows are numbered", () => {
    const complete = call({ type: "overlap", start: 1, end: 4, across: 0 });
    const { blanks } = checkForHandIn({ ...EMPTY_REPORT, calls: [complete, call({ id: "b", start: 200 })] }, "butt");
    expect(blanks.map(({ number, fields }) => [number, fields])).toEqual([[2, ["type", "across"]]]);
  });
});

describe("finding a type", () => {
  it("finds by the first letters of the name, of a word, by initials and by number", () => {
    expect(findTypes("cap", "un").slice(0, 2)).toEqual(["underflushing", "continuous-undercut"]);
    expect(findTypes("cap", "ov")[0]).toBe("overlap");
    expect(findTypes("cap", "sp").slice(0, 3)).toEqual(["spatter", "tungsten-spatter", "surface-pore"]);
    expect(findTypes("root", "516")).toEqual(["root-porosity"]);
    expect(findTypes("cap", "  Longi ")).toEqual(["longitudinal-crack"]);
  });

  it("finds a whole family, and nothing for nonsense", () => {
    const found = findTypes("cap", "pores");
    expect(found).toContain("clustered-porosity");
    expect(found.every((type) => imperfection(type).family === "cavity")).toBe(true);
    expect(findTypes("cap", "zzz")).toEqual([]);
  });

  it("offers only what the face can have", () => {
    expect(findTypes("root", "undercut")).toEqual([]);
    expect(findTypes("root", "")).toEqual(typesOn("root"));
  });

  it("groups without losing any", () => {
    const groups = byFamily(typesOn("cap"));
    expect(groups.flatMap(({ types }) => types).sort()).toEqual([...typesOn("cap")].sort());
    for (const { family } of groups) expect(FAMILIES).toContain(family);
  });
});

describe("saving", () => {
  const savingAfter = (events: readonly SavingEvent[], from = startSaving(3, 3)) => events.reduce(save, from);

  it("sends nothing until something is written, then after a rest", () => {
    expect(waitBeforeSending(startSaving(3, 3))).toBeNull();
    expect(waitBeforeSending(savingAfter([{ kind: "edited", sequence: 4 }]))).toBe(800);
  });

  it("sends on load what an earlier visit left unsent", () => {
    const state = startSaving(3, 7);
    expect(isUnsent(state)).toBe(true);
    expect(waitBeforeSending(state)).not.toBeNull();
  });

  it("is not done when an edit came while sending", () => {
    const state = savingAfter([
      { kind: "edited", sequence: 4 },
      { kind: "sending" },
      { kind: "edited", sequence: 5 },
      { kind: "confirmed", sequence: 4, savedAt: "2026-01-01T10:00:00Z" },
    ]);
    expect(isUnsent(state)).toBe(true);
    const done = savingAfter([{ kind: "confirmed", sequence: 5, savedAt: "2026-01-01T10:00:05Z" }], state);
    expect(isUnsent(done)).toBe(false);
  });

  it("never goes back because of a late answer", () => {
    const state = savingAfter([
      { kind: "edited", sequence: 5 },
      { kind: "confirmed", sequence: 5, savedAt: "b" },
      { kind: "confirmed", sequence: 4, savedAt: "a" },
    ]);
    expect(state.confirmed).toBe(5);
  });

  it("waits longer after each failure, but never gives up", () => {
    let state = savingAfter([{ kind: "edited", sequence: 4 }]);
    const waits: number[] = [];
    for (let n = 0; n < 8; n++) {
      state = savingAfter([{ kind: "sending" }, { kind: "failed" }], state);
      waits.push(waitBeforeSending(state)!);
    }
    expect(waits).toEqual([...waits].sort((a, b) => a - b));
    expect(waits[7]).toBe(30_000);
  });

  it("stops at a refusal; an edit mends it unless it is a lasting one", () => {
    const refused = (isLasting: boolean) =>
      savingAfter([
        { kind: "edited", sequence: 4 },
        { kind: "refused", reason: "no", isLasting },
      ]);
    expect(waitBeforeSending(refused(false))).toBeNull();
    expect(waitBeforeSending(savingAfter([{ kind: "edited", sequence: 5 }], refused(false)))).toBe(800);
    expect(waitBeforeSending(savingAfter([{ kind: "edited", sequence: 5 }], refused(true)))).toBeNull();
    expect(isUnsent(savingAfter([{ kind: "restarted", sequence: 9 }], refused(true)))).toBe(false);
  });
});

describe("what was looked at", () => {
  const view = { aspect: "cap", width: 600, height: 400, x: 100, up: 0, scale: 10 } as const;
  const ofRoot = { ...view, aspect: "root", x: 290 } as const;

  it("counts a close look at the weld and nothing else", () => {
    const seen = withLook(NOTHING_SEEN, view);
    expect(seenStretches(seen.cap)).toEqual([{ from: 70, to: 130 }]);
    expect(shareSeen(seen, "cap")).toBeCloseTo(0.2, 9);
    expect(shareSeen(seen, "root")).toBe(0);
    expect(withLook(NOTHING_SEEN, { ...view, scale: 3 })).toBe(NOTHING_SEEN);
    expect(withLook(NOTHING_SEEN, { ...view, up: 60 })).toBe(NOTHING_SEEN);
    expect(withLook(seen, view)).toBe(seen);
  });

  it("is the same again after being kept as stretches", () => {
    const seen = withLook(withLook(NOTHING_SEEN, view), ofRoot);
    expect(coverageOf({ cap: seenStretches(seen.cap), root: seenStretches(seen.root) })).toEqual(seen);
    expect(coverageOf({ cap: [{ from: 280, to: 900 }], root: [] }).cap).toHaveLength(300);
  });

  it("counts a look at a fillet however it is turned", () => {
    const corner = { ...view, aspect: "fillet" } as const;
    const onBase = { ...view, aspect: "base", x: 180, up: -5 } as const;
    const seen = withLook(withLook(NOTHING_SEEN, corner), onBase);
    expect(seenStretches(seen.fillet)).toEqual([
      { from: 70, to: 130 },
      { from: 150, to: 200 },
    ]);
    expect(shareSeen(seen, "fillet")).toBeCloseTo(110 / 200, 9);
  });

  it("joins neighbouring looks", () => {
    const seen = withLook(withLook(NOTHING_SEEN, view), { ...view, x: 150 });
    expect(seenStretches(seen.cap)).toEqual([{ from: 70, to: 180 }]);
  });
});

describe("ticks of a rule", () => {
  it("are as close as can be read and numbered in round steps", () => {
    const whole = ticksBetween(0, 300, 3);
    expect(whole.filter(({ kind }) => kind === "long").map(({ at }) => at)).toEqual([0, 50, 100, 150, 200, 250, 300]);
    const near = ticksBetween(99.9, 102.1, 60);
    expect(near.filter(({ kind }) => kind === "long").map(({ at }) => at)).toEqual([100, 101, 102]);
    expect(near[0].at).toBe(99.9);
  });
});
