import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EYE_DRILLS, EYE_ROUNDS, type EyeDrill, lengthOf, NAMINGS, type Naming, WINDOW_MARGIN } from "@/lib/eye";
import {
  aimsOf,
  askedOf,
  canAsk,
  cutOf,
  drawRound,
  type EyeTask,
  eyeTaskSchema,
  isEnough,
  judge,
  materialOf,
  NoBareWindow,
  type RoundOrder,
  targetOf,
} from "@/lib/eye-tasks";
import { IMPERFECTION_TYPES, type ImperfectionType, likeness, typesOn } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import type { ButtTruth } from "@/lib/specimen";
import { FACES } from "@/lib/weld";
import { strewnPiece } from "../support/eye-material";

const PIECES = ["one", "two", "three"].map(strewnPiece);
const MATERIAL = materialOf(PIECES);
const AIMS = aimsOf({ types: {} }, []);

const order = (drill: EyeDrill, naming: Naming = "four", isTimed = true): RoundOrder => ({
  drill,
  naming,
  isTimed,
  aims: AIMS,
  lately: new Set(),
});

/** Rounds of any drill; `what` is held for each of their tasks. */
function eachTask(what: (task: EyeTask) => void, runs = 60) {
  const round = fc.record({
    name: fc.string({ minLength: 1, maxLength: 12 }),
    drill: fc.constantFrom(...EYE_DRILLS),
    naming: fc.constantFrom(...NAMINGS),
  });
  fc.assert(
    fc.property(round, ({ name, drill, naming }) => {
      for (const task of drawRound(randomStream(name), MATERIAL, order(drill, naming))) what(task);
    }),
    { numRuns: runs },
  );
}

/** Everything on the piece whose outline reaches into a window, worked out from the truth itself. */
function inSight({ specimenId, face, left, middle, length, width }: EyeTask["windows"][number]["at"]) {
  const piece = PIECES.find((one) => one.specimenId === specimenId);
  if (!piece) throw new Error("a window on no piece");
  const isIn = ({ outline }: { readonly outline: readonly (readonly [number, number])[] }) => {
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    return (
      Math.max(...xs) > left &&
      Math.min(...xs) < left + length &&
      Math.max(...ys) > middle - width / 2 &&
      Math.min(...ys) < middle + width / 2
    );
  };
  return piece.truth.items.filter((item) => item.face === face && isIn(item));
}

it("keeps outlines to a hundredth of a millimetre, and in no more signs than that takes", () => {
  eachTask(({ windows }) => {
    for (const { things } of windows) {
      for (const mm of things.flatMap(({ outline }) => outline.flat())) expect(`${mm}`).toMatch(/^-?\d+(\.\d{1,2})?$/);
    }
  }, 10);
});

