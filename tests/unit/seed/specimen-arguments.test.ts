import { describe, expect, it } from "vitest";
import { readArguments } from "@/seed/commands/specimen-arguments";

describe("command line of the specimen command", () => {
  it("takes a seed and a folder in any order and both spellings", () => {
    const expected = { ok: true, help: false, seed: "monday-3", out: "/tmp/plates" };
    expect(readArguments(["--seed", "monday-3", "--out", "/tmp/plates"])).toEqual(expected);
    expect(readArguments(["--out=/tmp/plates", "--seed=monday-3"])).toEqual(expected);
  });

  it.each([
    [["--out", "x"], "--seed is missing"],
    [["--seed", "a"], "--out is missing"],
    [["--seed", "a/../b", "--out", "x"], "letters, digits"],
    [["--seed", "a", "--out", "x", "--colour"], "--colour"],
    [["--seed", "a", "--out", "x", "more"], "more"],
    [["--seed"], "--seed"],
  ])("%j is refused with the reason", (words, reason) => {
    const answer = readArguments(words);
    expect(answer.ok).toBe(false);
    expect(answer.ok ? "" : answer.message).toContain(reason);
  });

  it("asks for nothing else when help is wanted", () => {
    expect(readArguments(["--help"])).toEqual({ ok: true, help: true });
  });
});
