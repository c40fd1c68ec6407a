import { describe, expect, it } from "vitest";
import { type RandomStream, randomStream } from "../../lib/random";
import type { TruthItem } from "../../lib/specimen";
import { exactCall } from "../support/marking-cases";
import {
  assessmentFace,
  blindCall,
  carefulCall,
  marksOf,
  underSecondType,
  widened,
} from "../support/marking-simulation";

const FACES_TRIED = 400;
const INDICATIONS = 8;

/** Mean over faces as an assessment has them, with 8 indications each. */
function meanOver(figure: (items: readonly TruthItem[], random: RandomStream) => number): number {
  let sum = 0;
  for (let n = 0; n < FACES_TRIED; n++) {
    const random = randomStream(`gaming-${n}`);
    sum += figure(assessmentFace(random, INDICATIONS), random);
  }
  return sum / FACES_TRIED;
}

const carefully = (items: readonly TruthItem[], random: RandomStream) =>
  items.map((item, i) => carefulCall(random, item, `call-${i}`));

// The limits are the project's own, chosen so that looking pays and guessing does not: no outside source.
describe("on a face with 8 indications", () => {
  it.each([1, 4, 8, 16, 40])("%i blind calls average at most 5 marks", (count) => {
    const mean = meanOver((items, random) => {
      const calls = Array.from({ length: count }, (_, i) => blindCall(random, `call-${i}`));
      return marksOf(items, calls);
    });
    expect(mean).toBeLessThanOrEqual(5);
  });

  it("one stray call costs 3 marks or more on average, with all found or with half", () => {
    const cost = (share: number) =>
      meanOver((items, random) => {
        const found = items.slice(0, INDICATIONS * share).map((item, i) => exactCall(item, `call-${i}`));
        return marksOf(items, found) - marksOf(items, [...found, blindCall(random, "stray")]);
      });
    expect(cost(1)).toBeGreaterThanOrEqual(3);
    expect(cost(0.5)).toBeGreaterThanOrEqual(3);
  });

  it("a careful inspector with the gauges' reading noise averages at least 98", () => {
    expect(meanOver((items, random) => marksOf(items, carefully(items, random)))).toBeGreaterThanOrEqual(98);
  });

  it("reporting every find under a second type, or twice, or 10 mm wider at both ends, costs every time", () => {
    for (let n = 0; n < FACES_TRIED; n++) {
      const random = randomStream(`trick-${n}`);
      const items = assessmentFace(random, INDICATIONS);
      const honest = carefully(items, random);
      const tricks = {
        second: [...honest, ...honest.map((call) => underSecondType(random, call))],
        twice: [...honest, ...honest.map((call) => ({ ...call, id: `${call.id}-again` }))],
        wider: honest.map((call) => widened(call, 10)),
      };
      for (const [trick, calls] of Object.entries(tricks)) {
        expect(marksOf(items, calls), `${trick}, face ${n}`).toBeLessThan(marksOf(items, honest));
      }
    }
  });

  it("naming both of two types that come into question pays less than naming either, even the wrong one", () => {
    for (let n = 0; n < FACES_TRIED; n++) {
      const random = randomStream(`hedge-${n}`);
      const items = assessmentFace(random, INDICATIONS);
      const right = items.map((item, i) => exactCall(item, `call-${i}`));
      const wrong = right.map((call) => ({ ...underSecondType(random, call), id: call.id }));
      const both = [...right, ...wrong.map((call) => ({ ...call, id: `${call.id}-again` }))];
      expect(marksOf(items, both)).toBeLessThan(marksOf(items, wrong));
    }
  });
});
