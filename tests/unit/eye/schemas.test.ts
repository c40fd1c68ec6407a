import { describe, expect, test } from "vitest";
import { EYE_ROUNDS, eyeAnswerSchema, eyeChoiceSchema, lengthOf, setDrillSchema } from "@/lib/eye";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";

describe("what comes in", () => {
  test.each([
    { kind: "spot", isThere: true },
    { kind: "name", type: "surface-pore" },
    { kind: "ends", from: 0, to: 84 },
    { kind: "size", value: 2.5 },
    { kind: "pair", window: 1 },
  ])("is an answer: %j", (answer) => {
    expect(eyeAnswerSchema.parse(answer)).toEqual(answer);
  });

  test.each([
    [{ kind: "spot", isThere: "yes" }, "isThere"],
    [{ kind: "name", type: "rust" }, "type"],
    [{ kind: "ends", from: 20, to: 20 }, "to"],
    [{ kind: "ends", from: -1, to: 20 }, "from"],
    [{ kind: "size", value: Number.NaN }, "value"],
    [{ kind: "pair", window: 2 }, "window"],
    [{ kind: "spot", isThere: true, isRight: true }, ""],
  ])("is no answer, and what is wrong is named: %j", (answer, path) => {
    const parsed = eyeAnswerSchema.safeParse(answer);
    expect(parsed.error?.issues[0].path.join(".")).toBe(path);
  });

  test("is a drill that is set: some imperfections, each once", () => {
    expect(setDrillSchema.safeParse({ drill: "mixed", types: [] }).success).toBe(true);
    expect(setDrillSchema.safeParse({ drill: "mixed", types: ["overlap", "overlap"] }).success).toBe(false);
    expect(setDrillSchema.safeParse({ drill: "mixed", types: IMPERFECTION_TYPES.slice(0, 9) }).success).toBe(false);
    expect(setDrillSchema.safeParse({ drill: "juggling", types: [] }).success).toBe(false);
  });

  test("is a choice; without its clock a burst is as long as a mixed round", () => {
    const burst = eyeChoiceSchema.parse({ drill: "burst", naming: "four", isTimed: false });
    expect(lengthOf(burst)).toBe(EYE_ROUNDS.mixed.length);
    expect(lengthOf({ ...burst, isTimed: true })).toBeGreaterThan(20);
  });
});
