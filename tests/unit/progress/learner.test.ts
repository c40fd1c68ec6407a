import { describe, expect, test } from "vitest";
import type { ImperfectionType } from "@/lib/imperfections";
import { logistic } from "@/lib/math";
import {
  afterOutcome,
  afterPractice,
  type Candidate,
  chanceOf,
  chooseNext,
  dueAt,
  dueness,
  type Learner,
  learnerSchema,
  NEW_LEARNER,
  NEW_SKILL,
  NEXT,
  practiceAims,
  reasonOf,
  type Skill,
  standingOf,
} from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { drawCandidate, drawLearner, practise, trueChance, typesOf } from "../../support/simulated-learner";

const DAY = 86_400_000;
const UNDERCUT = "continuous-undercut";

describe("a skill", () => {
  test("moves by 0.6 / (1 + 0.05 n) in general and 0.35 / (1 + 0.05 n) with the type, by hand", () => {
    const one = afterOutcome(NEW_SKILL, UNDERCUT, 1, 1);
    const p = 1 / (1 + Math.E);
    expect(one.general.value).toBeCloseTo(0.6 * (1 - p), 12);
    expect(one.types[UNDERCUT]?.value).toBeCloseTo(0.35 * (1 - p), 12);
    const two = afterOutcome(one, "overlap", -0.5, 0.25);
    const q = logistic(0.6 * (1 - p) + 0.5);
    expect(two.general.value).toBeCloseTo(0.6 * (1 - p) + (0.6 / 1.05) * (0.25 - q), 12);
    // the first of its own type: its step has not shrunk
    expect(two.types.overlap?.value).toBeCloseTo(0.35 * (0.25 - q), 12);
    expect(two.types[UNDERCUT]).toEqual(one.types[UNDERCUT]);
  });

  test("is unsure at first, and surer with every observation", () => {
    let skill = NEW_SKILL;
    let width = 1;
    for (let n = 0; n < 25; n++) {
      const { interval, needed } = standingOf(skill, UNDERCUT, 0);
      expect(needed).toBe(Math.max(0, 20 - n));
      expect(interval.high - interval.low).toBeLessThan(width);
      width = interval.high - interval.low;
      skill = afterOutcome(skill, UNDERCUT, skill.general.value, n % 2);
    }
  });
});

/** Root mean square error of the chance at 500 learners after so many observations over eight types. */
function errorAfter(observations: number): { error: number; within: number } {
  let [squares, count, within] = [0, 0, 0];
  const types = typesOf(8);
  for (let n = 0; n < 500; n++) {
    const random = randomStream(`elo ${n}`);
    const learner = drawLearner(random, types);
    const draw = () => ({ type: random.pick(types), difficulty: random.normal(0, 1.2) });
    let skill: Skill = NEW_SKILL;
    for (let i = 0; i < observations; i++) {
      const { type, difficulty } = draw();
      const outcome = Number(random.chance(trueChance(learner, type, difficulty)));
      skill = afterOutcome(skill, type, difficulty, outcome);
    }
    for (const type of types) {
      const truth = trueChance(learner, type, 0);
      squares += (chanceOf(skill, type, 0) - truth) ** 2;
      const { interval } = standingOf(skill, type, 0);
      within += Number(interval.low <= truth && truth <= interval.high);
      count++;
    }
  }
  return { error: Math.sqrt(squares / count), within: within / count };
}

describe("simulated learners of known chances", () => {
  test.each([
    [20, 0.15],
    [40, 0.13],
  ])("after %d observations the chance is off by %d at most", (observations, most) => {
    const { error, within } = errorAfter(observations);
    expect(error).toBeLessThanOrEqual(most);
    expect(within).toBeGreaterThan(0.9);
  });

  test("without learning anything the chance would be off by more", () => {
    expect(errorAfter(0).error).toBeGreaterThan(0.18);
  });
});

describe("due", () => {
  test("3 days, doubled from 80 % on, halved below 60 %, 60 days at most", () => {
    let due = afterPractice(undefined, 1, 0);
    expect(due.days).toBe(3);
    due = afterPractice(due, 0.8, DAY);
    expect(due).toEqual({ days: 6, lastAt: DAY });
    expect(dueAt(due)).toBe(7 * DAY);
    expect(afterPractice(due, 0.7, DAY).days).toBe(6);
    expect(afterPractice(due, 0.59, DAY).days).toBe(3);
    for (let n = 0; n < 8; n++) due = afterPractice(due, 1, DAY);
    expect(due.days).toBe(60);
    for (let n = 0; n < 9; n++) due = afterPractice(due, 0, DAY);
    expect(due.days).toBe(1);
  });

  test("counts from its day on", () => {
    const due = { days: 3, lastAt: 0 };
    expect(dueness(due, 2.9 * DAY)).toBe(0);
    expect(dueness(due, 3 * DAY)).toBe(1);
    expect(dueness(due, 4.5 * DAY)).toBe(1.5);
    expect(dueness(due, 400 * DAY)).toBe(2);
    expect(dueness(undefined, DAY)).toBe(0);
  });
});

