import { mix } from "../../math";
import type { Surface } from "../../surface";
import type { Face, Process } from "../../weld";
import { generateFace } from "../generate";
import type { Recipe } from "../recipe";
import { FEATURE_ROWS } from "../recipe/feature-rows";
import { type FeatureRow, NEUTRAL_ROWS } from "../recipe/rows";
import type { ClutterItem, TruthItem } from "../truth";
import type { FeatureRequest } from "../work";
import { foundNear } from "./found-near";
import { plateFor } from "./plate-for";
import { rowName } from "./row-name";

/** One example of something that can be asked of a face. */
export interface Example {
  readonly surface: Surface;
  readonly face: Face;
  /** Middle of where it was asked, mm. */
  readonly x: number;
  readonly y: number;
  /** What was measured of it; null where nothing of its type was found near it. */
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

/**
 * Everything that can be asked of a face, rows in the tables' order, each of a row's variants for itself. `make` throws where
 * no plate can show its row.
 */
export function showcases(): { readonly name: string; readonly make: (seed: string) => Showcase }[] {
  return [...FEATURE_ROWS, ...NEUTRAL_ROWS].flatMap((row) =>
    [...new Set(row.variants ?? [null])].map((variant) => ({
      name: rowName(row, variant),
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
  const base = plateFor(row, seed);
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
  const examples = PLACES.map(({ x }, n): Example => {
    const found = foundNear([...items, ...clutter], row.type, x);
    return { surface, face: row.face, x, y: found?.across ?? requests[n].y ?? 0, found };
  });
  return { type: row.type, face: row.face, process: base.joint.process, variant, examples };
}
