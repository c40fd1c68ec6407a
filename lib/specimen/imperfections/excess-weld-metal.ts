import { mix } from "../../math";
import { gradient1 } from "../../surface";
import { measureCrown } from "../measure";
import { forColumns } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawEnds, largestAlong, unevenEnvelope } from "./uneven-ends";

/** Crown from which the excess is recorded, mm. */
const THRESHOLD = 3;
const BRIDGE = 4;
/** Share of the excess that each run brings: later runs lie on what the earlier ones built up. */
const SHARES: readonly (readonly number[])[] = [[1], [0.6, 0.55], [0.72, 0.54, 0.54], [0.64, 0.46, 0.46]];

/** Height of the crown that the runs as planned would give at a column, mm. */
function plannedCrown(work: FaceWork, i: number): number {
  const { runs } = work.plan;
  return runs.length === 1 ? runs[0].height[i] : 0.62 * runs[0].height[i] + 0.9 * runs[runs.length - 1].height[i];
}

/**
 * Excess weld metal: the cap rises gradually to `severity` mm above the plates and falls again. Truth: `measureCrown`,
 * length where it exceeds 3 mm.
 */
export const buildExcessWeldMetal: FeatureBuilder = (request, random) => {
  const ends = drawEnds(random, request.length, [8, 12], [12, 18]);
  const from = request.x - 0.7 * ends.first;
  const to = request.x + request.length + 0.7 * ends.last;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.5, seed + 10);
  const uneven = (x: number) => envelope(x) * (1 + 0.12 * gradient1(x / 7, seed) + 0.05 * gradient1(x / 2.8, seed + 1));
  const most = largestAlong(from, to, uneven);

  return {
    id: request.id,
    plan(work) {
      const { runs } = work.plan;
      const shares = SHARES[runs.length - 1] ?? SHARES[3];
      forColumns(work.strip.grid, from, to, (i, x) => {
        const share = uneven(x) / most;
        const excess = Math.max(0, request.severity - plannedCrown(work, i)) * share;
        runs.forEach((run, n) => {
          run.height[i] += excess * shares[Math.min(n, shares.length - 1)];
          run.exponentMinus[i] = mix(run.exponentMinus[i], 2.9, 0.7 * share);
          run.exponentPlus[i] = mix(run.exponentPlus[i], 2.9, 0.7 * share);
        });
      });
    },
    measure(work) {
      const found = measureCrown(work, { range: { from, to }, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "excess-weld-metal", found);
    },
  };
};
