import type { Degrees, Mm } from "../../math";

/** [u, w] in the gauge's own frame, mm: u along the blade, w away from the metal. */
export type Corner = readonly [u: Mm, w: Mm];

/** What a shape is made of and does; a layer gives each role its paint. */
export type ShapeRole = "body" | "leg" | "moving" | "recess" | "screw" | "screw-face" | "bore";
export interface Shape {
  readonly kind: "shape";
  readonly role: ShapeRole;
  readonly outline: readonly Corner[];
}

/** An engraved line, the index of a hand, or the slot of a screw. */
export interface Stroke {
  readonly kind: "stroke";
  readonly role: "engraved" | "index" | "slot";
  readonly from: Corner;
  readonly to: Corner;
  readonly width: Mm;
}

/** Engraved characters: `size` is the height of a capital, `at` their middle in height. */
export interface Label {
  readonly kind: "label";
  readonly at: Corner;
  readonly text: string;
  readonly size: Mm;
  readonly anchor: "start" | "middle" | "end";
}

export type Mark = Shape | Stroke | Label;

interface Box {
  readonly from: Corner;
  readonly to: Corner;
}

/** What to enlarge for reading a scale, and the place in it by which one reads: the coinciding line, or the index. */
export interface LensBox extends Box {
  readonly readAt: Corner;
}

/** A gauge as plain data, in mm and in its own frame; the pose of its seating puts it on the metal. */
export interface Drawing {
  /** In the order in which they are painted. */
  readonly marks: readonly Mark[];
  /** What to enlarge for reading the scale; null where there is none. */
  readonly lens: LensBox | null;
}

/** One over the other, the last on top. */
export const stacked = (lens: LensBox | null, ...layers: readonly (readonly Mark[])[]): Drawing => ({
  marks: layers.flat(),
  lens,
});

/** Outline of a box with rounded corners. */
export function roundedBox(u0: Mm, w0: Mm, u1: Mm, w1: Mm, radius: Mm): readonly Corner[] {
  const corners: readonly [Mm, Mm, number][] = [
    [u1 - radius, w1 - radius, 0],
    [u0 + radius, w1 - radius, 90],
    [u0 + radius, w0 + radius, 180],
    [u1 - radius, w0 + radius, 270],
  ];
  return corners.flatMap(([u, w, start]) => arc([u, w], radius, start, start + 90, 6));
}

/** Points on a circle from one angle to another, degrees counter-clockwise from +u, ends included. */
export function arc([u, w]: Corner, radius: Mm, from: Degrees, to: Degrees, steps: number): readonly Corner[] {
  return Array.from({ length: steps + 1 }, (_, n) => {
    const angle = ((from + ((to - from) * n) / steps) * Math.PI) / 180;
    return [u + radius * Math.cos(angle), w + radius * Math.sin(angle)] as const;
  });
}

export const disc = (middle: Corner, radius: Mm): readonly Corner[] => arc(middle, radius, 0, 360, 96).slice(0, -1);

/** A clamping screw with a milled rim, seen end on, and its slot. */
export function thumbScrew(middle: Corner, radius: Mm, slotTurn: Degrees): readonly Mark[] {
  const teeth = 32;
  const rim = Array.from({ length: teeth * 2 }, (_, n) => {
    const angle = (n * Math.PI) / teeth;
    const out = n % 2 === 0 ? radius : radius * 0.93;
    return [middle[0] + out * Math.cos(angle), middle[1] + out * Math.sin(angle)] as const;
  });
  const angle = (slotTurn * Math.PI) / 180;
  const end = (sign: 1 | -1): Corner => [
    middle[0] + sign * Math.cos(angle) * radius * 0.55,
    middle[1] + sign * Math.sin(angle) * radius * 0.55,
  ];
  return [
    ...shape("screw", rim),
    ...shape("screw-face", disc(middle, radius * 0.72)),
    { kind: "stroke", role: "slot", from: end(-1), to: end(1), width: radius * 0.16 },
  ];
}

export const shape = (role: ShapeRole, outline: readonly Corner[]): readonly Mark[] => [
  { kind: "shape", role, outline },
];

export const engraved = (from: Corner, to: Corner, width: Mm): Stroke => ({
  kind: "stroke",
  role: "engraved",
  from,
  to,
  width,
});

export const label = (text: string, at: Corner, size: Mm, anchor: Label["anchor"] = "middle"): readonly Mark[] => [
  { kind: "label", at, text, size, anchor },
];
