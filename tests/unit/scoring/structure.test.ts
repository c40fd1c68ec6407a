import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomStream } from "../../../lib/random";
import { DEFAULT_TOLERANCES } from "../../../lib/results";
import type { Block } from "../../../lib/scoring/blocks";
import { bestBlocks } from "../../../lib/scoring/packing";
import { appraise, hullOfCalls } from "../../../lib/scoring/quality";
import { type FaceSection, matchFace, prepareSection } from "../../../lib/scoring/section";
import { mergedTargets, type Target } from "../../../lib/scoring/targets";
import { type MarkingCase, markingCases } from "../../support/marking-cases";
import { marksOf } from "../../support/marking-simulation";
import { bestStructure, plainMark } from "../../support/plain-marking";

const SEED = 20261125;
const small = markingCases({ truths: 4, calls: 6 });
const placed = ({ calls }: MarkingCase) => calls.filter((call) => call.start !== null && call.across !== null);

/** Greatest total of all structures, none left out, each block appraised in full. */
function bestByTrying(section: FaceSection): number {
  const merged = mergedTargets(section.targets, DEFAULT_TOLERANCES);
  const key = (truths: readonly number[]) => [...truths].sort((a, b) => a - b).join();
  const targets = new Map<string, Target>([...section.targets, ...merged].map((one) => [key(one.truths), one]));
  return bestStructure(section.truths.length, section.pieces.length, (truths, calls) => {
    const target = targets.get(key(truths));
    if (!target || (target.isPoint && calls.length > 1)) return 0;
    const pieces = calls.map((call) => section.pieces[call]);
    const value = appraise(target, hullOfCalls(target, pieces), section.price);
    return value.parts + value.back;
  });
}

const totalOf = (blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + block.value, 0);

describe("best structure of split and merged calls", () => {
  it.each([
    { name: "some calls on some truths", cases: small, numRuns: 2_500 },
    { name: "many calls on one or two truths", cases: markingCases({ truths: 2, calls: 9 }), numRuns: 1_000 },
  ])("loses nothing by leaving out hopeless blocks: equal to trying every structure, $name", ({ cases, numRuns }) => {
    fc.assert(
      fc.property(cases, ({ items, calls }) => {
        const section = prepareSection(["cap"], { items, clutter: [] }, calls, DEFAULT_TOLERANCES).faces[0];
        expect(totalOf(matchFace(section, DEFAULT_TOLERANCES))).toBe(bestByTrying(section));
      }),
      { numRuns, seed: SEED },
    );
  });

  it("agrees with the rule written down once more in plain decimals", () => {
    fc.assert(
      fc.property(small, (given) => {
        // Whole thousandths are rounded at each step: up to a few hundredths of a mark with one or two indications.
        expect(Math.abs(marksOf(given.items, given.calls) - plainMark(given.items, placed(given)))).toBeLessThan(0.25);
      }),
      { numRuns: 2_000, seed: SEED },
    );
  });

  it("finds the best choice among blocks of any values, where prices alone prove nothing", () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const [truths, calls] = [5, 7];
        const blocks = randomBlocks(`blocks-${seed}`, truths, calls);
        const worth = new Map(blocks.map((block) => [keyOf(block.target.truths, block.pieces), block.value]));
        const best = bestStructure(truths, calls, (t, r) => worth.get(keyOf(t, r)) ?? 0);
        const chosen = bestBlocks(blocks, truths, calls);
        expect(totalOf(chosen)).toBe(best);
        const [usedTruths, usedCalls] = [chosen.flatMap((b) => b.target.truths), chosen.flatMap((b) => b.pieces)];
        expect(new Set(usedTruths).size).toBe(usedTruths.length);
        expect(new Set(usedCalls).size).toBe(usedCalls.length);
      }),
      { numRuns: 300, seed: SEED },
    );
  });
});

const keyOf = (truths: readonly number[], calls: readonly number[]): string => `${truths.join()}|${calls.join()}`;

/** Blocks of one truth and up to three calls, or one call and up to three truths, with values out of thin air. */
function randomBlocks(seed: string, truths: number, calls: number): Block[] {
  const random = randomStream(seed);
  const anySubset = (count: number) => {
    const size = 1 + random.integer(3);
    const members = new Set(Array.from({ length: size }, () => random.integer(count)));
    return [...members].sort((a, b) => a - b);
  };
  const [target] = prepareSection(["cap"], { items: [blockItem], clutter: [] }, [], DEFAULT_TOLERANCES).faces[0]
    .targets;
  const blocks = new Map<string, Block>();
  for (let i = 0; i < 60; i++) {
    const isMerged = random.chance(0.2);
    const of = isMerged ? anySubset(truths) : [random.integer(truths)];
    const pieces = isMerged ? [random.integer(calls)] : anySubset(calls);
    const value = 100 * pieces.length * of.length + random.integer(150);
    blocks.set(keyOf(of, pieces), { target: { ...target, truths: of }, pieces, value });
  }
  return [...blocks.values()];
}

const blockItem = {
  id: "cap-1",
  face: "cap",
  type: "overlap",
  start: 10,
  end: 20,
  across: 5,
  size: null,
  width: null,
  worst: [10, 5],
  outline: [],
  neutral: false,
} as const;
