import { beforeAll, describe, expect, it } from "vitest";
import { CLUTTER, type Clutter } from "@/lib/imperfections";
import type { ClutterItem, MadeFace } from "@/lib/specimen";
import { generateFace } from "@/lib/specimen/generate";
import { type Finished, measureOverlap, measureToeGroove } from "@/lib/specimen/measure";
import { drawRecipe } from "@/lib/specimen/recipe";
import type { FeatureRequest } from "@/lib/specimen/work";
import type { Face, Process } from "@/lib/weld";
import { recipeWith } from "./support/asked-face";
import { toeOf } from "./support/plain-loops";

/** One of each kind and shape, and three sizes of each: the smallest, a usual one, one beyond what the recipes ask. */
const ASKED: readonly (readonly [
  kind: Clutter,
  variant: string | undefined,
  length: number,
  sizes: readonly number[],
])[] = [
  ["chalk-mark", "stroke", 14, [0.4, 0.8, 1.2]],
  ["chalk-mark", "circle", 10, [0.4, 0.8, 1.2]],
  ["pen-mark", "line-across", 4, [0.4, 0.8, 1.2]],
  ["scratch", "along", 15, [0.02, 0.04, 0.3]],
  ["scratch", "across", 12, [0.02, 0.04, 0.3]],
  ["scratch", "chain", 15, [0.02, 0.04, 0.3]],
  ["mill-scale-edge", undefined, 17, [0.02, 0.035, 0.2]],
  ["rust-patch", undefined, 9, [0.4, 0.8, 1.2]],
  ["tight-toe", undefined, 16, [0.4, 0.8, 1.2]],
  ["coarse-ripple", undefined, 17, [0.8, 1.3, 1.8]],
  ["removed-spatter", undefined, 15, [0.6, 0.9, 1.4]],
  ["glass-spots", undefined, 14, [0.8, 1.3, 2]],
];
/** Every one has a stretch of its own along the weld, mm. */
const FIRST = 15;
const STRETCH = 270 / ASKED.length;
const stretchOf = (n: number): readonly [number, number] => [FIRST + n * STRETCH - 3, FIRST + (n + 1) * STRETCH - 3];

/** Every process, both faces, every size. */
const MADE: readonly (readonly [process: Process, face: Face, sizes: readonly number[]])[] = [
  ["111", "cap", [0, 2]],
  ["135", "cap", [2]],
  ["136", "root", [2]],
  ["141", "cap", [0, 1]],
];

const requestsOf = (face: Face, size: number): FeatureRequest[] =>
  ASKED.map(([type, variant, length, sizes], n) => ({
    id: `${face}/${type}/${n}`,
    type,
    x: stretchOf(n)[0] + (STRETCH - length) / 2,
    length,
    side: n % 2 === 0 ? -1 : 1,
    severity: sizes[size],
    ...(variant && { variant }),
  }));

interface Made {
  readonly name: string;
  readonly clean: MadeFace;
  readonly cluttered: MadeFace;
}

/** Differences in height, mm, and in colour, 0 to 255, of every pixel of a stretch of the strip. */
function forEachChange(
  made: Made,
  n: number,
  visit: (x: number, y: number, height: number, colour: number) => void,
): void {
  const before = made.clean.surface.strip;
  const after = made.cluttered.surface.strip;
  const { columns, rows } = before.grid;
  const [from, to] = stretchOf(n);
  for (let j = 0; j < rows; j++)
    for (let i = Math.ceil(from * 8); i < to * 8; i++) {
      const k = j * columns + i;
      let colour = 0;
      for (let c = 3 * k; c < 3 * k + 3; c++) colour = Math.max(colour, Math.abs(after.albedo[c] - before.albedo[c]));
      visit((i + 0.5) / 8, (j + 0.5) / 8 - 26, after.height[k] - before.height[k], colour);
    }
}

function itemOf(made: Made, n: number): ClutterItem | undefined {
  const [from, to] = stretchOf(n);
  return made.cluttered.clutter.find(
    ({ kind, start, end }) => kind === ASKED[n][0] && start + end > 2 * from && start + end < 2 * to,
  );
}

/** What the measuring code gets to see of a face, its toes found by plain loops every millimetre. */
function finishedOf({ surface }: MadeFace, from: number): Finished {
  const { grid, height } = surface.strip;
  const toes = ([-1, 1] as const).map((side) => {
    const known = Array.from({ length: 300 }, (_, n) => toeOf(surface, side, n + 0.5, side * from));
    return Float32Array.from({ length: grid.columns }, (_, i) => known[Math.floor(i / 8)]);
  });
  return { strip: { grid, z: height }, toeMinus: toes[0], toePlus: toes[1] };
}

/** Deepest groove and widest overlap that the measuring code finds along both toes, mm. */
function measuredAlongToes(face: Finished, n: number): { groove: number; overlap: number } {
  const [from, to] = stretchOf(n);
  const sides = ([-1, 1] as const).map((side) => {
    const search = { side, range: { from, to } };
    return {
      groove: measureToeGroove(face, { ...search, threshold: 0.05, bridge: 1.5 })?.size ?? 0,
      overlap: measureOverlap(face, { ...search, threshold: 0.4, bridge: 2 })?.size ?? 0,
    };
  });
  return {
    groove: Math.max(...sides.map(({ groove }) => groove)),
    overlap: Math.max(...sides.map(({ overlap }) => overlap)),
  };
}

/** From which difference in colour a pixel was touched at all; from half of the largest one on nobody overlooks it. */
const TOUCHED = 8;
/** An old scratch has the colour of the plate: from this difference in height on its relief is seen, mm. */
const RELIEF = 0.01;

