import { beforeAll, describe, expect, it } from "vitest";
import { CLUTTER, imperfection, isImperfectionType } from "@/lib/imperfections";
import { BLUEPRINTS, type ButtTruth, generateSpecimen, meetsBlueprint, truthSchema } from "@/lib/specimen";
import type { FeatureRequest } from "@/lib/specimen/work";
import { FACES } from "@/lib/weld";

/** So many take as long as a tenth of all tests; a thousand are made by `npm run bench -- --long`. */
const SEEDS = 18;

/** Under which type the truth lists a decoy. */
const LISTED_AS: Readonly<Record<string, string>> = {
  "sound-stop": "poor-restart",
  "light-grinding": "grinding-mark",
  "shallow-undercut": "continuous-undercut",
  "dressed-stop": "grinding-mark",
  "fine-pore": "surface-pore",
};
/** A crater left open in them, so that the restart beside it may be a poor one. */
const CRATERS = new Set<string>(["crater-pipe", "crater-crack"]);
const DECOYS = new Set(Object.keys(LISTED_AS));
const LITTER = new Set<string>(CLUTTER);

describe("specimens at full resolution", () => {
  const made: { truth: ButtTruth; requests: readonly FeatureRequest[]; seed: string }[] = [];
  beforeAll(() => {
    for (let n = 0; n < SEEDS; n++) {
      const seed = `forty-${n}`;
      const { truth, recipe } = generateSpecimen(seed);
      made.push({ seed, truth, requests: FACES.flatMap((face) => recipe.faces[face].requests) });
    }
  }, 3_600_000);

  it("gives truths that the schema takes, numbered in order of place", () => {
    for (const { truth } of made) {
      expect(truthSchema.safeParse(truth).error).toBeUndefined();
      for (const face of FACES) {
        const items = truth.items.filter((item) => item.face === face);
        expect(items.map((item) => item.id)).toEqual(items.map((_, n) => `${face}-${n + 1}`));
        for (let n = 1; n < items.length; n++) expect(items[n].start).toBeGreaterThanOrEqual(items[n - 1].start);
      }
    }
  });

  it("keeps every item and its outline on the plate", () => {
    for (const { truth, seed } of made) {
      const { length, width } = truth.joint;
      for (const item of truth.items) {
        const points = [...item.outline, item.worst, [item.start, item.across], [item.end, item.across]];
        for (const [x, y] of points) {
          expect(x, `${seed} ${item.id}`).toBeGreaterThanOrEqual(-0.5);
          expect(x, `${seed} ${item.id}`).toBeLessThanOrEqual(length + 0.5);
          expect(Math.abs(y), `${seed} ${item.id}`).toBeLessThanOrEqual(width / 2);
        }
      }
    }
  });

  it("records what the catalogue records, and nothing smaller", () => {
    for (const { truth, seed } of made) {
      for (const item of truth.items.filter(({ neutral }) => !neutral)) {
        const entry = imperfection(item.type);
        if (item.size !== null) expect(item.size, `${seed} ${item.id}`).toBeGreaterThanOrEqual(entry.recordedFrom);
        if (entry.extent === "point") expect(item.end).toBe(item.start);
        else expect(item.end - item.start, `${seed} ${item.id}`).toBeGreaterThanOrEqual(entry.recordedLength);
      }
    }
  });

  it("finds nearly everything that was planted, where it was planted", () => {
    let planted = 0;
    let found = 0;
    for (const { truth, requests } of made) {
      for (const request of requests.filter(({ type }) => !DECOYS.has(type) && !LITTER.has(type))) {
        planted++;
        const middle = request.x + request.length / 2;
        const isFound = truth.items.some(
          (item) =>
            !item.neutral &&
            item.type === request.type &&
            request.id.startsWith(item.face) &&
            Math.abs((item.start + item.end) / 2 - middle) < 8,
        );
        if (isFound) found++;
      }
    }
    expect(found / planted).toBeGreaterThan(0.95);
  });

  it("holds nothing but what was planted, how the plates stand and ordinary stops", () => {
    for (const { truth, requests, seed } of made) {
      for (const item of truth.items) {
        if (item.type.endsWith("-misalignment") || (item.type === "poor-restart" && item.neutral)) continue;
        const isAsked = requests.some(
          (request) =>
            ((LISTED_AS[request.type] ?? request.type) === item.type ||
              (item.type === "poor-restart" && CRATERS.has(request.type))) &&
            request.id.startsWith(item.face) &&
            item.start < request.x + request.length + 10 &&
            item.end > request.x - 10,
        );
        expect(isAsked, `${seed} ${item.id} ${item.type}`).toBe(true);
      }
    }
  });

  it("lists the restart beside most open craters: one that left no hump is none", () => {
    const unlisted: string[] = [];
    let craters = 0;
    for (const { truth, seed } of made) {
      for (const crater of truth.items.filter((item) => CRATERS.has(item.type))) {
        craters++;
        const isListed = truth.items.some(
          (item) =>
            item.type === "poor-restart" && item.face === crater.face && Math.abs(item.start - crater.start) < 18,
        );
        if (!isListed) unlisted.push(`${seed} ${crater.id}`);
      }
    }
    expect(craters).toBeGreaterThan(4);
    expect(unlisted.length / craters, unlisted.join(" ")).toBeLessThan(0.4);
  });

  it("lists misalignment only over a length that is recorded", () => {
    const steps = made.flatMap(({ truth }) => truth.items.filter(({ type }) => type === "linear-misalignment"));
    expect(steps.filter(({ neutral }) => neutral)).toEqual([]);
  });

  it("never charges a decoy", () => {
    for (const { truth, requests } of made) {
      for (const decoy of requests.filter(({ type }) => DECOYS.has(type))) {
        const items = truth.items.filter(
          (item) =>
            item.type === LISTED_AS[decoy.type] &&
            decoy.id.startsWith(item.face) &&
            Math.abs(item.across) > 0 &&
            Math.sign(item.across) === Math.sign(decoy.y ?? decoy.side) &&
            Math.abs((item.start + item.end) / 2 - decoy.x - decoy.length / 2) < 8,
        );
        for (const item of items) expect(item.neutral).toBe(true);
      }
    }
  });

  it("meets the blueprint for practice on either face, and leaves twelve or more to be found", () => {
    for (const { truth, seed } of made) {
      for (const face of FACES) {
        const on = <T extends { readonly face: string }>(all: readonly T[]) => all.filter((one) => one.face === face);
        const section = { face, joint: truth.joint, items: on(truth.items), clutter: on(truth.clutter) };
        expect(meetsBlueprint(section, BLUEPRINTS.practice.sections[face]), `${seed} ${face}`).toEqual({ ok: true });
      }
      expect(truth.items.filter(({ neutral }) => !neutral).length, seed).toBeGreaterThanOrEqual(12);
    }
  });

  // that recipes ask for every type is held by recipes.test.ts over many more
  it("shows every type that is asked for", () => {
    const asked = made
      .flatMap(({ requests }) => requests.map(({ type }) => type))
      .filter((type) => isImperfectionType(type));
    const seen = new Set<string>(made.flatMap(({ truth }) => truth.items.filter((i) => !i.neutral).map((i) => i.type)));
    expect(new Set(asked).size).toBeGreaterThan(30);
    expect([...new Set(asked)].filter((type) => !seen.has(type))).toEqual([]);
  });
});
