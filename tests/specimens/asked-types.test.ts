import { expect, test } from "vitest";
import {
  BLUEPRINTS,
  FILLET_BLUEPRINTS,
  generateFilletSpecimen,
  generateMetFace,
  withFilletTypes,
  withTypes,
} from "@/lib/specimen";

/** What is recorded of what was measured. */
const recorded = (items: readonly { readonly type: string; readonly neutral: boolean }[]): string[] =>
  items.filter(({ neutral }) => !neutral).map(({ type }) => type);

test("a cap that is made has the types that were asked for, as measured, and as many as without", () => {
  const includes = ["inter-run-undercut", "worm-hole"] as const;
  const { blueprint, unmet } = withTypes(BLUEPRINTS.practice, { includes, among: "any" });
  expect(unmet).toEqual([]);
  const found = recorded(generateMetFace("asked", "cap", blueprint).items);
  expect(found).toEqual(expect.arrayContaining([...includes]));
  expect(found.length).toBeGreaterThanOrEqual(7);
  expect(found.length).toBeLessThanOrEqual(10);
});

test("a fillet that is made has the types that were asked for, the gap between its plates among them", () => {
  const includes = ["incorrect-root-gap", "excessive-asymmetry", "slag-residue"] as const;
  const { blueprint } = withFilletTypes(FILLET_BLUEPRINTS.practice, { includes, among: "any" });
  const { truth } = generateFilletSpecimen("asked", blueprint);
  expect(recorded(truth.items)).toEqual(expect.arrayContaining([...includes]));
});
