import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { isFilletOf } from "@/app/_server/piece-blueprint";
import { readBlueprint } from "@/app/_server/use-cases/read-blueprint";
import { drawCleanFillet } from "@/lib/specimen";
import { NOW, testSource } from "./workshop";

const tutor: Caller = { actor: { id: "tutor", name: "tutor", role: "tutor", hasOneTimeCode: false }, clock: () => NOW };
const source = testSource();
const DRAWN = { blueprint: "assessment", process: "drawn", position: "drawn", thickness: "drawn" };

async function view(section: string, piece: object) {
  const read = await readBlueprint(tutor, { section, piece }, source);
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.blueprint;
}

describe("a plate's blueprint", () => {
  test("has its table, and is as hard as it says: what both faces are to be expected at, together", async () => {
    const { faces, refusal, forecast } = await view("plate", DRAWN);
    expect(faces.map(({ face, indications, cleanLength }) => [face, indications, cleanLength])).toEqual([
      ["cap", [7, 7], 60],
      ["root", [5, 5], 100],
    ]);
    expect(faces[0].lines[0]).toEqual({ count: 1, families: ["crack"], types: [], size: "medium", place: "any" });
    expect(refusal).toBeNull();
    // between what is asked of the faces, 67.5 and 69, give or take the one mark that a piece may be off
    expect(forecast?.mark.least).toBeGreaterThan(66.5);
    expect(forecast?.mark.most).toBeLessThan(70);
    expect(forecast?.pieces).toBe(8);
    // 12 independent finds of about equal weight at three in four: 100 * 0.92 * sqrt(0.25 * 0.75 / 12) = 11.5
    expect(forecast?.sem).toBeGreaterThan(9);
    expect(forecast?.sem).toBeLessThan(13);
  });

  test("with nothing to find has no lines, and nothing but false calls to go wrong", async () => {
    const { faces, forecast } = await view("plate", { ...DRAWN, blueprint: "clean", process: "141", thickness: 8 });
    expect(faces.map(({ lines, indications }) => [lines, indications])).toEqual([
      [[], [0, 0]],
      [[], [0, 0]],
    ]);
    expect(forecast?.mark.mean).toBeGreaterThan(80);
  });

  test("that asks for types has a line for each, and says which it cannot have", async () => {
    const types = { includes: ["overlap", "root-fusion"], among: "any" };
    const { faces, refusal, unmet, forecast } = await view("plate", { ...DRAWN, blueprint: "practice", types });
    const asked = faces.map(({ lines }) => lines.flatMap((line) => line.types));
    expect(asked).toEqual([["overlap"], ["root-fusion"]]);
    expect(faces.map(({ indications }) => indications[0])).toEqual([7, 5]);
    expect(refusal).toBeNull();
    expect(unmet).toBeNull();
    expect(forecast?.pieces).toBe(8);
    const none = await view("plate", {
      ...DRAWN,
      process: "111",
      types: { includes: ["tungsten-spatter"], among: "any" },
    });
    // pieces are made all the same, without it
    expect(none.unmet).toMatch(/^tungsten spatter never comes/);
    expect(none.forecast?.pieces).toBe(8);
  });

  test("is refused by field where a paper could not have it", async () => {
    const read = await readBlueprint(
      tutor,
      { section: "plate", piece: { ...DRAWN, position: "PB", thickness: 12.5 } },
      source,
    );
    expect(read).toMatchObject({ ok: false, code: "invalid-input" });
    expect(await readBlueprint(tutor, { section: "pipe", piece: DRAWN }, source)).toMatchObject({
      code: "invalid-input",
    });
  });
});

test("a look that was given up is not kept, and is worked out for whoever looks again; what is kept is told at once", async () => {
  const asked = { section: "fillet", piece: { ...DRAWN, blueprint: "practice", process: "135" } };
  const leaving = new AbortController();
  const looks: (AbortSignal | undefined)[] = [];
  const foresee: typeof source.foresee = async (order, look) => {
    looks.push(look);
    look?.throwIfAborted();
    return source.foresee(order);
  };
  leaving.abort(new Error("typed on"));
  await expect(readBlueprint(tutor, asked, { ...source, foresee }, leaving.signal)).rejects.toThrow("typed on");
  const still = new AbortController().signal;
  for (const _ of [1, 2]) {
    expect(await readBlueprint(tutor, asked, { ...source, foresee }, still)).toMatchObject({ ok: true });
  }
  expect(looks).toEqual([leaving.signal, still]);
});

describe("a fillet's blueprint", () => {
  test("says from how many to how many", async () => {
    const { faces, forecast } = await view("fillet", { ...DRAWN, blueprint: "practice" });
    expect(faces).toEqual([{ face: "fillet", lines: [], indications: [4, 6], cleanLength: null, harmless: [1, 3] }]);
    expect(forecast?.pieces).toBe(8);
  });

  test("says how many indications it has to do without where too few types alone may come", async () => {
    const types = { includes: ["overlap"], among: ["slag-residue"] };
    const { faces, fewer, unmet } = await view("fillet", { ...DRAWN, blueprint: "practice", types });
    expect([faces[0].indications, fewer, unmet]).toEqual([[2, 2], 2, null]);
    const { fewer: none } = await view("fillet", { ...DRAWN, blueprint: "practice" });
    expect(none).toBe(0);
  });

  test("can be had with a joint that is fixed in everything", async () => {
    const piece = { blueprint: "practice", process: "135", position: "PF", thickness: 11 } as const;
    expect((await view("fillet", piece)).forecast?.pieces).toBe(8);
    const seeds = Array.from({ length: 3000 }, (_, n) => `fixed ${n}`).filter((seed) => isFilletOf(piece, seed));
    expect(seeds.length).toBeGreaterThan(1);
    for (const seed of seeds) {
      expect(drawCleanFillet(seed).joint).toMatchObject({ process: "135", position: "PF", baseThickness: 11 });
    }
  });
});