describe("what comes next", () => {
  const piece = (id: string, ...types: ImperfectionType[]): Candidate => ({
    id,
    // what a newcomer finds eight in ten of
    indications: types.map((type) => ({ type, difficulty: -1.386 })),
  });
  const CLEAN: Candidate = { id: "clean", indications: [] };
  const level = (value: number, n: number) => ({ value, n, information: n * 0.16 });
  const known = (types: Skill["types"], more: Partial<Learner> = {}): Learner => ({
    ...NEW_LEARNER,
    found: { general: level(0, 60), types },
    recent: [["spatter"], ["overlap"], ["spatter"]],
    ...more,
  });

  test("a first piece has two new types at most, and is never clean", () => {
    const choice = chooseNext(
      NEW_LEARNER,
      [CLEAN, piece("three", "spatter", "overlap", "sagging"), piece("two", "spatter", "overlap", "overlap")],
      0,
      0,
    );
    expect(choice).toMatchObject({ candidate: { id: "two" }, reason: { kind: "warm-up" }, isFitting: true });
  });

  test("while a learner warms up, what has much to find comes first", () => {
    const [dense, sparse] = [piece("dense", ...Array(12).fill("spatter")), piece("sparse", "spatter")];
    expect(chooseNext(NEW_LEARNER, [sparse, dense], 0, 0).candidate.id).toBe("dense");
  });

  test("what is found too seldom comes before what is found well", () => {
    const learner = known({ [UNDERCUT]: level(-1, 20), spatter: level(0.5, 20), overlap: level(0.5, 20) });
    const { candidate, reason } = chooseNext(
      learner,
      [piece("well", "overlap", "overlap"), piece("weak", UNDERCUT, "spatter", "spatter", "overlap")],
      0.9,
      0,
    );
    expect(candidate.id).toBe("weak");
    expect(reason).toEqual({ kind: "weak", type: UNDERCUT });
  });

  test.each([
    ["as everybody is before anything is known", level(0, 40)],
    ["after two misses", level(-1, 2)],
  ])("a type that the aims do not call weak is no reason to call a piece chosen for a weak one: %s", (_, spatter) => {
    const learner = known({ spatter });
    expect(practiceAims(learner, 0).weak).toEqual([]);
    const { kind } = reasonOf(learner, piece("spatter", "spatter"), 0);
    expect(kind).not.toBe("weak");
  });

  test("what is due comes before what is not", () => {
    const types = { sagging: level(0.5, 40), "surface-pore": level(0.5, 40) };
    const learner = known(types, { due: { sagging: { days: 3, lastAt: 0 }, "surface-pore": { days: 30, lastAt: 0 } } });
    const choice = chooseNext(learner, [piece("early", "surface-pore"), piece("due", "sagging")], 0.9, 9 * DAY);
    expect(choice).toMatchObject({ candidate: { id: "due" }, reason: { kind: "due", type: "sagging" } });
  });

  test("too hard and too easy ones are left out; if all are, the nearest is taken and says so", () => {
    const learner = known({ spatter: level(0, 50) });
    const at = (id: string, difficulty: number): Candidate => ({ id, indications: [{ type: "spatter", difficulty }] });
    expect(chooseNext(learner, [at("hard", 1), at("fits", -1.5), at("easy", -4)], 0.9, 0)).toMatchObject({
      candidate: { id: "fits" },
      isFitting: true,
    });
    expect(chooseNext(learner, [at("hard", 1), at("nearest", -0.9), at("easy", -4)], 0.9, 0)).toMatchObject({
      candidate: { id: "nearest" },
      isFitting: false,
    });
  });

  test("look-alikes together are worth more, all else being equal", () => {
    const types = { [UNDERCUT]: level(0.5, 40), "intermittent-undercut": level(0.5, 40), sagging: level(0.5, 40) };
    const { candidate } = chooseNext(
      known(types),
      [piece("apart", UNDERCUT, "sagging"), piece("alike", UNDERCUT, "intermittent-undercut")],
      0.9,
      0,
    );
    expect(candidate.id).toBe("alike");
  });

  test("15 to 30 % of the pieces are clean over a long time, and nobody can tell when", () => {
    const random = randomStream("clean pieces");
    let learner = NEW_LEARNER;
    const gaps = new Set<number>();
    let [clean, gap] = [0, 0];
    for (let n = 0; n < 400; n++) {
      const { candidate } = chooseNext(learner, [piece("p", "spatter", "overlap"), CLEAN], random.uniform(0, 1), 0);
      if (n < 3) expect(candidate.id).toBe("p");
      const isClean = candidate.id === "clean";
      clean += Number(isClean);
      if (isClean) gaps.add(gap);
      gap = isClean ? 0 : gap + 1;
      learner = {
        ...learner,
        recent: [...learner.recent, isClean ? [] : (["spatter"] as const)].slice(-10) as Learner["recent"],
      };
    }
    expect(clean / 400).toBeGreaterThan(NEXT.clean.low);
    expect(clean / 400).toBeLessThan(NEXT.clean.high);
    expect(gaps.size).toBeGreaterThan(4);
  });

  test("aims tell the learner's weak and due types, whatever is on the next piece", () => {
    const learner = known(
      { [UNDERCUT]: level(-0.6, 20), overlap: level(-0.2, 9), spatter: level(1, 20), sagging: level(-2, 1) },
      { due: { spatter: { days: 3, lastAt: 0 } } },
    );
    expect(practiceAims(learner, 4 * DAY)).toEqual({ weak: [UNDERCUT, "overlap"], due: ["spatter"], observations: 60 });
    expect(learnerSchema.parse(learner)).toEqual(learner);
  });
});

