import { describe, expect, it } from "vitest";
import { imperfection } from "@/lib/imperfections";
import type { TruthItem } from "@/lib/specimen";
import type { Face } from "@/lib/weld";
import type { Asked } from "./support/asked-face";
import { type Laying, laidFace } from "./support/laid-face";

/** Small, middling and large of what the builders read as size, and of the length asked; mm. */
interface Kind {
  readonly type: Asked["type"];
  readonly variant?: string;
  readonly severity: readonly [number, number, number];
  readonly length?: readonly [number, number, number];
}

const KINDS: Readonly<Record<Face, readonly Kind[]>> = {
  cap: [
    { type: "fine-pore", severity: [0.22, 0.3, 0.42] },
    { type: "surface-pore", severity: [0.6, 1.2, 2.4] },
    { type: "linear-porosity", severity: [0.5, 0.9, 1.6], length: [8, 12, 17] },
    { type: "surface-porosity", severity: [0.5, 0.9, 1.4], length: [9, 13, 18] },
    { type: "clustered-porosity", severity: [0.6, 1.1, 1.8], length: [7, 11, 16] },
    { type: "elongated-cavity", severity: [0.7, 1.2, 2], length: [3.5, 6.5, 11] },
    { type: "worm-hole", variant: "single", severity: [0.5, 0.8, 1.2], length: [5, 9, 16] },
    { type: "longitudinal-crack", severity: [0.09, 0.14, 0.24], length: [10, 13, 17] },
    { type: "transverse-crack", severity: [3.4, 6, 10] },
    { type: "radiating-cracks", severity: [4, 7, 11] },
    { type: "disconnected-cracks", severity: [0.12, 0.15, 0.2], length: [8, 12, 17] },
    { type: "branching-cracks", severity: [0.1, 0.14, 0.2], length: [10, 13, 17] },
  ],
  root: [
    { type: "surface-pore", severity: [0.6, 1, 1.7] },
    { type: "linear-porosity", severity: [0.5, 0.8, 1.3], length: [8, 12, 17] },
    { type: "elongated-cavity", severity: [0.6, 0.9, 1.4], length: [3.5, 6, 10] },
    { type: "radiating-cracks", severity: [3, 4.2, 6] },
    { type: "disconnected-cracks", severity: [0.12, 0.15, 0.18], length: [8, 12, 17] },
    { type: "branching-cracks", severity: [0.1, 0.14, 0.18], length: [10, 13, 17] },
  ],
};
const STEP = 21.5;
const FIRST = 17;

const askedOf = (kinds: readonly Kind[], size: 0 | 1 | 2): Asked[] =>
  kinds.map(({ type, variant, severity, length }, n) => ({
    type,
    ...(variant && { variant }),
    x: FIRST + n * STEP,
    length: length?.[size] ?? 0,
    severity: severity[size],
    side: n % 2 ? -1 : 1,
    run: n,
  }));

/** What a reader of the truth calls its size: diameter, else length, else width. */
const sizeOf = (item: TruthItem): number =>
  item.size ?? (imperfection(item.type).extent === "point" ? (item.width as number) : item.end - item.start);

const WELDS: readonly (Laying & { readonly face: Face })[] = [
  { face: "cap", runs: 1, direction: 1, joint: { process: "111", position: "PA" } },
  { face: "cap", runs: 2, direction: -1, joint: { process: "141", position: "PF" } },
  { face: "cap", runs: 3, direction: 1, joint: { process: "136", position: "PC" } },
  { face: "cap", runs: 4, direction: -1, joint: { process: "135", position: "PA" } },
  { face: "cap", runs: 5, direction: 1, joint: { process: "111", position: "PE" } },
  { face: "root", direction: 1, joint: { process: "135", position: "PF" } },
  { face: "root", direction: -1, joint: { process: "141", position: "PC" } },
];

describe.each(WELDS)(
  "cracks and cavities on the $face, $runs runs, direction $direction, $joint",
  ({ face, ...weld }) => {
    it("come out where they were asked, each of them, on the weld or just beside it", () => {
      const asked = askedOf(KINDS[face], 1);
      const { work, after, before } = laidFace("everywhere", face, asked, weld);
      expect(before).toEqual(asked.map(() => null));
      const toes = [...work.toeMinus, ...work.toePlus].filter(Number.isFinite);
      after.forEach((item, n) => {
        const { type, x, length } = asked[n];
        if (!item) throw new Error(`nothing was found of ${type}`);
        expect(Math.abs((item.start + item.end) / 2 - x - length / 2), type).toBeLessThan(4);
        expect(item.across, type).toBeGreaterThan(Math.min(...toes));
        expect(item.across, type).toBeLessThan(Math.max(...toes));
        expect(item.neutral, type).toBe(type === "fine-pore");
      });
    }, 60_000);
  },
);

describe.each(["cap", "root"] as const)("asked larger, on the %s", (face) => {
  it("they measure larger", () => {
    const sizes = ([0, 1, 2] as const).map((size) => laidFace("grow", face, askedOf(KINDS[face], size)).after);
    KINDS[face].forEach(({ type }, n) => {
      const [small, middling, large] = sizes.map((items) => sizeOf(items[n] as TruthItem));
      expect(middling, type).toBeGreaterThan(small);
      expect(large, type).toBeGreaterThan(middling);
    });
  }, 90_000);
});

describe("crater cracks and pipes", () => {
  const CRATERS: readonly Kind[] = [
    { type: "crater-crack", variant: "star", severity: [2.2, 4, 6.5] },
    { type: "crater-crack", variant: "along", severity: [2.2, 4, 6.5] },
    { type: "crater-crack", variant: "across", severity: [2.2, 4, 6.5] },
    { type: "crater-pipe", severity: [0.7, 1.2, 2] },
  ];

  it("asked larger measure larger", () => {
    const sizes = ([0, 1, 2] as const).map((size) => {
      const asked = askedOf(CRATERS, size).map((one, n) => ({ ...one, x: 50 + 65 * n, run: undefined }));
      return laidFace("craters", "cap", asked).after;
    });
    CRATERS.forEach(({ type, variant }, n) => {
      const [small, middling, large] = sizes.map((items) => sizeOf(items[n] as TruthItem));
      expect(middling, `${type} ${variant}`).toBeGreaterThan(small);
      expect(large, `${type} ${variant}`).toBeGreaterThan(middling);
    });
  }, 60_000);
});
