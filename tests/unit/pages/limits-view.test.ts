import { describe, expect, test } from "vitest";
import { FIELD_FACTS, FIELD_NAMES } from "@/app/(learner)/limits/field-facts";
import { askedBy, compareView, fieldsOf, readView, writeView } from "@/app/(learner)/limits/limits-view";
import { stretchesText } from "@/app/(learner)/limits/limits-words";
import { comparedTypes, STRESSES } from "@/lib/criteria";
import { SURFACE_FACES } from "@/lib/weld";

const queryOf = (text: string) => Object.fromEntries(new URLSearchParams(text));

describe("the address of a comparison", () => {
  test("says again what was written into it, for every type", () => {
    for (const stress of STRESSES) {
      for (const face of SURFACE_FACES) {
        for (const type of comparedTypes(face)) {
          const { view } = readView({ weld: face, type, aws: stress, t: "12.5", depth: "0,7" });
          const { view: again, problems } = readView(queryOf(writeView(view)));
          expect(problems).toEqual([]);
          expect([again.face, again.type, again.stress]).toEqual([face, type, stress]);
          for (const name of fieldsOf(view)) expect(again.numbers[name], `${type} ${name}`).toBe(view.numbers[name]);
        }
      }
    }
  });

  test("with nothing in it starts with undercut on 8 mm, and has no problem", () => {
    const { view, problems } = readView({});
    expect(problems).toEqual([]);
    expect(writeView(view)).toBe("weld=cap&type=continuous-undercut&aws=other&t=8&depth=0.45&length=20");
  });

  test("with a type alone goes to a face on which it occurs", () => {
    const { view, problems } = readView({ type: "root-concavity" });
    expect([view.face, problems]).toEqual(["root", []]);
  });

  test.each([
    [{ t: "thick" }, /^t: “thick” was not taken\. Write a number, for example 12\.5\. It starts at 8 mm\.$/],
    [{ t: "" }, /^t: “” was not taken\. Write a number/],
    [{ t: "Infinity" }, /^t: “Infinity” was not taken\. Write a number/],
    [{ t: "0.4" }, /^t: “0\.4” was not taken\. From 0\.5 to 60 mm\./],
    [{ "toe-angle": "181" }, /^toe-angle: “181” was not taken\. From 60 to 180 °\. It starts at 115 °\.$/],
    [{ depth: ["1", "2"] }, /^depth: it stands in the address more than once; write it once\.$/],
    [{ weld: "side" }, /^weld: “side” is none of cap, root, fillet\. Shown instead: cap\.$/],
    [{ aws: "both" }, /^aws: “both” is none of across-tension, other\./],
    [{ type: "rust" }, /^type: “rust” is no imperfection of the catalogue/],
    [{ type: "constructor" }, /^type: “constructor” is no imperfection/],
    [
      { weld: "cap", type: "root-concavity" },
      /^type: Root concavity is not compared on: butt weld, cap face\. Shown instead: incompletely filled groove\.$/,
    ],
  ])("names what is wrong with %o", (query, sentence) => {
    const { view, problems } = readView(query);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(sentence);
    expect(readView(queryOf(writeView(view))).problems).toEqual([]);
  });
});

test("every comparison that the page offers measures all that is asked: no limit lacks a number", () => {
  for (const stress of STRESSES) {
    for (const face of SURFACE_FACES) {
      for (const type of comparedTypes(face)) {
        const { view } = readView({ weld: face, type, aws: stress });
        const lacking = compareView(view).sets.flatMap(({ sentence }) =>
          sentence.findings.filter(({ reason }) => reason === "missing-measure"),
        );
        expect(lacking, `${type} on ${face}`).toEqual([]);
        for (const name of [...askedBy(view).symbols, ...askedBy(view).quantities]) expect(FIELD_NAMES).toContain(name);
      }
    }
  }
});

test("every field starts on its slider's steps and inside its reach", () => {
  for (const name of FIELD_NAMES) {
    const { min, max, step, start } = FIELD_FACTS[name];
    expect(start >= min && start <= max, name).toBe(true);
    const steps = (start - min) / step;
    expect(Math.abs(steps - Math.round(steps)), name).toBeLessThan(1e-9);
  }
});

describe("a bar in words", () => {
  test.each([
    [["accept", 0.4], ["reject", 1], "depth", "accept up to 0.4 mm, then reject"],
    [["reject", 110], ["accept", 180], "toe-angle", "reject under 110°, then accept"],
    [["cannot-be-judged", 2], ["reject", 3], "diameter", "cannot be judged up to 2.0 mm, then reject"],
  ] as const)("%o %o", ([one, edge], [other, to], axis, words) => {
    const stretches = [
      { from: 0, to: edge, outcome: one },
      { from: edge, to, outcome: other },
    ];
    expect(stretchesText(stretches, axis)).toBe(words);
  });

  test("of one outcome", () => {
    const whole = (outcome: "reject" | "not-covered") => [{ from: 0, to: 1, outcome }];
    expect(stretchesText(whole("reject"), "depth")).toBe("reject, whatever the depth");
    expect(stretchesText(whole("not-covered"), "depth")).toBe("no limit given");
    expect(stretchesText(whole("reject"), null)).toBe("reject");
  });
});
