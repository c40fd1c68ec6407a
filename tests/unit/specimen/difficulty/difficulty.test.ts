import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import type { Call } from "@/lib/report";
import { DEFAULT_SETTINGS, markIndications } from "@/lib/scoring";
import type { TruthItem } from "@/lib/specimen";
import {
  bandOf,
  CALLS,
  chanceToFind,
  difficultyOf,
  expectedMark,
  expectPiece,
  PASS_ABILITY,
  SIZE_BANDS,
  VISIBILITY,
} from "@/lib/specimen/difficulty";
import type { ButtJoint } from "@/lib/weld";

const JOINT: ButtJoint = {
  kind: "butt",
  process: "111",
  position: "PA",
  length: 300,
  width: 150,
  thickness: 12,
  grooveAngle: 60,
  rootGap: 3,
  rootFace: 1.5,
};

/** An item of a type whose own measure is `factor` times its threshold. */
function itemOf(type: ImperfectionType, start: number, factor: number): TruthItem {
  const { measure, threshold } = VISIBILITY[type];
  const { size, extent, faces } = imperfection(type);
  const value = factor * threshold;
  const length = extent === "point" ? 0 : measure === "length" ? value : 20;
  const half = extent === "point" && measure === "length" ? value / 2 : length / 2 || 0.5;
  const middle = start + length / 2;
  return {
    id: `item-${Math.round(start)}`,
    face: faces.find((face) => face !== "fillet") ?? "cap",
    type,
    start,
    end: start + length,
    across: 0,
    size: size === null ? null : measure === "size" ? value : 1,
    width: measure === "width" ? value : 1,
    worst: [middle, 0],
    outline: [
      [middle - half, -0.5],
      [middle + half, -0.5],
      [middle + half, 0.5],
    ],
    neutral: false,
  };
}

describe("difficulty", () => {
  it("has every type, bands in order, and what newcomers find every second time near them", () => {
    for (const type of IMPERFECTION_TYPES) {
      const { measure, threshold, bands } = VISIBILITY[type];
      expect(bands[0], type).toBeLessThan(bands[1]);
      // newcomers miss half of what a practised eye hardly misses
      if (type !== "angular-misalignment") expect(threshold, type).toBeLessThan(1.5 * bands[1]);
      expect(threshold, type).toBeGreaterThan(0.5 * bands[0]);
      if (measure === "size") expect(imperfection(type).size, type).not.toBeNull();
    }
  });

  it("falls as things get larger, and never leaves its bounds", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...IMPERFECTION_TYPES),
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.double({ min: 1.001, max: 5, noNaN: true }),
        (type, factor, more) => {
          const face = imperfection(type).faces[0];
          const small = difficultyOf(itemOf(type, 20, factor), face, JOINT);
          const large = difficultyOf(itemOf(type, 20, factor * more), face, JOINT);
          expect(large).toBeLessThanOrEqual(small);
          expect(Math.abs(small)).toBeLessThanOrEqual(5);
          const bands = [bandOf(itemOf(type, 20, factor)), bandOf(itemOf(type, 20, factor * more))];
          expect(SIZE_BANDS.indexOf(bands[1])).toBeGreaterThanOrEqual(SIZE_BANDS.indexOf(bands[0]));
        },
      ),
    );
  });

  it("is less for a longer line of the same size, on bare plate than on rippled metal, and where no slag hides it", () => {
    // common practice, no source
    const item = itemOf("continuous-undercut", 20, 1.5);
    const usual = difficultyOf(item, "cap", JOINT);
    expect(difficultyOf({ ...item, end: item.end + 40 }, "cap", JOINT)).toBeLessThan(usual);
    expect(difficultyOf({ ...item, across: 40 }, "cap", JOINT)).toBeLessThan(usual);
    expect(difficultyOf(item, "cap", { ...JOINT, process: "141" })).toBeLessThan(usual);
  });

  it("gives even odds at the item's own difficulty and the logistic curve beside it", () => {
    expect(chanceToFind(0.7, 0.7)).toBe(0.5);
    // logistic(1) and logistic(-2), from any table of the logistic distribution
    expect(chanceToFind(1, 0)).toBeCloseTo(0.7310586, 6);
    expect(chanceToFind(-1, 1)).toBeCloseTo(0.1192029, 6);
  });
});