/** These change how the weld is laid; all others only lie on it. */
const LAID: readonly Clutter[] = ["tight-toe", "coarse-ripple"];
/** Nothing that lies on a face is as thick or as deep as the shallowest thing that is measured there (a mark on the plate), mm. */
const LEAST_MEASURED = 0.08;

describe("clutter", () => {
  const faces: Made[] = [];
  beforeAll(() => {
    for (const [process, face, sizes] of MADE) {
      const drawn = drawRecipe(`clutter ${process}`);
      const recipe = { ...drawn, joint: { ...drawn.joint, process } };
      const clean = generateFace(recipeWith(recipe, face, []), face);
      for (const size of sizes) {
        const cluttered = generateFace(recipeWith(recipe, face, requestsOf(face, size)), face);
        faces.push({ name: `${process} ${face} size ${size}`, clean, cluttered });
      }
    }
  }, 400_000);

  it("of every kind is to be seen and is listed, but is no item of the truth", () => {
    const kinds = new Set(ASKED.map(([kind]) => kind));
    expect([...kinds].sort()).toEqual([...CLUTTER].sort());
    for (const { name, clean, cluttered } of faces) {
      const sketch = ({ items }: MadeFace) =>
        items.map(({ type, neutral, start }) => [type, neutral, Math.round(start / 4)]);
      expect(sketch(cluttered), name).toEqual(sketch(clean));
      cluttered.items.forEach((item, n) => {
        expect(Math.abs((item.size ?? 0) - (clean.items[n].size ?? 0)), `${name}: ${item.type}`).toBeLessThan(0.04);
      });
    }
    const listed = faces.reduce((sum, made) => sum + ASKED.filter((_, n) => itemOf(made, n)).length, 0);
    // the faintest of some kinds may vanish on a rough surface
    expect(listed / (faces.length * ASKED.length)).toBeGreaterThan(0.9);
    // pure gas leaves little oxide in a toe, and what is planted still has to be there
    const toe = ASKED.findIndex(([kind]) => kind === "tight-toe");
    for (const made of faces.filter(({ name }) => name.startsWith("141")))
      expect(itemOf(made, toe)?.kind, made.name).toBe("tight-toe");
    for (const made of faces.filter(({ name }) => name.endsWith("2")))
      ASKED.forEach(([kind], n) => {
        expect(itemOf(made, n)?.kind, `${made.name}: ${kind} ${n}`).toBe(kind);
      });
  });

  it("is listed where the pixels really changed", () => {
    for (const made of faces)
      ASKED.forEach(([kind, variant], n) => {
        const item = itemOf(made, n);
        if (!item || LAID.includes(kind)) return;
        const what = `${made.name}: ${kind} ${variant ?? ""}`;
        const rows = item.outline.map(([, y]) => y);
        const low = Math.min(...rows);
        const high = Math.max(...rows);
        // an outline goes by steps of a millimetre and a border by what is just seen
        const margin = 1.75;
        let largest = 0;
        forEachChange(made, n, (_x, _y, _height, colour) => {
          largest = Math.max(largest, colour);
        });
        let seen = 0;
        let inside = 0;
        const box = { x0: 300, x1: 0, y0: 75, y1: -75 };
        forEachChange(made, n, (x, y, height, colour) => {
          if (colour < TOUCHED && Math.abs(height) < RELIEF) return;
          if (colour > largest / 2) seen++;
          if (colour > largest / 2 && x > item.start - 1 && x < item.end + 1 && y > low - 1 && y < high + 1) inside++;
          box.x0 = Math.min(box.x0, x);
          box.x1 = Math.max(box.x1, x);
          box.y0 = Math.min(box.y0, y);
          box.y1 = Math.max(box.y1, y);
        });
        expect.soft(inside / seen, what).toBeGreaterThan(0.8);
        expect.soft(item.start, what).toBeGreaterThan(box.x0 - margin);
        expect.soft(item.end, what).toBeLessThan(box.x1 + margin);
        expect.soft(low, what).toBeGreaterThan(box.y0 - margin);
        expect.soft(high, what).toBeLessThan(box.y1 + margin);
      });
  });

  it("that lies on the face is thinner and shallower than anything that is measured", () => {
    for (const made of faces)
      ASKED.forEach(([kind, variant], n) => {
        if (LAID.includes(kind)) return;
        let most = 0;
        forEachChange(made, n, (_x, _y, height) => {
          most = Math.max(most, Math.abs(height));
        });
        expect(most, `${made.name}: ${kind} ${variant ?? ""}`).toBeLessThan(LEAST_MEASURED);
      });
  });

  it("that changes how the weld is laid makes no groove and no overlap, and leaves the bead as high as it was", () => {
    const cap = faces.filter(({ name }) => name.includes("cap"));
    for (const made of cap) {
      const reach = 16;
      const before = finishedOf(made.clean, reach);
      const after = finishedOf(made.cluttered, reach);
      ASKED.forEach(([kind], n) => {
        if (!LAID.includes(kind)) return;
        const found = measuredAlongToes(after, n);
        const usual = measuredAlongToes(before, n);
        expect(found.groove, `${made.name}: ${kind}`).toBeLessThan(Math.max(0.1, usual.groove + 0.03));
        expect(found.overlap, `${made.name}: ${kind}`).toBe(usual.overlap);
        let sum = 0;
        let count = 0;
        let most = 0;
        forEachChange(made, n, (_x, y, height) => {
          if (Math.abs(y) > 6) return;
          sum += height;
          count++;
          most = Math.max(most, Math.abs(height));
        });
        expect(Math.abs(sum / count), `${made.name}: ${kind}`).toBeLessThan(0.03);
        expect(most, `${made.name}: ${kind}`).toBeLessThan(0.35);
      });
    }
  });
});
