import { describe, expect, test } from "vitest";
import { IMPERFECTION_TYPES, imperfection } from "@/lib/imperfections";
import {
  addObservations,
  EMPTY_TALLY,
  isClean,
  observationsOf,
  pieceTallySchema,
  sectionObservationsSchema,
  typeTallySchema,
} from "@/lib/progress";
import type { Call } from "@/lib/report";
import { EMPTY_REPORT } from "@/lib/report";
import { type LineList, lineId, linesOf, type ReviewAct } from "@/lib/review";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { type ButtTruth, seenItems, type TruthItem } from "@/lib/specimen";
import { act, careless } from "../../support/review-cases";

const JOINT = {
  kind: "butt",
  process: "111",
  position: "PA",
  length: 300,
  width: 150,
  thickness: 12,
  grooveAngle: 60,
  rootGap: 3,
  rootFace: 1.5,
} as const;

const outline = (start: number, end: number, across: number): TruthItem["outline"] => [
  [start - 1, across - 1],
  [end + 1, across - 1],
  [end + 1, across + 1],
  [start - 1, across + 1],
];

const item = (id: string, type: TruthItem["type"], start: number, end: number, more: Partial<TruthItem> = {}) => ({
  id,
  face: "cap" as const,
  type,
  start,
  end,
  across: 8,
  size: imperfection(type).size === null ? null : 1,
  width: 1,
  worst: [start, 8] as const,
  outline: outline(start, end, 8),
  neutral: false,
  ...more,
});

const TRUTH: ButtTruth = {
  version: 1,
  generator: "by hand",
  joint: JOINT,
  items: [
    item("undercut", "continuous-undercut", 40, 70),
    item("pore", "surface-pore", 120, 120, { across: 0 }),
    item("slag", "slag-residue", 160, 175, { across: 0 }),
    item("small", "surface-pore", 220, 220, { across: 0, size: 0.2, neutral: true }),
    item("concave", "root-concavity", 100, 130, { face: "root", across: 0 }),
  ],
  clutter: [
    { id: "pen", face: "cap", kind: "pen-mark", start: 250, end: 262, across: 30, outline: outline(250, 262, 30) },
    { id: "rust", face: "root", kind: "rust-patch", start: 20, end: 30, across: 30, outline: outline(20, 30, 30) },
  ],
  dimensions: [],
  statements: [],
};

const call = (id: string, type: Call["type"], start: number | null, end: number | null, more: Partial<Call> = {}) => ({
  id,
  face: "cap" as const,
  type,
  start,
  end,
  across: 0,
  size: null,
  sentence: null,
  ...more,
});

const CALLS: readonly Call[] = [
  call("c1", "slag-residue", null, null),
  call("c2", "crater-pipe", 121, null, { size: 1.4 }),
  call("c3", "intermittent-undercut", 42, 69, { across: 8.5, size: 0.7 }),
  call("c4", "grinding-mark", 252, 260, { across: 30 }),
  call("c5", "spatter", 10, 20, { across: -20, face: "root" }),
  call("c6", null, 220, null),
];

const result = markSection("plate", TRUTH, { ...EMPTY_REPORT, calls: CALLS }, DEFAULT_SETTINGS.plate);
const observed = observationsOf({
  result,
  truths: seenItems(TRUTH),
  clutter: TRUTH.clutter,
  calls: CALLS,
  seconds: 1800,
});
const row = (id: string) => observed.truths.find(({ truthId }) => truthId === id)!;

