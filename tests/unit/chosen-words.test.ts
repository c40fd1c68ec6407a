import { describe, expect, test } from "vitest";
import { reasonWords, typesNamed } from "@/app/_marks/reason-words";
import { aimWords } from "@/app/(learner)/next-words";
import { imperfection } from "@/lib/imperfections";
import type { Reason } from "@/lib/progress";

describe("what may be read before a piece", () => {
  test("is honest about a learner of whom nothing is known", () => {
    expect(aimWords({ weak: [], due: [], observations: 0 })).toMatch(/^Nothing is known of you yet/);
    expect(aimWords(null)).toMatch(/being added up/);
  });

  test("names what the learner is after and promises none of it", () => {
    const words = aimWords({ weak: ["overlap", "sagging", "spatter"], due: ["surface-pore"], observations: 90 });
    expect(words).toContain("overlap and sagging too seldom");
    expect(words).toContain("look for surface pore again");
    expect(words).toContain("any one of them may have that or not");
    expect(aimWords({ weak: [], due: ["sagging"], observations: 90 })).not.toContain("too seldom");
    expect(aimWords({ weak: [], due: [], observations: 90 })).toMatch(/^You find well/);
  });
});

const REASONS: readonly Reason[] = [
  { kind: "clean" },
  { kind: "warm-up" },
  { kind: "new", types: ["overlap", "sagging"] },
  { kind: "weak", type: "overlap" },
  { kind: "due", type: "overlap" },
  { kind: "look-alikes", pair: ["continuous-undercut", "intermittent-undercut"] },
  { kind: "uncertain", type: "overlap" },
  { kind: "change" },
];

test.each(REASONS)("a reason is one sentence that names its types: $kind", (reason) => {
  const words = reasonWords(reason);
  expect(words).toMatch(/^This [^.]+\.$/);
  for (const type of typesNamed(reason)) expect(words).toContain(imperfection(type).name.toLowerCase());
});
