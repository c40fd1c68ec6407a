import { randomStream } from "@/lib/random";
import type { TruthItem } from "@/lib/specimen";
import { createWork } from "@/lib/specimen/create-work";
import { buildFeature } from "@/lib/specimen/imperfections";
import { layParentPlate } from "@/lib/specimen/plate";
import { drawRecipe } from "@/lib/specimen/recipe";
import { layWeld } from "@/lib/specimen/runs";
import type { FaceWork, FeatureRequest } from "@/lib/specimen/work";
import type { ButtJoint, Face } from "@/lib/weld";
import type { Asked } from "./asked-face";

export interface LaidFace {
  readonly work: FaceWork;
  /** Heights of the strip before anything was cut. */
  readonly sound: Float32Array;
  /** What each request says of the face before it was cut, and after. */
  readonly before: readonly (TruthItem | null)[];
  readonly after: readonly (TruthItem | null)[];
}

export interface Laying {
  readonly runs?: number;
  readonly direction?: 1 | -1;
  readonly joint?: Partial<ButtJoint>;
}

/**
 * A face whose metal is laid and in which the features asked are cut, without paint: so that heights and crack openings
 * can be compared with those before the cut, pixel by pixel.
 */
export function laidFace(seed: string, face: Face, asked: readonly Asked[], laying: Laying = {}): LaidFace {
  const recipe = drawRecipe(seed);
  const { layout } = recipe.faces[face];
  const count = laying.runs ?? layout.runs.length;
  const runs = Array.from({ length: count }, () => ({ ...layout.runs[0], stops: [] }));
  const direction = laying.direction ?? layout.direction;
  const requests = asked.map((request, n): FeatureRequest => ({ side: 1, ...request, id: `${face}/${n}` }));
  const work = createWork(
    {
      ...recipe,
      joint: { ...recipe.joint, ...laying.joint },
      faces: { ...recipe.faces, [face]: { layout: { ...layout, runs, direction }, requests } },
    },
    face,
  );
  const features = requests.map((request) => buildFeature(request, randomStream(seed).child(request.id)));
  for (const feature of features) feature.plan?.(work);
  layParentPlate(work);
  layWeld(work);
  const sound = work.strip.z.slice();
  const before = features.map((feature) => feature.measure?.(work) ?? null);
  for (const feature of features) feature.cut?.(work);
  return { work, sound, before, after: features.map((feature) => feature.measure?.(work) ?? null) };
}