describe("whatever round is drawn", () => {
  it("has as many tasks as it should, of the kinds that it is of, and the same name draws the same", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.constantFrom(...EYE_DRILLS), (name, drill) => {
        const tasks = drawRound(randomStream(name), MATERIAL, order(drill));
        expect(tasks).toHaveLength(lengthOf(order(drill)));
        for (const { kind } of tasks) expect(EYE_ROUNDS[drill].of).toContain(kind);
        expect(drawRound(randomStream(name), MATERIAL, order(drill))).toEqual(tasks);
      }),
      { numRuns: 40 },
    );
  });

  it("shows in every window the one imperfection that it is about or none, and can be kept as it is", () => {
    eachTask((task) => {
      expect(eyeTaskSchema.parse(task)).toEqual(task);
      const target = targetOf(task);
      task.windows.forEach(({ at, things }, n) => {
        const there = inSight(at).filter(({ neutral }) => !neutral);
        const shown = things.filter(({ what }) => what === "imperfection");
        expect(there.map(({ id }) => id).sort()).toEqual(shown.map(({ id }) => id).sort());
        const isAbout = target?.window === n && target.thing.what === "imperfection";
        if (task.kind !== "pair") expect(there).toHaveLength(isAbout ? 1 : 0);
        expect(there.length).toBeLessThanOrEqual(1);
      });
    });
  });

  it("cuts windows out of the fine strip on its raster, with the metal around them", () => {
    eachTask((task) => {
      for (const { at } of task.windows) {
        const { column, row, columns, rows } = cutOf(at);
        for (const pixels of [column, row, columns, rows]) expect(pixels % 4).toBe(0);
        expect(columns).toBe(8 * (at.length + 2 * WINDOW_MARGIN));
        expect(rows).toBe(8 * (at.width + 2 * WINDOW_MARGIN));
        expect(column).toBeGreaterThanOrEqual(0);
        expect(row).toBeGreaterThanOrEqual(0);
        expect(column + columns).toBeLessThanOrEqual(300 * 8);
        expect(row + rows).toBeLessThanOrEqual(52 * 8);
      }
    });
  });

  it("asks nothing that tells: what is sent is the question, and the same whatever the answer", () => {
    eachTask((task) => {
      const asked = askedOf(task, "opaque", 1);
      expect(Object.keys(asked).sort()).toEqual(["estimate", "id", "kind", "number", "options", "type", "windows"]);
      for (const window of asked.windows) expect(Object.keys(window).sort()).toEqual(["face", "length", "width"]);
      const sent = JSON.stringify(asked);
      const named = IMPERFECTION_TYPES.filter((type) => sent.includes(`"${type}"`));
      if (task.kind === "spot" || (task.kind === "name" && !task.options)) expect(named).toEqual([]);
      for (const { at, things } of task.windows) {
        for (const secret of [at.specimenId, ...things.map(({ id }) => id)]) expect(sent).not.toContain(`"${secret}"`);
      }
    });
  });

  it("offers four names that can be on the face, the right one among them and nothing else that is there", () => {
    eachTask((task) => {
      if (!task.options) return;
      const [{ at, things }] = task.windows;
      expect(new Set(task.options).size).toBe(4);
      for (const type of task.options) expect(typesOn(at.face)).toContain(type);
      const there = things.map(({ name }) => name);
      expect(task.options.filter((type) => there.includes(type))).toEqual([targetOf(task)?.thing.name]);
    });
  });

  it("offers no name that stands out by how many of the others it is like", () => {
    eachTask((task) => {
      const options = task.options ?? [];
      const alike = (one: ImperfectionType) =>
        options.filter((other) => other !== one && likeness(one, other) > 0).length;
      for (const type of options) expect(alike(type)).toBe(alike(options[0]));
    });
  });

  it("asks for nothing that one and the same answer would be right for: neither end is found by the middle", () => {
    eachTask((task) => {
      const told = judge(task, guess(task));
      if (told.right.kind === "ends") {
        const middle = (told.right.from + told.right.to) / 2;
        expect(judge(task, { kind: "ends", from: middle - 0.1, to: middle + 0.1 }).isRight).toBe(false);
      }
      if (told.right.kind === "size" && told.allowed !== null) expect(told.right.value).toBeGreaterThan(told.allowed);
    });
  });

  it("takes what would be right for right, seen from either end of the plate", () => {
    eachTask((task) => {
      const told = judge(task, guess(task));
      expect(judge(task, told.right)).toMatchObject({ isRight: true });
      if (told.right.kind !== "ends") return;
      // worked out anew from the piece, by where the window lies and how it is turned
      const { at, things } = task.windows[0];
      const item = inSight(at).find(({ id }) => id === things.find(({ isTarget }) => isTarget)?.id);
      if (!item) throw new Error("no such item");
      const [from, to] = at.isTurned
        ? [at.left + at.length - item.end, at.left + at.length - item.start]
        : [item.start - at.left, item.end - at.left];
      expect(told.right.from).toBeCloseTo(from, 0);
      expect(told.right.to).toBeCloseTo(to, 0);
    });
  });
});

/** Some answer to a task. */
function guess({ kind }: EyeTask) {
  switch (kind) {
    case "spot":
      return { kind, isThere: true } as const;
    case "name":
      return { kind, type: "surface-pore" } as const;
    case "ends":
      return { kind, from: 1, to: 2 } as const;
    case "size":
      return { kind, value: 1 } as const;
    case "pair":
      return { kind, window: 0 } as const;
  }
}

