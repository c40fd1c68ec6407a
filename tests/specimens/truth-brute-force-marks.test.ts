import { describe, expect, it } from "vitest";
import type { TruthItem } from "@/lib/specimen";
import { generateFace, type MadeFace } from "@/lib/specimen/generate";
import { drawRecipe } from "@/lib/specimen/recipe";
import type { FeatureRequest } from "@/lib/specimen/work";
import type { Surface } from "@/lib/surface";
import type { ButtJoint, Face } from "@/lib/weld";
import { recipeWith } from "./support/asked-face";
import { extent, groups, type Place } from "./support/pixel-groups";
import { median, PIXEL, plate, type Side, toeOf } from "./support/plain-loops";
import { longestAbove } from "./support/plain-strip";

/**
 * Truth of marks on the plate and of colours against a second opinion: plain loops over the heights, colours and finish of the
 * finished strip that share no code with the product's measuring.
 */
type Asked = Omit<FeatureRequest, "id">;

type Made = Pick<MadeFace, "surface" | "items">;

/** The face of a seed with only what is asked on it, welded with a process, without stops of its own. */
function faceWith(seed: string, face: Face, process: ButtJoint["process"], asked: readonly Asked[], step = 0): Made {
  const requests = asked.map((one, n) => ({ ...one, id: `${face}/${n}` }));
  const recipe = recipeWith(drawRecipe(seed), face, requests);
  const joint = { ...recipe.joint, process };
  const plates = { ...recipe.plates, stepAtDatum: step, stepAtFarEnd: step };
  return generateFace({ ...recipe, joint, plates }, face);
}

const found = ({ items }: Made, { type, x, length }: Asked): TruthItem => {
  const away = (item: TruthItem) => Math.abs((item.start + item.end) / 2 - x - length / 2);
  const [item] = items.filter((one) => one.type === type && away(one) < 20).sort((a, b) => away(a) - away(b));
  if (!item) throw new Error(`no ${type} near ${x}`);
  return item;
};

interface Spot extends Place {
  readonly k: number;
}

function spots({ strip }: Surface, x0: number, x1: number, y0: number, y1: number): Spot[] {
  const { columns, rows, perMm, x0: left, y0: low } = strip.grid;
  const list: Spot[] = [];
  for (let j = 0; j < rows; j++) {
    const y = low + (j + 0.5) / perMm;
    if (y < Math.min(y0, y1) || y > Math.max(y0, y1)) continue;
    for (let i = 0; i < columns; i++) {
      const x = left + (i + 0.5) / perMm;
      if (x >= x0 && x <= x1) list.push({ x, y, k: j * columns + i });
    }
  }
  return list;
}

/** Depth below the plate: its lines (medians of pairwise slopes) left and right of the mark, carried over it. */
function hollow(made: Made, item: TruthItem) {
  const { surface } = made;
  const side = Math.sign(item.across) as Side;
  const left = item.start - 6;
  const right = item.end + 6;
  const lineAt = (x: number) => plate(surface, side, x, toeOf(surface, side, x, 22 * side));
  const before = [-2, -1, 0].map((dx) => lineAt(left + dx));
  const after = [0, 1, 2].map((dx) => lineAt(right + dx));
  const level = (x: number, y: number) => {
    const a = median(before.map((line) => line(y)));
    const b = median(after.map((line) => line(y)));
    return a + ((b - a) * (x - left)) / (right - left);
  };
  const low = Math.min(...item.outline.map(([, y]) => y)) - 1;
  const high = Math.max(...item.outline.map(([, y]) => y)) + 1;
  const cut = spots(surface, item.start - 3, item.end + 3, low, high).filter(
    ({ x, y, k }) => level(x, y) - surface.strip.height[k] > 0.08,
  );
  const depth = Math.max(...cut.map(({ x, y, k }) => level(x, y) - surface.strip.height[k]));
  return { ...extent(groups(cut, 5)[0]), size: depth };
}