/** Practice of learners with one type that they are much worse at, pieces chosen by the model or drawn at random. */
function season(how: "chosen" | "random" | "random-of-fitting", learners: number, pieces: number) {
  const types = typesOf(12);
  let [finds, indications, untilKnown, known] = [0, 0, 0, 0];
  let fitting = 0;
  for (let n = 0; n < learners; n++) {
    const random = randomStream(`season ${n}`);
    const drawn = drawLearner(random, types);
    const weakest = types[n % types.length];
    const learner = {
      ...drawn,
      types: new Map([...drawn.types].map(([type, s]) => [type, type === weakest ? -1.8 : s])),
    };
    let model = NEW_LEARNER;
    let first: number | null = null;
    for (let piece = 0; piece < pieces; piece++) {
      const candidates = Array.from({ length: 30 }, (_, i) =>
        drawCandidate(random.child(`${piece} ${i}`), `${i}`, types),
      );
      const choice = chooseNext(model, candidates, 0.9, piece * DAY);
      const fits = candidates.filter((one) => chooseNext(model, [one], 0.9, 0).isFitting);
      const candidate =
        how === "chosen" ? choice.candidate : ((how === "random-of-fitting" ? fits[0] : undefined) ?? candidates[0]);
      const after = practise(model, learner, candidate, piece * DAY, random.child(`finds ${piece} ${how}`));
      model = after.learner;
      // the first pieces go into getting to know the learner
      if (piece >= 5) {
        finds += after.finds;
        indications += candidate.indications.length;
        fitting += Number(choice.isFitting);
      }
      const isKnown = practiceAims(model, 0).weak[0] === weakest;
      if (isKnown && first === null) first = piece + 1;
    }
    untilKnown += first ?? pieces;
    known += Number(practiceAims(model, 0).weak[0] === weakest);
  }
  return {
    success: finds / indications,
    fitting: fitting / (learners * (pieces - 5)),
    untilKnown: untilKnown / learners,
    known: known / learners,
  };
}

describe("adaptive practice of 120 simulated learners over 30 pieces", () => {
  const adaptive = season("chosen", 120, 30);
  const random = season("random", 120, 30);
  const equallyHard = season("random-of-fitting", 120, 30);

  test("holds success between 75 and 88 %", () => {
    expect(adaptive.success).toBeGreaterThan(0.75);
    expect(adaptive.success).toBeLessThan(0.88);
  });

  test("knows the weakest type sooner than pieces drawn at random do", () => {
    expect(adaptive.untilKnown).toBeLessThan(random.untilKnown);
    expect(adaptive.untilKnown).toBeLessThan(equallyHard.untilKnown);
    expect(adaptive.known).toBeGreaterThan(random.known);
  });
});
