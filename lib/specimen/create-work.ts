import { randomStream } from "../random";
import { type Grid, PLATE_GRID, PLATE_PER_MM, STRIP_GRID, STRIP_HALF_WIDTH, unsetFloatGrid } from "../surface";
import type { Face } from "../weld";
import { createField } from "./field";
import type { RecipeOf } from "./recipe";
import { planFace } from "./runs";
import type { FaceWork, SharedNoise } from "./work";

const SIDE_ROWS = (PLATE_GRID.rows - 2 * STRIP_HALF_WIDTH * PLATE_PER_MM) / 2;
const sideGrid = (y0: number): Grid => ({ ...PLATE_GRID, rows: SIDE_ROWS, y0 });
const GRIDS: WorkGrids = { strip: STRIP_GRID, sides: [sideGrid(PLATE_GRID.y0), sideGrid(STRIP_HALF_WIDTH)] };

/** Everything for making one face of a recipe's specimen: empty fields and the plan of a sound weld. */
export function createWork<F extends Face>(recipe: RecipeOf<F>, face: F): FaceWork {
  const bothFaces = randomStream(recipe.seed);
  const random = bothFaces.child(face);
  const plan = planFace(face, recipe.joint, recipe.faces[face].layout, recipe.look, STRIP_GRID, random);
  return {
    ...emptyWork(GRIDS),
    face,
    joint: recipe.joint,
    plates: recipe.plates,
    plan,
    look: recipe.look,
    random,
    bothFaces,
  };
}

/** Grids of the fine strip along the weld and of what lies to both sides of it. */
export interface WorkGrids {
  readonly strip: Grid;
  readonly sides: readonly [sideB: Grid, sideA: Grid];
}

/** Fields that a parent plate is to be laid on first: until then its skin and the shared noise hold anything. */
export function emptyWork({
  strip,
  sides,
}: WorkGrids): Omit<FaceWork, "face" | "joint" | "plates" | "plan" | "look" | "random" | "bothFaces"> {
  const { columns, rows } = strip;
  return {
    strip: createField(strip, unsetFloatGrid),
    sides: sides.map((side) => createField(side, unsetFloatGrid)),
    toeMinus: new Float32Array(columns).fill(Number.NaN),
    toePlus: new Float32Array(columns).fill(Number.NaN),
    runMinus: [],
    runPlus: [],
    craters: [],
    noise: createNoise(columns * rows),
  };
}

function createNoise(size: number): SharedNoise {
  const plane = () => unsetFloatGrid(size);
  return {
    blotch: plane(),
    blotchFine: plane(),
    micro: plane(),
    flake: plane(),
    // drawn with the grain, when the weld is laid
    patch: new Float32Array(0),
    patchFine: new Float32Array(0),
  };
}