describe("depth and place of hollows in the plate", () => {
  const asked: readonly Asked[] = [
    { type: "torn-surface", x: 25, length: 16, side: 1, severity: 0.3 },
    { type: "torn-surface", x: 70, length: 28, side: -1, severity: 0.8 },
    { type: "torn-surface", x: 130, length: 44, side: 1, severity: 1.6 },
    { type: "underflushing", x: 30, length: 26, side: -1, severity: 0.3 },
    { type: "underflushing", x: 140, length: 40, side: -1, severity: 0.6 },
    { type: "underflushing", x: 215, length: 50, side: 1, severity: 1 },
  ];
  for (const face of ["cap", "root"] as const) {
    it(`agree with plain loops on the ${face} face, depth within 0.05 mm, ends within 1 mm`, () => {
      const made = faceWith("marks a", face, "135", asked);
      for (const one of asked) {
        const item = found(made, one);
        const second = hollow(made, item);
        const name = `${one.type} ${one.severity}`;
        // both planes stand on other parts of a plate that waves by a few hundredths of a millimetre
        expect(Math.abs(second.size - (item.size as number)), `${name} depth`).toBeLessThan(0.05);
        expect(Math.abs((item.size as number) - one.severity), `${name} as asked`).toBeLessThan(0.08);
        // a broad bowl runs out so flatly that 0.03 mm of level moves its ends by more than a millimetre
        const tolerance = one.type === "underflushing" ? 2 : 1;
        expect(Math.abs(second.start - item.start), `${name} start`).toBeLessThan(tolerance);
        expect(Math.abs(second.end - item.end), `${name} end`).toBeLessThan(tolerance);
        expect(Math.abs(second.across - item.across), `${name} across`).toBeLessThan(1);
        expect(item.neutral).toBe(false);
      }
    }, 300_000);
  }

  it("a toe dressed below the plate is as deep as asked, and no step between the plates", () => {
    const toe: Asked = { type: "underflushing", variant: "toe", x: 60, length: 50, side: 1, severity: 0.8 };
    const broad: Asked = { type: "underflushing", x: 180, length: 52, side: 1, severity: 1 };
    const made = faceWith("marks b", "cap", "111", [toe, broad], 0.5);
    expect(Math.abs((found(made, toe).size as number) - 0.8)).toBeLessThan(0.08);
    expect(Math.abs((found(made, broad).size as number) - 1)).toBeLessThan(0.08);
    expect(made.items.filter(({ type }) => type === "linear-misalignment")).toEqual([]);
  }, 300_000);
});

const linear = (byte: number) => (byte <= 10 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4);

/** Colour of a pixel of the finished strip, as far from grey as its channels are apart. */
function colourAt({ strip }: Surface, k: number): number {
  const [r, g, b] = [0, 1, 2].map((c) => Math.log(linear(strip.albedo[3 * k + c]) + 0.004));
  return Math.sqrt((r - g) ** 2 + (b - g) ** 2);
}

/** Per column, the mean colour 0.8 to 13 mm outside the toe, evened out over two millimetres to either side. */
function colourLine(surface: Surface, side: Side): { x: number; colour: number }[] {
  const { columns, perMm, x0, y0, rows } = surface.strip.grid;
  const raw: number[] = [];
  for (let i = 0; i < columns; i++) {
    const x = x0 + (i + 0.5) / perMm;
    const toe = i % 8 === 0 ? Math.abs(toeOf(surface, side, x, 22 * side)) : Number.NaN;
    raw.push(toe);
  }
  for (let i = 0; i < columns; i++) if (Number.isNaN(raw[i])) raw[i] = raw[i - (i % 8)];
  const means = raw.map((toe, i) => {
    let sum = 0;
    let count = 0;
    for (let j = 0; j < rows; j++) {
      const out = side * (y0 + (j + 0.5) / perMm) - toe;
      if (out < 0.8 || out > 13) continue;
      sum += colourAt(surface, j * columns + i);
      count++;
    }
    return sum / count;
  });
  return means.map((_, i) => {
    const near = means.slice(Math.max(0, i - 16), i + 17);
    return { x: x0 + (i + 0.5) / perMm, colour: near.reduce((a, b) => a + b, 0) / near.length };
  });
}

describe("temper colour", () => {
  it("begins and ends where plain loops over the finished colours say", () => {
    const asked: readonly Asked[] = [
      { type: "temper-colour", x: 30, length: 40, side: 1, severity: 0.5 },
      { type: "temper-colour", x: 120, length: 50, side: 1, severity: 0.9 },
      { type: "temper-colour", x: 80, length: 45, side: -1, severity: 0.7 },
    ];
    const made = faceWith("marks c", "cap", "141", asked);
    for (const side of [1, -1] as const) {
      const line = colourLine(made.surface, side);
      const usual = median(line.map(({ colour }) => colour));
      for (const one of asked.filter((other) => other.side === side)) {
        const item = found(made, one);
        const near = line.filter(({ x }) => x > one.x - 8 && x < one.x + one.length + 8);
        const over = longestAbove(
          near.map(({ x, colour }) => ({ x, value: colour - usual })),
          0.12,
          6,
        );
        expect(Math.abs(over.start - item.start), `start of ${one.x}`).toBeLessThan(1);
        expect(Math.abs(over.end - item.end), `end of ${one.x}`).toBeLessThan(1);
      }
    }
  }, 300_000);
});

