import { describe, expect, it } from "vitest";
import { readArguments } from "@/seed/commands/specimen-arguments";

describe("command line of the specimen command", () => {
  it("takes a seed and a folder in any order and both spellings", () => {
    const expected = { ok: true, do: "specimen", seed: "monday-3", out: "/tmp/plates", blueprint: "practice" };
    expect(readArguments(["--seed", "monday-3", "--out", "/tmp/plates"])).toEqual(expected);
    expect(readArguments(["--out=/tmp/plates", "--seed=monday-3"])).toEqual(expected);
  });

  it("takes a fillet, sound or with something to find", () => {
    const expected = { ok: true, do: "fillet", seed: "a", out: "x" };
    expect(readArguments(["--fillet", "--seed", "a", "--out", "x"])).toEqual({ ...expected, isClean: false });
    expect(readArguments(["--fillet", "--seed", "a", "--out", "x", "--blueprint", "clean"])).toEqual({
      ...expected,
      isClean: true,
    });
  });

  it.each([
    [["--out", "x"], "--seed is missing"],
    [["--seed", "a"], "--out is missing"],
    [["--seed", "a/../b", "--out", "x"], "letters, digits"],
    [["--seed", "a", "--out", "x", "--colour"], "--colour"],
    [["--seed", "a", "--out", "x", "more"], "more"],
    [["--seed"], "--seed"],
    [["--fillet", "--seed", "a"], "--out is missing"],
    [["--fillet", "--seed", "a", "--out", "x", "--blueprint", "assessment"], "practice or clean"],
    [["--fillet", "--sheet", "types", "--out", "x"], "no --sheet"],
    [["--sheet", "faces", "--out", "x"], "types or random N"],
    [["--sheet", "random", "--out", "x"], "how many"],
    [["--sheet", "random", "0", "--out", "x"], "1 to 60"],
    [["--sheet", "random", "2.5", "--out", "x"], "1 to 60"],
    [["--sheet", "types", "4", "--out", "x"], "4"],
    [["--sheet", "types"], "--out is missing"],
    [["--sheet", "types", "--out", "x", "--blueprint", "final-mock"], "--blueprint does not go with --sheet types"],
    [["--blueprint=practice", "--sheet=types", "--out=x"], "leave it out, or use --sheet random N"],
  ])("%j is refused with the reason", (words, reason) => {
    const answer = readArguments(words);
    expect(answer.ok).toBe(false);
    expect(answer.ok ? "" : answer.message).toContain(reason);
  });

  it("takes sheets, which need no seed", () => {
    expect(readArguments(["--sheet", "types", "--out", "x"])).toEqual({
      ok: true,
      do: "types",
      seed: "sheet",
      out: "x",
    });
    expect(readArguments(["--sheet", "random", "12", "--out", "x", "--seed", "a"])).toEqual({
      ok: true,
      do: "random",
      count: 12,
      seed: "a",
      out: "x",
      blueprint: "practice",
    });
    expect(readArguments(["--sheet", "random", "3", "--out", "x", "--blueprint", "clean"])).toMatchObject({
      ok: true,
      do: "random",
      blueprint: "clean",
    });
  });

  it("asks for nothing else when help is wanted", () => {
    expect(readArguments(["--help"])).toEqual({ ok: true, do: "help" });
  });
});
