import { describe, expect, it, test } from "vitest";
import { beginRound, drillRoundSchema, ROUND_LENGTH, takeRound, tally, taskNumber, toKeep } from "@/lib/drills";

const RIGHT = { isRight: true, error: 0 };
const ROUND = beginRound("find-largest", "a round", ["height-gauge"], 10_000);

describe("a round", () => {
  it("asks, tells, goes on, and is done after its last task", () => {
    let round = ROUND;
    for (let n = 1; n <= ROUND_LENGTH["find-largest"]; n++) {
      expect(round.stage).toBe("asking");
      expect(taskNumber(round)).toBe(n);
      round = takeRound(round, { kind: "answer", answer: RIGHT, at: 10_000 + 1000 * n });
      expect(round.stage).toBe("told");
      expect(taskNumber(round)).toBe(n);
      round = takeRound(round, { kind: "go-on" });
    }
    expect(round.stage).toBe("done");
    expect(toKeep(round)).toEqual({
      drill: "find-largest",
      gauges: ["height-gauge"],
      asked: 3,
      right: 3,
      medianError: 0,
      seconds: 3,
    });
  });

  it("takes one answer a task, and goes on only once it is told", () => {
    expect(takeRound(ROUND, { kind: "go-on" })).toBe(ROUND);
    const told = takeRound(ROUND, { kind: "answer", answer: RIGHT, at: 1 });
    expect(takeRound(told, { kind: "answer", answer: RIGHT, at: 2 })).toBe(told);
  });

  test.each([
    [[], { asked: 0, right: 0, medianError: null }],
    [[{ isRight: false, error: null }], { asked: 1, right: 0, medianError: null }],
    // of 0.1, 0.3 and 2 the middle one, whatever their signs
    [
      [
        { isRight: false, error: -2 },
        { isRight: true, error: 0.1 },
        { isRight: false, error: null },
        { isRight: false, error: -0.3 },
      ],
      { asked: 4, right: 1, medianError: 0.3 },
    ],
    [
      [
        { isRight: true, error: 0.1 },
        { isRight: true, error: -0.2 },
      ],
      { asked: 2, right: 2, medianError: 0.15 },
    ],
  ])("tally of %j", (answers, wanted) => {
    expect(tally(answers)).toEqual(wanted);
  });
});

describe("a round to keep", () => {
  const round = { drill: "read-scale", gauges: ["steel-rule"], asked: 10, right: 7, medianError: 0.5, seconds: 80 };

  it("is as it should be", () => {
    expect(drillRoundSchema.parse(round)).toEqual(round);
    expect(drillRoundSchema.safeParse({ ...round, medianError: null }).success).toBe(true);
  });

  test.each([
    [{ asked: 9 }, "asked"],
    [{ right: 11 }, "right"],
    [{ right: -1 }, "right"],
    [{ right: 6.5 }, "right"],
    [{ medianError: -0.1 }, "medianError"],
    [{ seconds: 100_000 }, "seconds"],
    [{ gauges: [] }, "gauges"],
    [{ gauges: ["steel-rule", "steel-rule"] }, "gauges"],
    [{ drill: "seat-gauge", asked: 5, right: 5 }, "gauges"],
    [{ gauges: ["feeler"] }, "gauges"],
    [{ drill: "juggling" }, "drill"],
  ])("with %j is refused at %s", (change, at) => {
    const parsed = drillRoundSchema.safeParse({ ...round, ...change });
    expect(parsed.error?.issues[0].path[0]).toBe(at);
  });
});
