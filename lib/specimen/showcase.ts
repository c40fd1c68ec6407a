import { mix } from "../math";
import type { Surface } from "../surface";
import { type Face, PROCESSES, type Process } from "../weld";
import { generateFace } from "./generate";
import { drawRecipe, type Recipe } from "./recipe";
import { FEATURE_ROWS } from "./recipe/feature-rows";
import { type FeatureRow, NEUTRAL_ROWS } from "./recipe/rows";
import type { ClutterItem, TruthItem } from "./truth";
import type { FeatureRequest } from "./work";

/** One example of something that can be asked of a face. */
export interface Example {
  readonly surface: Surface;
  readonly face: Face;
  /** Middle of where it was asked, mm. */
  readonly x: number;
  readonly y: number;
  /** Nearest to it of what was measured; null where nothing was found near it. */
  readonly found: TruthItem | ClutterItem | null;
}

/** Examples of one row of the table of what goes wrong, from its smallest to its largest. */
export interface Showcase {
  readonly type: FeatureRequest["type"];
  readonly face: Face;
  readonly process: Process;
  readonly variant: string | null;
  readonly examples: readonly Example[];
}

/** Everything that can be asked of a face, rows in the tables' order, each of a row's variants for itself. */
export function showcases(): { readonly name: string; readonly make: (seed: string) => Showcase }[] {
  return [...FEATURE_ROWS, ...NEUTRAL_ROWS].flatMap((row) =>
    [...new Set(row.variants ?? [null])].map((variant) => ({
      name: [row.face, row.type, variant].filter(Boolean).join(" "),
      make: (seed) => showRow(row, variant, seed),
    })),
  );
}

/** Where the three examples lie along the weld, mm, and how large they are: 0 the least, 1 the most of the row. */
const PLACES = [
  { x: 55, size: 0 },
  { x: 150, size: 0.5 },
  { x: 245, size: 1 },
] as const;
const SITE_OFFSET = 3;

function showRow(row: FeatureRow, variant: string | null, seed: string): Showcase {
  const process = PROCESSES.find((one) => row.likelihood[one] === "high") ?? likeliest(row);
  const base = recipeFor(row, process, seed);
  const { layout } = base.faces[row.face];
  const last = layout.runs.length - 1;
  const toe = layout.overlap + base.joint.thickness * 0.5;
  const requests = PLACES.map(({ x, size }, n): FeatureRequest => {
    const length = mix(...row.length, size);
    const side = n % 2 ? -1 : 1;
    return {
      id: `${row.face}/${row.type}/${n + 1}`,
      type: row.type,
      x: x - length / 2,
      length,
      side,
      severity: mix(...row.severity, size),
      ...(variant && { variant }),
      ...((row.site === "run" || row.site === "stop") && { run: last }),
      ...(row.half !== undefined && { y: side * Math.min(22 - row.half, toe + row.half + SITE_OFFSET) }),
    };
  });
  const runs = layout.runs.map((run) => ({ ...run, stops: [] }));
  const recipe: Recipe = { ...base, faces: { ...base.faces, [row.face]: { layout: { ...layout, runs }, requests } } };
  const { surface, items, clutter } = generateFace(recipe, row.face);
  const examples = PLACES.map(({ x }): Example => {
    const away = (item: { start: number; end: number }) => Math.abs((item.start + item.end) / 2 - x);
    const near = [...items, ...clutter].filter((item) => away(item) < 25).sort((a, b) => away(a) - away(b));
    const found = near.find((item) => ("type" in item ? item.type : item.kind) === row.type) ?? near[0] ?? null;
    return { surface, face: row.face, x, y: found?.across ?? 0, found };
  });
  return { type: row.type, face: row.face, process, variant, examples };
}

const likeliest = (row: FeatureRow): Process =>
  PROCESSES.find((one) => row.likelihood[one] === "medium") ??
  PROCESSES.find((one) => row.likelihood[one] !== "never") ??
  "111";

/** The first recipe of the process, in flat position where it can be, that has the runs a row needs. */
function recipeFor(row: FeatureRow, process: Process, seed: string): Recipe {
  for (let n = 0; n < 400; n++) {
    const recipe = drawRecipe(`${seed} ${n}`);
    const isFlat = recipe.joint.position === "PA" || n > 200;
    const hasRuns =
      recipe.faces.cap.layout.runs.length >= (row.leastRuns ?? (row.variants?.includes("between") ? 2 : 1));
    if (recipe.joint.process === process && isFlat && hasRuns) return recipe;
  }
  return drawRecipe(seed);
}