describe("scaled surface", () => {
  it("covers what plain loops over roughness and metal say, on both faces", () => {
    for (const [face, process] of [
      ["cap", "135"],
      ["root", "141"],
    ] as const) {
      const asked: readonly Asked[] = [
        { type: "scaled-surface", x: 40, length: 22, side: 1, severity: 0.5 },
        { type: "scaled-surface", x: 130, length: 40, side: 1, severity: 0.9 },
      ];
      const made = faceWith("marks d", face, process, asked);
      const { strip } = made.surface;
      const { columns, perMm, x0 } = strip.grid;
      for (const one of asked) {
        const item = found(made, one);
        const shares: { x: number; share: number }[] = [];
        for (let i = 0; i < columns; i++) {
          const x = x0 + (i + 0.5) / perMm;
          if (x < one.x - 7 || x > one.x + one.length + 7) continue;
          const from = toeOf(made.surface, -1, x, -20);
          const to = toeOf(made.surface, 1, x, 20);
          const across = spots(made.surface, x - 0.01, x + 0.01, from, to);
          const dull = across.filter(({ k }) => strip.finish[3 * k] >= 189 && strip.finish[3 * k + 1] <= 41);
          shares.push({ x, share: dull.length / across.length });
        }
        const over = shares.filter((_, n) => {
          const near = shares.slice(Math.max(0, n - 8), n + 9);
          return near.reduce((sum, { share }) => sum + share, 0) / near.length > 0.3;
        });
        // the share of a ragged end changes slowly along the weld
        expect(Math.abs(over[0].x - item.start), `${face} start`).toBeLessThan(1.5);
        expect(Math.abs(over[over.length - 1].x - item.end), `${face} end`).toBeLessThan(1.5);
      }
    }
  }, 300_000);
});

describe("tungsten spatter", () => {
  it("lies where grains stand out of the plate", () => {
    const asked: readonly Asked[] = [
      { type: "tungsten-spatter", x: 40, length: 4, side: 1, severity: 0.5 },
      { type: "tungsten-spatter", x: 120, length: 9, side: -1, severity: 0.9 },
    ];
    const made = faceWith("marks e", "cap", "141", asked);
    for (const one of asked) {
      const item = found(made, one);
      const raised: Spot[] = [];
      for (const side of [one.side]) {
        const { surface } = made;
        for (let x = item.start - 2; x < item.end + 2; x += PIXEL) {
          const toe = toeOf(surface, side, x, 22 * side);
          const line = plate(surface, side, x, toe);
          // this toe is where the weld stands 0.3 mm high: its foot reaches a little further out
          raised.push(
            ...spots(surface, x - PIXEL / 2, x + PIXEL / 2 - 1e-9, toe + 1.1 * side, 23 * side).filter(
              ({ y, k }) => surface.strip.height[k] - line(y) > 0.05,
            ),
          );
        }
      }
      const second = extent(groups(raised, 5)[0]);
      expect(Math.abs(second.start - item.start)).toBeLessThan(0.5);
      expect(Math.abs(second.end - item.end)).toBeLessThan(0.5);
      expect(Math.abs(second.across - item.across)).toBeLessThan(0.5);
    }
  }, 300_000);
});

describe("asked larger", () => {
  const SIZES: readonly {
    readonly asked: Omit<Asked, "severity">;
    readonly sizes: readonly [number, number, number];
  }[] = [
    { asked: { type: "torn-surface", x: 25, length: 30, side: 1 }, sizes: [0.25, 0.7, 1.5] },
    { asked: { type: "underflushing", x: 80, length: 36, side: 1 }, sizes: [0.25, 0.5, 1] },
    { asked: { type: "temper-colour", x: 140, length: 40, side: -1 }, sizes: [0.55, 0.75, 1] },
    { asked: { type: "scaled-surface", x: 215, length: 34, side: 1 }, sizes: [0.3, 0.6, 1] },
  ];
  it("comes out larger: depth, or the area coloured or covered", () => {
    const measured = [0, 1, 2].map((n) => {
      const asked = SIZES.map((one): Asked => ({ ...one.asked, severity: one.sizes[n] }));
      const made = faceWith("marks f", "cap", "135", asked);
      return asked.map((one) => {
        const item = found(made, one);
        return item.size ?? (item.end - item.start) * (item.width as number);
      });
    });
    SIZES.forEach(({ asked }, n) => {
      expect(measured[1][n], asked.type).toBeGreaterThan(measured[0][n]);
      expect(measured[2][n], asked.type).toBeGreaterThan(measured[1][n]);
    });
  }, 300_000);
});
