import { describe, expect, test } from "vitest";
import { IMPERFECTION_TYPES, type ImperfectionType, likeness } from "@/lib/imperfections";
import { type Learner, NEW_LEARNER, type Skill, wishesFor } from "@/lib/progress";
import { randomStream } from "@/lib/random";

const DAY = 86_400_000;
const PLATE: readonly ImperfectionType[] = IMPERFECTION_TYPES.filter((type) => !type.startsWith("excessive"));

function drawer(name: string) {
  const random = randomStream(name);
  return () => random.uniform(0, 1);
}

const level = (value: number, n: number) => ({ value, n, information: n * 0.16 });
const known = (general: number, types: Skill["types"], more: Partial<Learner> = {}): Learner => ({
  ...NEW_LEARNER,
  found: { general: level(general, 60), types },
  recent: [["spatter"], ["overlap"], ["spatter"], ["overlap"]],
  ...more,
});

describe("what candidates are asked to have", () => {
  test("a new learner begins with two types, much to find, nothing else and never a clean piece", () => {
    const wishes = wishesFor(NEW_LEARNER, PLATE, 24, drawer("new"), 0);
    expect(wishes).toHaveLength(24);
    for (const { isClean, includes, among, isDense } of wishes) {
      expect(isClean).toBe(false);
      expect(isDense).toBe(true);
      expect(includes).toHaveLength(2);
      expect([...among].sort()).toEqual([...includes].sort());
    }
    // not the same two for everybody
    expect(new Set(wishes.map(({ includes }) => [...includes].sort().join())).size).toBeGreaterThan(3);
  });

  test("adds at most two new types at a time, from those that come next, and only what such a piece can have", () => {
    const types = { "surface-pore": level(0.4, 9), spatter: level(0.4, 9), "stray-arc": level(0.4, 9) };
    const wishes = wishesFor(known(0.5, types), PLATE, 60, drawer("adds"), 0);
    const counts = new Set<number>();
    const added = new Set<ImperfectionType>();
    for (const { includes, among } of wishes) {
      const fresh = among.filter((type) => !(type in types));
      counts.add(fresh.length);
      for (const type of fresh) added.add(type);
      expect(includes.every((type) => among.includes(type))).toBe(true);
      expect(fresh.every((type) => includes.includes(type))).toBe(true);
    }
    expect(counts).toEqual(new Set([0, 1, 2]));
    expect(added.size).toBeLessThanOrEqual(5);
    expect([...added].every((type) => PLATE.includes(type))).toBe(true);
  });

  test("asks for what is weak or due more often than for the rest, and forgets nothing", () => {
    const types = Object.fromEntries(PLATE.slice(0, 12).map((type) => [type, level(0.6, 20)]));
    const [weak, due] = [PLATE[3], PLATE[7]];
    const learner = known(0.6, { ...types, [weak]: level(-1.5, 20) }, { due: { [due]: { days: 3, lastAt: 0 } } });
    const wishes = wishesFor(learner, PLATE.slice(0, 12), 400, drawer("weak"), 6 * DAY);
    const asked = (type: ImperfectionType) => wishes.filter(({ includes }) => includes.includes(type)).length;
    const others = PLATE.slice(0, 12).filter((type) => type !== weak && type !== due);
    for (const other of others) {
      expect(asked(other)).toBeGreaterThan(0);
      expect(asked(weak)).toBeGreaterThan(1.5 * asked(other));
      expect(asked(due)).toBeGreaterThan(1.5 * asked(other));
    }
  });

  test("mixes types that look alike into a good part of the pieces", () => {
    const types = Object.fromEntries(
      (["continuous-undercut", "intermittent-undercut", "spatter", "stray-arc"] as const).map((type) => [
        type,
        level(0.6, 20),
      ]),
    );
    const wishes = wishesFor(known(0.6, types), PLATE, 200, drawer("alike"), 0).filter(({ isClean }) => !isClean);
    const mixed = wishes.filter(({ includes }) =>
      includes.some((one, n) => includes.slice(n + 1).some((other) => likeness(one, other) === 0.5)),
    );
    expect(mixed.length).toBeGreaterThan(0.3 * wishes.length);
  });

  test("asks whoever finds little for what is plain to see, and whoever finds much for what is not", () => {
    const types = { spatter: level(0, 20), "surface-pore": level(0, 20) };
    const looks = (general: number) =>
      wishesFor(known(general, types), PLATE, 30, drawer("looks"), 0).map(({ look }) => look);
    expect(new Set(looks(0.5))).toEqual(new Set(["plain", "mixed", "fine"]));
    expect(looks(-1).filter((look) => look === "plain").length).toBeGreaterThan(15);
    expect(looks(-1)).not.toContain("fine");
    expect(looks(2.5)).not.toContain("plain");
  });

  test("one is for a clean piece once the learner has warmed up, and the same chance gives the same wishes", () => {
    const learner = known(0.6, { spatter: level(0, 20) });
    const wishes = wishesFor(learner, PLATE, 24, drawer("clean"), 0);
    expect(wishes.filter(({ isClean }) => isClean)).toHaveLength(1);
    expect(wishesFor(learner, PLATE, 24, drawer("clean"), 0)).toEqual(wishes);
  });
});