describe("what a marked plate tells", () => {
  test("a find with what was named and measured", () => {
    expect(row("undercut")).toMatchObject({
      found: true,
      placed: 1,
      order: 3,
      namedAs: "intermittent-undercut",
      sizeWritten: 0.7,
      sizeError: -0.3,
      startError: 2,
      endError: -1,
      acrossError: 0.5,
      eye: { measure: "size", value: 1 },
      sentence: null,
    });
  });

  test("a point has no end to be off", () => {
    expect(row("pore")).toMatchObject({
      order: 2,
      namedAs: "crater-pipe",
      sizeError: 0.4,
      startError: 1,
      endError: null,
    });
  });

  test("misses have nothing written, and a call without a place finds nothing", () => {
    for (const id of ["slag", "concave"]) {
      expect(row(id)).toMatchObject({ found: false, placed: 0, order: null, namedAs: null, sizeError: null });
    }
    expect(observed.notCounted).toBe(1);
  });

  test("a neutral feature that was called", () => {
    expect(row("small")).toMatchObject({ neutral: true, found: true, order: 6, namedAs: null });
  });

  test("false calls with what they were made on, clutter called and left alone", () => {
    expect(observed.falseCalls).toEqual([
      { callId: "c4", face: "cap", namedAs: "grinding-mark", start: 252, across: 30, on: "pen-mark" },
      { callId: "c5", face: "root", namedAs: "spatter", start: 10, across: -20, on: null },
    ]);
    expect(observed.clutter.map(({ clutterId, called }) => [clutterId, called])).toEqual([
      ["pen", true],
      ["rust", false],
    ]);
  });

  test("both faces of 300 mm were looked at", () => {
    expect(observed).toMatchObject({ weldLength: 600, seconds: 1800, mark: result.mark, section: "plate" });
  });

  test("it is what its schema says", () => {
    expect(sectionObservationsSchema.parse(observed)).toEqual(observed);
  });

  test("split calls are one find, and one call over two is a find of both that measures neither", () => {
    const truth = {
      ...TRUTH,
      items: [
        item("long", "continuous-undercut", 40, 100),
        item("a", "slag-residue", 160, 175, { across: 0 }),
        item("b", "slag-residue", 178, 190, { across: 0 }),
      ],
    };
    const calls = [
      call("both", "slag-residue", 160, 190),
      call("right", "continuous-undercut", 72, 101, { across: 8, size: 0.9 }),
      call("left", "continuous-undercut", 40, 70, { across: 8, size: 1.2 }),
    ];
    const marked = markSection("cap", truth, { ...EMPTY_REPORT, calls }, DEFAULT_SETTINGS.plate);
    const { truths, weldLength } = observationsOf({
      result: marked,
      truths: seenItems(truth),
      clutter: [],
      calls,
      seconds: null,
    });
    expect(weldLength).toBe(300);
    expect(truths.find(({ truthId }) => truthId === "long")).toMatchObject({ order: 2, sizeWritten: 1.2, endError: 1 });
    for (const id of ["a", "b"]) {
      expect(truths.find(({ truthId }) => truthId === id)).toMatchObject({
        found: true,
        order: 1,
        namedAs: "slag-residue",
        startError: null,
      });
    }
  });
});

describe("tallies", () => {
  const { pieces, types } = addObservations(EMPTY_TALLY, observed);

  test("of a piece", () => {
    expect(pieces).toMatchObject({
      pieces: 1,
      clean: 0,
      weldLength: 600_000,
      falseCalls: 2,
      falseCallsOn: { "pen-mark": 1, nothing: 1 },
      falseCallsAs: { "grinding-mark": 1, spatter: 1 },
      clutter: { "pen-mark": { total: 1, called: 1 }, "rust-patch": { total: 1, called: 0 } },
    });
    expect(pieceTallySchema.parse(pieces)).toEqual(pieces);
  });

  test("of a type", () => {
    expect(types["continuous-undercut"]).toMatchObject({
      total: 1,
      found: 1,
      namedAlike: 1,
      calledAs: { "intermittent-undercut": 1 },
      size: { n: 1, sum: -300, sumOfSquares: 90_000 },
      bySize: { 0: { total: 1, found: 1 } },
    });
    expect(types["surface-pore"]).toMatchObject({ total: 1, neutral: 1, neutralCalled: 1 });
    expect(types["slag-residue"]).toMatchObject({ total: 1, found: 0 });
    for (const tally of Object.values(types)) expect(typeTallySchema.parse(tally)).toEqual(tally);
  });

  test("every type of the catalogue has a place in them", () => {
    for (const type of IMPERFECTION_TYPES) {
      const tally = addObservations(EMPTY_TALLY, { ...observed, truths: [{ ...row("pore"), type, namedAs: type }] });
      expect(tally.types[type]).toMatchObject({ total: 1, namedRight: 1 });
    }
  });
});

