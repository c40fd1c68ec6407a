import { describe, expect, test } from "vitest";
import type { EyeAnswer } from "@/lib/eye";
import { askedOf, type EyeTask, isAnswerTo, judge, resultOf, type Thing } from "@/lib/eye-tasks";

const AT = { specimenId: "piece", face: "cap", left: 100, middle: 0, length: 42, width: 28, isTurned: false } as const;
const OUTLINE = [
  [10, -1],
  [30, -1],
  [30, 1],
] as const;
const undercut: Thing = {
  what: "imperfection",
  name: "continuous-undercut",
  size: 0.62,
  id: "cap-1",
  outline: OUTLINE,
  from: 10.04,
  to: 30.46,
  isTarget: true,
};
const pore: Thing = { ...undercut, name: "surface-pore", size: 2.34, id: "cap-2", from: 20, to: 20 };
const scratch: Thing = {
  what: "clutter",
  name: "scratch",
  id: "c-1",
  outline: OUTLINE,
  from: 10,
  to: 30,
  isTarget: true,
};

const taskOf = (kind: EyeTask["kind"], things: readonly Thing[], rest: Partial<EyeTask> = {}): EyeTask => ({
  kind,
  windows: [{ at: AT, things }],
  options: null,
  estimate: null,
  ...rest,
});
const verdict = (task: EyeTask, answer: EyeAnswer) => {
  const { isRight, error, allowed, right } = judge(task, answer);
  return { isRight, error, allowed, right };
};

describe("an answer", () => {
  test("to whether something is there goes by imperfections alone", () => {
    const rows = [
      [[pore], true],
      [[scratch], false],
      [[{ ...pore, what: "neutral" } as Thing], false],
      [[], false],
    ] as const;
    for (const [things, isThere] of rows) {
      const task = taskOf("spot", things);
      expect(judge(task, { kind: "spot", isThere })).toMatchObject({ isRight: true, right: { kind: "spot", isThere } });
      expect(judge(task, { kind: "spot", isThere: !isThere })).toMatchObject({ isRight: false });
    }
  });

  test("that names it has to name the very one; a look-alike is not right", () => {
    const task = taskOf("name", [undercut]);
    expect(judge(task, { kind: "name", type: "continuous-undercut" }).isRight).toBe(true);
    expect(judge(task, { kind: "name", type: "intermittent-undercut" })).toMatchObject({
      isRight: false,
      right: { kind: "name", type: "continuous-undercut" },
    });
  });

  test("of a pair is the window that it lies in", () => {
    const beside = { at: AT, things: [{ ...scratch, isTarget: false }] };
    const task = { ...taskOf("pair", []), windows: [beside, { at: AT, things: [undercut] }] };
    expect(judge(task, { kind: "pair", window: 1 }).isRight).toBe(true);
    expect(judge(task, { kind: "pair", window: 0 })).toMatchObject({ isRight: false, right: { window: 1 } });
  });

  // 20.5 mm long: a tenth of that is less than 2.5 mm
  test.each([
    [10, 30.5, true, 0],
    [7.5, 33, true, 2.5],
    [7.4, 30.5, false, 2.6],
    [12.5, 30.5, true, -2.5],
    [12, 24, false, -6.5],
    [8, 31.5, true, 2],
  ])("that marks the ends from %d to %d is judged by the end that is further off", (from, to, isRight, error) => {
    expect(verdict(taskOf("ends", [undercut]), { kind: "ends", from, to })).toEqual({
      isRight,
      error,
      allowed: 2.5,
      right: { kind: "ends", from: 10, to: 30.5 },
    });
  });

  // a mouth of 2.3 mm: marking allows 0.5 mm, of which 15 % of it is less
  test.each([
    [2.3, true, 0],
    [2.8, true, 0.5],
    [2.9, false, 0.6],
    [1.8, true, -0.5],
    [1, false, -1.3],
  ])("that estimates a mouth at %d mm is told by how much and which way it is off", (value, isRight, error) => {
    expect(verdict(taskOf("size", [pore], { estimate: "diameter" }), { kind: "size", value })).toEqual({
      isRight,
      error,
      allowed: 0.5,
      right: { kind: "size", value: 2.3 },
    });
  });

  test("that estimates a length may be a fifth off", () => {
    const task = taskOf("size", [undercut], { estimate: "length" });
    expect(judge(task, { kind: "size", value: 24.5 })).toMatchObject({ isRight: true, error: 4.1, allowed: 4.1 });
    expect(judge(task, { kind: "size", value: 24.6 }).isRight).toBe(false);
  });

  test("to another kind of task is none", () => {
    expect(isAnswerTo(taskOf("spot", [pore]), { kind: "size", value: 1 })).toBe(false);
    expect(() => judge(taskOf("spot", [pore]), { kind: "size", value: 1 })).toThrow("kind size");
  });
});

test("what is added up says what it was about: the imperfection, else the clutter, else nothing", () => {
  const of = (things: readonly Thing[]) => {
    const task = taskOf("spot", things);
    return resultOf(task, judge(task, { kind: "spot", isThere: true })).about;
  };
  const sound = { ...pore, what: "neutral" } as Thing;
  expect([of([pore]), of([scratch]), of([{ ...scratch, isTarget: false }]), of([sound]), of([])]).toEqual([
    "surface-pore",
    "scratch",
    "scratch",
    // a false call on what is sound is no miss of what it is taken for
    null,
    null,
  ]);
});

test("before the answer a task says what it asks and nothing of what is there", () => {
  const asked = askedOf(taskOf("spot", [pore, scratch]), "id", 3);
  expect(asked).toEqual({
    id: "id",
    number: 3,
    kind: "spot",
    windows: [{ face: "cap", length: 42, width: 28 }],
    type: null,
    options: null,
    estimate: null,
  });
  expect(askedOf(taskOf("name", [pore]), "id", 1).type).toBeNull();
  expect(askedOf(taskOf("ends", [undercut]), "id", 1).type).toBe("continuous-undercut");
});