describe("expected mark", () => {
  /** What an inspector of an ability would hand in: finds by chance, names three of four right, and calls what is not there. */
  function simulate(items: readonly TruthItem[], ability: number, name: string): Call[] {
    const random = randomStream(name);
    const calls: Call[] = [];
    for (const item of items) {
      if (!random.chance(chanceToFind(ability, difficultyOf(item, item.face, JOINT)))) continue;
      const slip = () => random.normal(0, 4);
      calls.push({
        id: `c-${calls.length}`,
        face: item.face,
        type: random.chance(0.75) ? item.type : "stray-arc",
        start: Math.max(0, item.start + slip()),
        end: item.end > item.start ? Math.max(0, item.end + slip()) : null,
        across: item.across + random.normal(0, 1),
        size: item.size === null ? null : Math.max(0, item.size + random.normal(0, 0.5)),
        sentence: null,
      });
    }
    if (random.chance(CALLS.falseCalls)) {
      calls.push({
        id: "false",
        face: items[0].face,
        type: "chipping-mark",
        start: 286,
        end: null,
        across: 30,
        size: 0.5,
        sentence: null,
      });
    }
    return calls.map((call) => ({ ...call, end: call.end === null ? null : Math.max(call.start ?? 0, call.end) }));
  }

  const TYPES: readonly ImperfectionType[] = [
    "continuous-undercut",
    "surface-pore",
    "overlap",
    "slag-residue",
    "sidewall-fusion",
    "stray-arc",
    "longitudinal-crack",
  ];

  it("is what simulated inspectors get from the marking rule, on average within 2 marks, scattered as far as it says", () => {
    for (const factor of [1, 1.6]) {
      const items = TYPES.map((type, n) => itemOf(type, 12 + 38 * n, factor));
      for (const ability of [0, PASS_ABILITY, 2.5]) {
        const runs = 4000;
        let sum = 0;
        let squares = 0;
        for (let n = 0; n < runs; n++) {
          const calls = simulate(items, ability, `${factor} ${ability} ${n}`);
          const { tolerances } = DEFAULT_SETTINGS.plate;
          const mark = markIndications(["cap"], { items, clutter: [] }, calls, tolerances).earned / 1000;
          sum += mark;
          squares += mark ** 2;
        }
        const { mark: expected, sem } = expectPiece([{ face: "cap", joint: JOINT, items, clutter: [] }], ability);
        expect(Math.abs(sum / runs - expected), `${factor} ${ability}: ${sum / runs} and ${expected}`).toBeLessThan(2);
        const scatter = Math.sqrt(squares / runs - (sum / runs) ** 2);
        // how well a find is named and measured scatters as well, which the model takes at its mean
        expect(scatter / sem, `${factor} ${ability}: ${scatter} and ${sem}`).toBeGreaterThan(0.95);
        expect(scatter / sem, `${factor} ${ability}: ${scatter} and ${sem}`).toBeLessThan(1.25);
      }
    }
  });

  it("rises with ability, and tends to what is left after false calls on a clean face", () => {
    const items = TYPES.map((type, n) => itemOf(type, 12 + 38 * n, 1.2));
    const at = (ability: number) => expectedMark({ face: "cap", joint: JOINT, items, clutter: [] }, ability);
    for (let ability = -3; ability < 4; ability += 0.5) expect(at(ability + 0.5)).toBeGreaterThan(at(ability));
    // a section with nothing to find: 100 less 15 a false call
    const clean = expectedMark({ face: "cap", joint: JOINT, items: [], clutter: [] }, 0);
    expect(clean).toBeCloseTo(100 - 15 * CALLS.falseCalls, 6);
  });
});

describe("the standard error of a mark", () => {
  const face = (items: readonly TruthItem[]) => ({ face: "cap" as const, joint: JOINT, items, clutter: [] });

  it("is that of a binomial count where all weigh alike and are as hard, with the false calls beside it", () => {
    for (const count of [1, 4, 12]) {
      const items = Array.from({ length: count }, (_, n) => itemOf("surface-pore", 12 + 20 * n, 1.3));
      const p = chanceToFind(1, difficultyOf(items[0], "cap", JOINT));
      // sqrt(n p (1 - p)) of a binomial count and sqrt(rate) of a Poisson one: any textbook of statistics
      const finds = (100 * CALLS.find * Math.sqrt(count * p * (1 - p))) / count;
      const falseCalls = (100 * CALLS.cost * Math.sqrt(CALLS.falseCalls)) / count;
      expect(expectPiece([face(items)], 1).sem).toBeCloseTo(Math.hypot(finds, falseCalls), 9);
    }
    expect(expectPiece([face([])], 1).sem).toBeCloseTo(15 * Math.sqrt(CALLS.falseCalls), 9);
  });

  it("is how far the marks of simulated pieces scatter, each face having a say by what lies on it", () => {
    const cap = [itemOf("surface-pore", 20, 1.2), itemOf("longitudinal-crack", 60, 0.9), itemOf("overlap", 120, 1.5)];
    const root = [itemOf("root-concavity", 30, 1.1), itemOf("root-penetration", 150, 0.8)];
    const faces = [
      { face: "cap" as const, joint: JOINT, items: cap, clutter: [] },
      { face: "root" as const, joint: JOINT, items: root, clutter: [] },
    ];
    const all = [
      ...cap.map((item) => ({ item, face: "cap" as const })),
      ...root.map((item) => ({ item, face: "root" as const })),
    ];
    const worth = all.reduce((sum, { item }) => sum + imperfection(item.type).weight, 0);
    const random = randomStream("pieces by chance");
    const runs = 20_000;
    let sum = 0;
    let squares = 0;
    for (let n = 0; n < runs; n++) {
      let earned = 0;
      for (const { item, face: on } of all) {
        if (random.chance(chanceToFind(1.5, difficultyOf(item, on, JOINT))))
          earned += imperfection(item.type).weight * CALLS.find;
      }
      // a Poisson count by Knuth's product of uniforms
      const rate = 2 * CALLS.falseCalls;
      for (let product = random.uniform(0, 1); product > Math.exp(-rate); product *= random.uniform(0, 1)) {
        earned -= CALLS.cost * (worth / all.length);
      }
      const mark = (100 * earned) / worth;
      sum += mark;
      squares += mark ** 2;
    }
    const mean = sum / runs;
    const scatter = Math.sqrt(squares / runs - mean ** 2);
    const { mark, sem } = expectPiece(faces, 1.5);
    // three standard errors of a mean and of a standard deviation over 20,000 runs
    expect(Math.abs(mark - mean)).toBeLessThan((3 * sem) / Math.sqrt(runs));
    expect(Math.abs(sem / scatter - 1)).toBeLessThan(3 / Math.sqrt(2 * runs));
  });

  it("shrinks with the root of how much there is to find", () => {
    const items = (count: number) => Array.from({ length: count }, (_, n) => itemOf("surface-pore", 5 + 5 * n, 1.3));
    const one = { ...face(items(10)) };
    expect(expectPiece([one, one, one, one], 1).sem).toBeCloseTo(expectPiece([one], 1).sem / 2, 9);
  });
});
