import { describe, it } from "vitest";
import { MARKING_PROPERTIES } from "../support/marking-properties";

/** Fixed, so that a failure can be repeated; fast-check prints it with the smallest counter-example. */
const SEED = 20261125;
/** Storing says nothing about the rule and takes longest: fewer cases do. */
const RUNS: Readonly<Record<string, number>> = { "a result survives being stored": 2_000 };

describe("the marking rule, on random crowded faces", () => {
  for (const [name, check] of Object.entries(MARKING_PROPERTIES)) {
    it(name, () => check({ numRuns: RUNS[name] ?? 10_000, seed: SEED }));
  }
});
