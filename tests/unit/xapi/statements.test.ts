import { describe, expect, test } from "vitest";
import {
  type CountedWork,
  drillStatement,
  learnerAccount,
  type Statement,
  statementsOf,
  takenBack,
} from "../../../lib/xapi";
import { isoDuration } from "../../../lib/xapi/statement";
import { problemsOf } from "../../support/xapi-rules";
import { FILLET } from "../printing/sheet";

const PLACE = { home: "https://weld.example" };
const WORK: CountedWork = {
  attemptId: "attempt-1",
  revision: 0,
  practiceId: "piece-1",
  userId: "user-of-nobody",
  section: "fillet",
  handedInAt: new Date("2026-03-02T09:41:07.250Z"),
  seconds: 754,
  mark: 69_950,
  passMark: 70,
  isPassed: true,
  ruleVersion: "3.0",
  questions: FILLET.questions?.lines ?? [],
  sat: null,
};
const SAT = { sittingId: "sitting 1", paperId: "paper/1", paperName: "Plate and fillet" };
const ROUND = {
  id: "round-1",
  drill: "find-largest",
  gauges: ["depth-gauge"],
  asked: 3,
  right: 2,
  medianError: 0.2,
  seconds: 61,
  finishedAt: new Date("2026-03-02T09:00:00Z"),
} as const;

const all: readonly Statement[] = [
  ...statementsOf(PLACE, WORK),
  ...statementsOf(PLACE, { ...WORK, attemptId: "attempt-2", sat: SAT, isPassed: false, mark: 0, seconds: null }),
  drillStatement(PLACE, "user-of-nobody", { ...ROUND, gauges: ["depth-gauge"] }),
  ...takenBack(PLACE, WORK, new Date("2026-03-03T08:00:00Z"), true),
];

describe("statements", () => {
  test("keep the rules of the Experience API 1.0.3, as does nothing else here", () => {
    expect(all.flatMap(problemsOf)).toEqual([]);
    const [good] = statementsOf(PLACE, WORK).slice(-1);
    const wrong: readonly [string, object][] = [
      ["score.scaled", { result: { ...good.result, score: { scaled: 1.2, raw: 1, min: 0, max: 100 } } }],
      ["result.duration", { result: { ...good.result, duration: "12:34" } }],
      ["id", { id: "attempt-1" }],
      ["version", { version: "1.0.3" }],
      ["actor.account", { actor: { objectType: "Agent", account: { homePage: "weld.example", name: "x" } } }],
      ["statement", { mark: 70 }],
      ["verb.id", { verb: { id: "passed", display: { en: "passed" } } }],
    ];
    for (const [where, change] of wrong) {
      expect(problemsOf({ ...good, ...change }).join("\n"), where).toContain(where);
    }
  });

  test("have ids that are the same for the same event, and no other's", () => {
    const ids = all.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(statementsOf(PLACE, WORK).map(({ id }) => id)).toEqual(ids.slice(0, 3));
    expect(statementsOf({ home: "https://other.example" }, WORK)[0].id).not.toBe(ids[0]);
  });

  test("name the learner by a number of the workshop alone", () => {
    const told = JSON.stringify(all);
    expect(told).not.toContain("user-of-nobody");
    const { account } = learnerAccount(PLACE, "user-of-nobody");
    expect(account.homePage).toBe("https://weld.example");
    expect(all.filter(({ actor }) => actor.account.name === account.name)).toHaveLength(7);
  });

  test("tell mark, verdict and time of a section, and by which paper", () => {
    const [, , practice, , , sat] = all;
    expect(practice.verb.id).toBe("http://adlnet.gov/expapi/verbs/passed");
    expect(practice.result).toMatchObject({
      score: { scaled: 0.6995, raw: 70, min: 0, max: 100 },
      success: true,
      completion: true,
      duration: "PT12M34S",
    });
    expect(sat.verb.id).toBe("http://adlnet.gov/expapi/verbs/failed");
    expect(sat.result).not.toHaveProperty("duration");
    expect(sat.object.id).toBe("https://weld.example/activities/papers/paper%2F1/fillet".replace("%2F", "/"));
    expect(sat.context?.contextActivities.grouping[0].id).toBe("https://weld.example/activities/sittings/sitting%201");
  });

  test("tell an answer by its option, whatever order the options came in; a blank one has none", () => {
    const [first, second] = statementsOf(PLACE, WORK);
    expect(first.result).toEqual({ success: true, response: "option-3" });
    expect(second.result).toEqual({ success: false });
    const turned = WORK.questions.map((line) => ({
      ...line,
      options: line.options.toReversed(),
      key: 3 - line.key,
      written: line.written === null ? null : 3 - line.written,
    }));
    const [other] = statementsOf(PLACE, { ...WORK, attemptId: "attempt-3", questions: turned });
    expect(other.object).toEqual(first.object);
    expect(other.result).toEqual(first.result);
  });

  test("take back by their ids what was told before", () => {
    const told = statementsOf(PLACE, WORK).map(({ id }) => id);
    const at = new Date("2026-03-03T08:00:00Z");
    expect(takenBack(PLACE, WORK, at, true).map(({ object }) => object.id)).toEqual(told);
    expect(takenBack(PLACE, WORK, at, false).map(({ object }) => object.id)).toEqual(told.slice(-1));
  });
});

test.each([
  [0, "PT0S"],
  [59, "PT59S"],
  [60, "PT1M"],
  [754, "PT12M34S"],
  [3600, "PT1H"],
  [90_061, "PT25H1M1S"],
])("%i s are %s by ISO 8601", (seconds, text) => {
  expect(isoDuration(seconds)).toBe(text);
});
