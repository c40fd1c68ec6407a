import type { Degrees, Mm } from "../../math";

/** [u, w] in the gauge's own frame, mm: u along the blade, w away from the metal. */
export type Spot2 = readonly [u: Mm, w: Mm];

/** What a shape is made of and does; a layer gives each role its paint. Later shapes lie over earlier ones. */
export type ShapeRole = "body" | "leg" | "moving" | "recess" | "screw" | "screw-face" | "bore";
export interface Shape {
  readonly role: ShapeRole;
  readonly outline: readonly Spot2[];
}

/** An engraved line, or an edge that catches the light. */
export interface Stroke {
  readonly role: "engraved" | "index" | "edge";
  readonly from: Spot2;
  readonly to: Spot2;
  readonly width: Mm;
}

/** Engraved characters: `size` is the height of a capital, `at` the middle of them, turned like the gauge by `turn`. */
export interface Label {
  readonly at: Spot2;
  readonly text: string;
  readonly size: Mm;
  readonly anchor: "start" | "middle" | "end";
  readonly turn: Degrees;
}

export interface Box {
  readonly from: Spot2;
  readonly to: Spot2;
}

/** A gauge as plain data, in mm and in its own frame; a pose puts it on the metal. */
export interface Drawing {
  readonly shapes: readonly Shape[];
  readonly strokes: readonly Stroke[];
  readonly labels: readonly Label[];
  /** What to enlarge for reading the scale; null where there is none. */
  readonly lens: Box | null;
}

export const EMPTY: Drawing = { shapes: [], strokes: [], labels: [], lens: null };

/** One over the other, the last on top; of several lenses the last counts. */
export function stacked(...drawings: readonly Drawing[]): Drawing {
  return {
    shapes: drawings.flatMap(({ shapes }) => shapes),
    strokes: drawings.flatMap(({ strokes }) => strokes),
    labels: drawings.flatMap(({ labels }) => labels),
    lens: drawings.reduce<Box | null>((last, { lens }) => lens ?? last, null),
  };
}

/** The same, moved by (u, w). */
export function moved(drawing: Drawing, [du, dw]: Spot2): Drawing {
  const by = ([u, w]: Spot2): Spot2 => [u + du, w + dw];
  return {
    shapes: drawing.shapes.map((shape) => ({ ...shape, outline: shape.outline.map(by) })),
    strokes: drawing.strokes.map((stroke) => ({ ...stroke, from: by(stroke.from), to: by(stroke.to) })),
    labels: drawing.labels.map((label) => ({ ...label, at: by(label.at) })),
    lens: drawing.lens && { from: by(drawing.lens.from), to: by(drawing.lens.to) },
  };
}

/** Outline of a box with rounded corners. */
export function roundedBox(u0: Mm, w0: Mm, u1: Mm, w1: Mm, radius: Mm): readonly Spot2[] {
  const corners: readonly [Mm, Mm, number][] = [
    [u1 - radius, w1 - radius, 0],
    [u0 + radius, w1 - radius, 90],
    [u0 + radius, w0 + radius, 180],
    [u1 - radius, w0 + radius, 270],
  ];
  return corners.flatMap(([u, w, start]) => arc([u, w], radius, start, start + 90, 6));
}

/** Points on a circle from one angle to another, degrees counter-clockwise from +u, ends included. */
export function arc([u, w]: Spot2, radius: Mm, from: Degrees, to: Degrees, steps: number): readonly Spot2[] {
  return Array.from({ length: steps + 1 }, (_, n) => {
    const angle = ((from + ((to - from) * n) / steps) * Math.PI) / 180;
    return [u + radius * Math.cos(angle), w + radius * Math.sin(angle)] as const;
  });
}

export const disc = (middle: Spot2, radius: Mm): readonly Spot2[] => arc(middle, radius, 0, 360, 48).slice(0, -1);

/** A clamping screw with a milled rim, seen end on, and its slot. */
export function thumbScrew(middle: Spot2, radius: Mm, slotTurn: Degrees): Drawing {
  const teeth = 32;
  const rim = Array.from({ length: teeth * 2 }, (_, n) => {
    const angle = (n * Math.PI) / teeth;
    const out = n % 2 === 0 ? radius : radius * 0.93;
    return [middle[0] + out * Math.cos(angle), middle[1] + out * Math.sin(angle)] as const;
  });
  const angle = (slotTurn * Math.PI) / 180;
  const end = (sign: 1 | -1): Spot2 => [
    middle[0] + sign * Math.cos(angle) * radius * 0.55,
    middle[1] + sign * Math.sin(angle) * radius * 0.55,
  ];
  return {
    shapes: [
      { role: "screw", outline: rim },
      { role: "screw-face", outline: disc(middle, radius * 0.72) },
    ],
    strokes: [{ role: "edge", from: end(-1), to: end(1), width: radius * 0.16 }],
    labels: [],
    lens: null,
  };
}

export const shape = (role: ShapeRole, outline: readonly Spot2[]): Drawing => ({
  ...EMPTY,
  shapes: [{ role, outline }],
});

export const label = (text: string, at: Spot2, size: Mm, anchor: Label["anchor"] = "middle"): Drawing => ({
  ...EMPTY,
  labels: [{ at, text, size, anchor, turn: 0 }],
});
