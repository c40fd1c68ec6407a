import { clamp, mix } from "../../math";
import { gradient1 } from "../../surface";
import { measureCrown } from "../measure";
import { forColumns } from "../runs/edit";
import type { FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { buildMeltThrough } from "./melt-through";
import { buildPenetrationDrips } from "./penetration-drips";
import { largestAlong, unevenEnvelope } from "./uneven-ends";

/** Crown from which the penetration is recorded, mm. */
const THRESHOLD = 2.6;
const BRIDGE = 3;
/** How much wider the bead gets on either side, mm. */
const WIDENED = 0.75;

/**
 * Excess penetration, `severity` = largest height above the plates, mm. Variant "drip": one to three frozen drips;
 * "melt-through": the pool fell through as a whole; otherwise the bead sags over a length.
 */
export const buildExcessPenetration: FeatureBuilder = (request, random) => {
  switch (request.variant) {
    case "drip":
      return buildPenetrationDrips(request, random);
    case "melt-through":
      return buildMeltThrough(request, random);
    default:
      return buildSaggedRoot(request, random);
  }
};

/**
 * The root bead stands out over a length, rising and falling over a third of it, with calm ripples. Truth:
 * `measureCrown`, length where it exceeds 2.6 mm.
 */
const buildSaggedRoot: FeatureBuilder = (request, random) => {
  // only what is higher than the threshold counts as length: the rise and the fall lie outside what was asked
  const spare = (0.3 * request.length + 3) * clamp(1.5 - 0.5 * (request.severity - THRESHOLD), 1, 1.5);
  const from = request.x - spare;
  const to = request.x + request.length + spare;
  const ends = { first: spare * random.uniform(1.3, 1.9), last: spare * random.uniform(1.3, 1.9) };
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.4, seed + 10);
  const uneven = (x: number) =>
    envelope(x) * clamp(0.92 + 0.2 * gradient1(x / 6.5, seed) + 0.06 * gradient1(x / 2.6, seed + 1), 0.4, 1.25);
  const most = largestAlong(from, to, uneven);

  return {
    id: request.id,
    plan(work) {
      const [run] = work.plan.runs;
      forColumns(work.strip.grid, from, to, (i, x) => {
        const share = uneven(x) / most;
        run.height[i] = mix(run.height[i], Math.max(run.height[i], request.severity), share);
        run.halfWidth[i] += WIDENED * share;
        run.exponentMinus[i] = mix(run.exponentMinus[i], 3.1, share);
        run.exponentPlus[i] = mix(run.exponentPlus[i], 3.1, share);
        run.ripple[i] *= 1 - 0.72 * share;
        run.raggedMinus[i] *= 1 - 0.5 * share;
        run.raggedPlus[i] *= 1 - 0.5 * share;
      });
    },
    measure(work) {
      const found = measureCrown(work, { range: { from, to }, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "excess-penetration", found);
    },
  };
};
