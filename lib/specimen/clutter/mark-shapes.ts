import type { RandomStream } from "../../random";
import { upOnScreen } from "../../weld";
import { GLYPHS } from "../plate/glyphs";
import type { Point } from "../truth";
import type { FaceWork } from "../work";

/** Lines of a mark about its middle, mm: u along the weld, v towards the weld. */
type Strokes = readonly (readonly Point[])[];

function ring(random: RandomStream, radius: number): Point[] {
  const from = random.uniform(0, 6.28);
  const turn = random.uniform(5.7, 6.9) * random.pick([-1, 1]);
  const oval = random.uniform(0.72, 0.95);
  const grows = random.uniform(0.9, 1.12);
  return Array.from({ length: 25 }, (_, n) => {
    const angle = from + (turn * n) / 24;
    const r = radius * (1 + ((grows - 1) * n) / 24);
    return [r * Math.cos(angle), oval * r * Math.sin(angle)];
  });
}

/** What people draw on plates while they work, `size` mm long or wide. */
const MARK_SHAPES = {
  /** A line along the weld: from here to here. */
  stroke: (random: RandomStream, size: number): Strokes => {
    const lean = random.normal(0, 0.03) * size;
    const along: Point[] = [
      [-size / 2, -lean],
      [size / 2, lean],
    ];
    const end = random.uniform(1.5, 3.5);
    if (random.chance(0.5)) return [along];
    return [along, [-1, 1].map((q): Point => [(random.pick([-1, 1]) * size) / 2, lean + q * end])];
  },
  tick: (random: RandomStream, size: number): Strokes => {
    const deep = size * random.uniform(0.3, 0.45);
    return [
      [
        [-size / 2, 0],
        [-size * random.uniform(0.12, 0.25), -deep],
        [size / 2, deep * random.uniform(1, 1.6)],
      ],
    ];
  },
  /** Its head towards the weld. */
  arrow: (random: RandomStream, size: number): Strokes => {
    const lean = random.normal(0, 0.3) * size;
    const head = size * random.uniform(0.22, 0.34);
    const tip: Point = [0, size / 2];
    return [
      [[-lean, -size / 2], tip],
      [
        [-head * random.uniform(0.6, 1), size / 2 - head * random.uniform(0.7, 1.1)],
        tip,
        [head * random.uniform(0.6, 1), size / 2 - head * random.uniform(0.7, 1.1)],
      ],
    ];
  },
  circle: (random: RandomStream, size: number): Strokes => [ring(random, size / 2)],
  /** Short lines square to the weld where a length was measured off. */
  "length-tick": (random: RandomStream, size: number): Strokes => {
    const count = size > 18 ? 2 : 1;
    return Array.from({ length: count }, (_, n): Point[] => {
      const u = count === 1 ? 0 : (n - 0.5) * size;
      const half = random.uniform(4, 7);
      const lean = random.normal(0, 0.5);
      return [
        [u - lean, -half],
        [u + lean, half],
      ];
    });
  },
  /** Straight over the weld from plate to plate. */
  "line-across": (random: RandomStream, size: number): Strokes => {
    const lean = random.normal(0, 0.06) * size;
    return [
      [
        [-lean, -size / 2],
        [lean, size / 2],
      ],
    ];
  },
} as const;
export type MarkShape = keyof typeof MARK_SHAPES;

/** Where a mark stands: its middle, and from which plate it was drawn. */
export interface MarkPlace {
  readonly x: number;
  readonly y: number;
  readonly side: 1 | -1;
}

/** The corners of a shape on the plate. */
export function placeShape(random: RandomStream, shape: MarkShape, size: number, { x, y, side }: MarkPlace): Point[][] {
  return MARK_SHAPES[shape](random, size).map((line) => line.map(([u, v]): Point => [x + u, y - side * v]));
}

/** A number written by hand, upright for whoever looks at this face; `size` is the height of its figures, mm. */
export function placeNumber(
  work: FaceWork,
  random: RandomStream,
  text: string,
  size: number,
  { x, y }: MarkPlace,
): Point[][] {
  const up = upOnScreen(work.face);
  const cell = size / 6;
  const lean = random.uniform(-0.05, 0.3);
  return [...text].flatMap((figure, n) => {
    const left = x + (n - text.length / 2) * size * random.uniform(0.8, 0.95);
    const lift = random.normal(0, 0.06) * size;
    return GLYPHS[figure].map((line) => {
      const corners: Point[] = [];
      for (let m = 0; m < line.length; m += 2) {
        const v = (3 - line[m + 1]) * cell + lift;
        corners.push([left + line[m] * cell + lean * v, y + up * v]);
      }
      return corners;
    });
  });
}
