import { expect, it } from "vitest";
import type { TruthItem } from "@/lib/specimen";
import type { Surface } from "@/lib/surface";
import { type Asked, type AskedFace, askedFace } from "./asked-face";

/** What the second opinions on cut features share: the finished patches' own pixels, and nothing of the product's measuring. */
const PLACE_TOLERANCE = 0.5;

export interface Opinion {
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size?: number;
}
export interface Pixel {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Luminance, roughness and metalness, 0..255. */
  readonly light: number;
  readonly rough: number;
  readonly metal: number;
}
export interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Every pixel of the finished strip in a box. */
export function pixels({ strip }: Surface, box: Box): Pixel[] {
  const list: Pixel[] = [];
  const { columns, rows, x0, y0, perMm } = strip.grid;
  for (let j = 0; j < rows; j++) {
    const y = y0 + (j + 0.5) / perMm;
    if (y < box.y0 || y > box.y1) continue;
    for (let i = 0; i < columns; i++) {
      const x = x0 + (i + 0.5) / perMm;
      if (x < box.x0 || x > box.x1) continue;
      const k = j * columns + i;
      const light = 0.21 * strip.albedo[3 * k] + 0.72 * strip.albedo[3 * k + 1] + 0.07 * strip.albedo[3 * k + 2];
      list.push({ x, y, z: strip.height[k], light, rough: strip.finish[3 * k], metal: strip.finish[3 * k + 1] });
    }
  }
  return list;
}

export const boxOf = (item: TruthItem, margin: number): Box => ({
  x0: Math.min(...item.outline.map(([x]) => x)) - margin,
  x1: Math.max(...item.outline.map(([x]) => x)) + margin,
  y0: Math.min(...item.outline.map(([, y]) => y)) - margin,
  y1: Math.max(...item.outline.map(([, y]) => y)) + margin,
});

export type Second = (surface: Surface, item: TruthItem, asked: Asked) => Opinion;

/** The middle of what was found, for what is listed as a place. */
export const point = (opinion: Opinion): Opinion => {
  const middle = (opinion.start + opinion.end) / 2;
  return { ...opinion, start: middle, end: middle };
};

/** A face asked for and how its truth is looked at again, by type. */
export interface Case {
  readonly seed: string;
  readonly face: "cap" | "root";
  readonly asked: readonly Asked[];
}
export interface Opinions {
  readonly second: Readonly<Record<string, Second>>;
  /** How far sizes may lie apart, mm; a type without one has no size. */
  readonly sizeTolerance?: Readonly<Record<string, number>>;
  /** Where the place of an end depends on less than can be told apart, mm. */
  readonly widerTolerance?: Readonly<Record<string, number>>;
}

/** One check for each feature asked; the face is made once. */
export function compareWithSecondOpinion(one: Case, { second, sizeTolerance = {}, widerTolerance = {} }: Opinions) {
  let made: AskedFace | null = null;
  it.each(one.asked.map((asked, n) => ({ name: `${asked.type} ${asked.variant ?? ""}`, n, asked })))(
    "agrees with the second opinion on $name at $asked.x mm",
    ({ n, asked }) => {
      made ??= askedFace(one.seed, one.face, one.asked);
      const { surface, found } = made;
      const item = found[n];
      if (!item) throw new Error(`nothing was found of ${asked.type} at ${asked.x}`);
      const other = second[asked.type](surface, item, asked);
      const tolerance = widerTolerance[asked.type] ?? PLACE_TOLERANCE;
      expect(Math.abs(other.start - item.start), "start").toBeLessThan(tolerance);
      expect(Math.abs(other.end - item.end), "end").toBeLessThan(tolerance);
      expect(Math.abs(other.across - item.across), "across").toBeLessThan(PLACE_TOLERANCE);
      if (item.size !== null) {
        expect(Math.abs((other.size as number) - item.size), "size").toBeLessThan(sizeTolerance[asked.type]);
      }
    },
  );
}