describe("over many tasks to spot", () => {
  const tasks = Array.from({ length: 60 }, (_, n) =>
    drawRound(randomStream(`many/${n}`), MATERIAL, order("spot")),
  ).flat();
  const isThere = (task: EyeTask) => targetOf(task)?.thing.what === "imperfection";

  it("something is there about every second time, and half of the others tempt", () => {
    const without = tasks.filter((task) => !isThere(task));
    expect(without.length / tasks.length).toBeGreaterThan(0.42);
    expect(without.length / tasks.length).toBeLessThan(0.58);
    const tempting = without.filter((task) => targetOf(task) !== null);
    expect(tempting.length / without.length).toBeGreaterThan(0.3);
    expect(tempting.length / without.length).toBeLessThan(0.7);
  });

  it("it lies anywhere in the window, and not in its middle for being there", () => {
    const places = tasks.filter(isThere).map((task) => {
      const { at } = task.windows[0];
      const thing = targetOf(task)?.thing;
      return thing ? (thing.from + thing.to) / 2 / at.length : Number.NaN;
    });
    for (const [low, high] of [
      [0, 1 / 3],
      [1 / 3, 2 / 3],
      [2 / 3, 1],
    ]) {
      const share = places.filter((place) => place >= low && place < high).length / places.length;
      expect(share).toBeGreaterThan(0.1);
    }
  });
});

it("plates out of line everywhere are no material by themselves, since something would always be there", () => {
  const [{ specimenId, truth }] = PIECES;
  const step = { ...truth.items[0], type: "linear-misalignment" as const, neutral: false };
  // it is listed on the cap alone and is seen on the root as well
  const misaligned = { specimenId, truth: { ...truth, items: [...truth.items, { ...step, face: "cap" as const }] } };
  const stepped = materialOf([misaligned]);
  expect(isEnough(stepped)).toBe(false);
  for (const face of stepped) {
    for (const thing of face.things) {
      expect([canAsk("spot", { face, thing }), canAsk("name", { face, thing })]).toEqual([false, false]);
    }
  }
  expect(isEnough(materialOf([misaligned, PIECES[1]]))).toBe(true);
  expect(isEnough([])).toBe(false);
});

it("where no window is bare, what is sound is among something harmless; where there is none either, it says so", () => {
  const [{ specimenId, truth }] = PIECES;
  const [pore] = truth.items;
  const along = {
    start: 0,
    end: 300,
    across: 0,
    outline: [
      [0, -2],
      [300, -2],
      [300, 2],
      [0, 2],
    ] as const,
  };
  const bothFaces = <Item extends object>(item: Item) => FACES.map((face) => ({ ...item, face, id: `${face}-1` }));
  const found = { ...pore, type: "surface-pore", start: 20, end: 20, across: 0, neutral: false } as const;
  const dot = [
    [19, -1],
    [21, -1],
    [21, 1],
  ] as const;
  const piece = (items: ButtTruth["items"], clutter: ButtTruth["clutter"]) =>
    materialOf([{ specimenId, truth: { ...truth, items, clutter } }]);
  const scratched = piece(bothFaces({ ...found, outline: dot }), bothFaces({ kind: "scratch", ...along } as const));
  const tasks = drawRound(randomStream("crowded"), scratched, order("spot"));
  const without = tasks.filter((task) => targetOf(task)?.thing.what !== "imperfection");
  expect(without.length).toBeGreaterThan(0);
  for (const { windows } of without) expect(windows[0].things.map(({ name }) => name)).toEqual(["scratch"]);
  const undercut = piece(bothFaces({ ...found, ...along, type: "continuous-undercut" } as const), []);
  expect(() => drawRound(randomStream("crowded"), undercut, order("spot"))).toThrow(NoBareWindow);
});

it("what a tutor set is what most of a round is about", () => {
  const there = MATERIAL.flatMap(({ things }) => things.filter(({ what }) => what === "imperfection"));
  const set = there.slice(0, 1).flatMap(({ name }) => IMPERFECTION_TYPES.filter((type) => type === name));
  const rounds = Array.from({ length: 10 }, (_, n) =>
    drawRound(randomStream(`set/${n}`), MATERIAL, { ...order("name"), aims: aimsOf({ types: {} }, set) }),
  ).flat();
  const about = rounds.filter((task) => set.some((type) => targetOf(task)?.thing.name === type));
  expect(about.length / rounds.length).toBeGreaterThan(0.5);
  expect(about.length / rounds.length).toBeLessThan(0.85);
});
