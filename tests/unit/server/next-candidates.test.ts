import { describe, expect, test } from "vitest";
import { foreseePieces } from "@/app/_server/next/foresee-pieces";
import { typesIn, wishedPiece } from "@/app/_server/next/wished-piece";
import { type Candidate, chooseNext, LOOKS, NEW_LEARNER, NEXT, wishesFor } from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { practise, trueChance } from "../../support/simulated-learner";

const DAY = 86_400_000;
const PIECES = 12;
const CANDIDATES = 12;

/** Practice of one made-up learner on fillet welds that are drawn as in the app, and not made. */
function season(name: string, general: number) {
  const random = randomStream(name);
  const draw = () => random.uniform(0, 1);
  const types = typesIn("fillet");
  const learner = { general, types: new Map(types.map((type) => [type, random.normal(0, 0.4)])) };
  let model = NEW_LEARNER;
  const chosen: { fits: boolean; types: ReadonlySet<string>; chances: readonly number[] }[] = [];
  for (let n = 0; n < PIECES; n++) {
    const now = n * DAY;
    const wishes = wishesFor(model, types, CANDIDATES, draw, now);
    const pieces = wishes.map((wish, k) => ({ seed: `${name} ${n} ${k}`, asked: wishedPiece("fillet", wish) }));
    const candidates = foreseePieces({ section: "fillet", pieces }).flatMap((items, k): Candidate[] =>
      items ? [{ id: `${k}`, indications: items }] : [],
    );
    const { candidate, isFitting } = chooseNext(model, candidates, draw(), now);
    chosen.push({
      fits: isFitting,
      types: new Set(candidate.indications.map(({ type }) => type)),
      chances: candidate.indications.map(({ type, difficulty }) => trueChance(learner, type, difficulty)),
    });
    model = practise(model, learner, candidate, now, random.child(`finds ${n}`)).learner;
  }
  return { chosen, met: Object.keys(model.found.types).length };
}

describe("practice chosen among pieces as the app draws them", () => {
  const seasons = [0.4, 0.9, 1.4].map((general) => season(`learner of ${general}`, general));
  const pieces = seasons.flatMap(({ chosen }) => chosen);

  test("holds success between 75 and 88 %", () => {
    // true chances, so that nothing hangs on what a learner happened to find
    const chances = pieces.flatMap((piece) => piece.chances);
    const mean = chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
    expect(mean).toBeGreaterThan(NEXT.chance.low);
    expect(mean).toBeLessThan(NEXT.chance.high);
    expect(pieces.filter(({ fits }) => fits).length).toBeGreaterThan(0.8 * pieces.length);
  });

  test("begins with two types, and brings the others little by little", () => {
    for (const { chosen, met } of seasons) {
      expect(chosen[0].types.size).toBe(2);
      const known = new Set<string>();
      for (const { types } of chosen) {
        expect([...types].filter((type) => !known.has(type)).length).toBeLessThanOrEqual(NEXT.mostNew);
        for (const type of types) known.add(type);
      }
      expect(met).toBeGreaterThan(4);
    }
  });
});

test("every look is a plate that can be had, and plainer ones are easier", () => {
  const types = ["surface-pore", "continuous-undercut", "spatter", "overlap", "stray-arc"] as const;
  const middle = LOOKS.map((look) => {
    const wish = { isClean: false, includes: [types[0]], among: types, look, isDense: false };
    const asked = wishedPiece("plate", wish);
    const drawn = foreseePieces({ section: "plate", pieces: [1, 2, 3].map((n) => ({ seed: `look ${n}`, asked })) });
    const items = drawn.flatMap((one) => one ?? []);
    expect(items.length).toBeGreaterThan(6);
    for (const { type } of items) expect(types).toContain(type);
    return items.reduce((sum, { difficulty }) => sum + difficulty, 0) / items.length;
  });
  expect(middle[0]).toBeLessThan(middle[1]);
  expect(middle[1]).toBeLessThan(middle[2]);
});