/** What tutors said about a line is common practice: no source says what an overruled line tells of a learner. */
describe("a line that a tutor overruled", () => {
  const work = { result, truths: seenItems(TRUTH), clutter: TRUTH.clutter, calls: CALLS, seconds: 1800 };
  const lineOf = (id: string) =>
    result.indications.lines.findIndex(({ truthIds, callIds }) => [...truthIds, ...callIds].includes(id));
  const given = (id: string, share: number): ReviewAct => {
    const line = lineId("indications", lineOf(id));
    const marks = Math.round(share * (linesOf(result).find((one) => one.id === line)?.worth ?? 0));
    return act(1, { kind: "overrule", base: null, line, marks });
  };
  const asReviewed = (...acts: ReviewAct[]) => {
    const reviewed = observationsOf({ ...work, acts });
    expect(sectionObservationsSchema.parse(reviewed)).toEqual(reviewed);
    return { ...reviewed, row: (id: string) => reviewed.truths.find(({ truthId }) => truthId === id) };
  };

  test("a miss that was given in full was found, in place and by its name", () => {
    const after = asReviewed(given("slag", 1));
    expect(after.row("slag")).toMatchObject({ found: true, placed: 1, namedAs: "slag-residue", sizeError: null });
    expect(after.mark).toBeGreaterThan(result.mark);
    expect(addObservations(EMPTY_TALLY, after).types["slag-residue"]).toMatchObject({
      total: 1,
      found: 1,
      namedRight: 1,
    });
    // and nothing else is another
    expect(after.truths.filter(({ truthId }) => truthId !== "slag")).toEqual(
      observed.truths.filter(({ truthId }) => truthId !== "slag"),
    );
  });

  test("a miss that was given a part counts neither way, and does not make a piece clean", () => {
    const after = asReviewed(given("slag", 0.5));
    expect([after.row("slag"), after.leftOpen]).toEqual([undefined, 1]);
    expect(isClean({ ...after, truths: [] })).toBe(false);
  });

  test("a find given in full has the right name, and its size is not known to be off; given a part it stays as it was written", () => {
    expect(asReviewed(given("undercut", 1)).row("undercut")).toMatchObject({
      placed: 1,
      order: 3,
      namedAs: "continuous-undercut",
      sizeError: null,
    });
    expect(asReviewed(given("undercut", 0.5)).row("undercut")).toEqual(row("undercut"));
  });

  test("a find that was given nothing is a miss", () => {
    expect(asReviewed(given("pore", 0)).row("pore")).toMatchObject({
      found: false,
      placed: 0,
      namedAs: null,
      order: null,
    });
  });

  test("a find that cost more than it earned, given nothing, stays a find", () => {
    const at = lineOf("pore");
    const lines = result.indications.lines.map((line, n) => (n === at ? { ...line, earned: -200 } : line));
    const dear = { ...work, result: { ...result, indications: { ...result.indications, lines } } };
    const raised = observationsOf({ ...dear, acts: [given("pore", 0)] });
    expect(raised.truths.find(({ truthId }) => truthId === "pore")).toEqual(row("pore"));
  });

  test("a false call whose price was taken back is none; the clutter beneath it counts neither way", () => {
    const after = asReviewed(given("c4", 0));
    expect(after.falseCalls.map(({ callId }) => callId)).toEqual(["c5"]);
    expect(after.clutter.map(({ clutterId }) => clutterId)).toEqual(["rust"]);
  });

  test("taken back, and given what was computed, everything is as it was", () => {
    expect(observationsOf({ ...work, acts: [given("slag", 1), act(2, { kind: "take-back", of: 1 })] })).toEqual(
      observed,
    );
    const { id, earned } = linesOf(result)[lineOf("undercut")];
    const same = act(1, { kind: "overrule", base: null, line: id, marks: earned });
    expect(observationsOf({ ...work, acts: [same] })).toEqual(observed);
  });

  test("dimensions, questions and the sentence on the piece follow as far as the verdict says something", () => {
    const answered = careless("overruled 1");
    const bare = { result: answered, truths: [], clutter: [], calls: [], seconds: null };
    const before = observationsOf(bare);
    const all = linesOf(answered);
    const of = (list: LineList, isLine: (earned: number, worth: number) => boolean) => {
      const line = all.filter((one) => one.list === list).findIndex(({ earned, worth }) => isLine(earned, worth));
      if (line < 0) throw new Error(`no such line of ${list}`);
      return line;
    };
    const say = (list: LineList, at: number, isFull: boolean) => {
      const line = lineId(list, at);
      const marks = isFull ? (all.find(({ id }) => id === line)?.worth ?? 0) : 0;
      return observationsOf({ ...bare, acts: [act(1, { kind: "overrule", base: null, line, marks })] });
    };
    const isWrong = (earned: number, worth: number) => worth > 0 && earned === 0;

    const off = of("dimensions", isWrong);
    expect(say("dimensions", off, true).dimensions).toEqual(before.dimensions.toSpliced(off, 1));

    const wrong = answered.questions?.lines.findIndex(({ key, written }) => written !== null && written !== key) ?? -1;
    const { written } = before.questions[wrong];
    expect(say("questions", wrong, true).questions[wrong]).toEqual({ ...before.questions[wrong], key: written });
    const right = of("questions", (earned, worth) => earned === worth);
    expect(say("questions", right, false).questions).toEqual(before.questions.toSpliced(right, 1));
    const { question } = before.questions[right];
    const annulled = observationsOf({ ...bare, acts: [act(1, { kind: "annul", question, batch: "b" })] });
    expect(annulled.questions).toEqual(before.questions.toSpliced(right, 1));

    const piece = answered.sentences?.lines.length ?? 0;
    const isRight = before.pieceSentence === "right";
    expect(say("sentences", piece, !isRight).pieceSentence).toBe(isRight ? null : "right");
  });
});
