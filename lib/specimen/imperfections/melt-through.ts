import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { measureCrown } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { between, scaled, TONES } from "./tones";
import { evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";

/** Crown from which the penetration is recorded, mm. */
const THRESHOLD = 2.6;
const BRIDGE = 3;
/** A pool this wide no longer follows the joint: mm a side, and the share of it that comes in lobes. */
const WIDENED = { least: 1.1, most: 2.3, lobes: 0.55 };

/**
 * Excessive melt-through (5043): the root pool fell through as a whole and froze as a wide, lumpy, oxidised belly with
 * steep sides. `severity` = largest height above the plates, mm. Truth: `measureCrown`, length where it exceeds 2.6 mm.
 */
export const buildMeltThrough: FeatureBuilder = (request, random) => {
  const ends = { first: random.uniform(5, 9), last: random.uniform(5, 9) };
  // where it is no higher than a sound bead it does not count as length
  const before = clamp((THRESHOLD - 0.9) / (request.severity - 0.9), 0.3, 0.95);
  const from = request.x - before * ends.first;
  const to = request.x + request.length + before * ends.last;
  const seed = random.seed();
  const wider = random.uniform(WIDENED.least, WIDENED.most);
  const envelope = unevenEnvelope(from, to, ends, 0.7, seed);
  const uneven = (x: number) =>
    envelope(x) * clamp(0.86 + 0.34 * gradient1(x / 5.2, seed + 2) + 0.1 * gradient1(x / 3.6, seed + 3), 0.45, 1.25);
  const most = largestAlong(from, to, uneven);
  const slow = evenedOut(envelope, 2);
  const lobes = (x: number, side: number) =>
    1 -
    WIDENED.lobes +
    WIDENED.lobes *
      clamp(0.5 + gradient1(x / 6.8, seed + 6 + side) + 0.4 * gradient1(x / 3.1, seed + 9 + side), 0, 1.4);
  const lumpsAt = (x: number, y: number) =>
    0.26 * gradient2(x / 2.6, y / 2.1, seed + 12) +
    0.08 * gradient2(x / 1.1, y / 0.9, seed + 13) -
    0.1 * Math.abs(gradient2(x / 1.9, y / 1.3, seed + 14));

  function sag(work: FaceWork): void {
    const [run] = work.plan.runs;
    const { position } = work.joint;
    forColumns(work.strip.grid, from - 3, to + 3, (i, x) => {
      const share = slow(x);
      const height = uneven(x) / most;
      run.height[i] = mix(run.height[i], Math.max(run.height[i], 0.97 * request.severity), height);
      for (const side of [-1, 1] as const) {
        const lower = position === "PC" ? (side < 0 ? 1.35 : 0.5) : 1;
        moveToe(run, side, i, run.centre[i] + side * (run.halfWidth[i] + wider * lower * lobes(x, side) * share), 1);
      }
      run.exponentMinus[i] = mix(run.exponentMinus[i], position === "PC" ? 5 : 3.7, share);
      run.exponentPlus[i] = mix(run.exponentPlus[i], position === "PC" ? 2.4 : 3.7, share);
      run.raggedMinus[i] *= 1 + 0.5 * share;
      run.raggedPlus[i] *= 1 + 0.5 * share;
      run.ripple[i] *= 1 - 0.8 * share;
    });
  }

  const boxOf = { x0: from - 2, x1: to + 2, y0: -9, y1: 9 };

  return {
    id: request.id,
    plan: sag,
    cut({ strip }) {
      forEachPixel(strip.grid, boxOf, (k, x, y) => {
        const share = envelope(x) * strip.bead[k];
        if (share < 0.02) return;
        strip.z[k] += share * lumpsAt(x, y);
        strip.clean[k] = Math.max(strip.clean[k], 0.8 * share);
      });
    },
    paint({ strip }) {
      forEachPixel(strip.grid, boxOf, (k, x, y) => {
        const patch = gradient2(x / 3.1, y / 2.2, seed + 15) + 0.4 * gradient2(x / 0.9, y / 0.8, seed + 16);
        const share = ease(0.1, 0.7, envelope(x) + 0.3 * patch) * strip.bead[k];
        if (share < 0.02) return;
        const crust = ease(-0.1, 0.45, patch);
        mixMaterial(
          strip,
          k,
          between(scaled(TONES.skin, 1.25), scaled(TONES.oxide, 1.2), crust),
          0.5 + 0.28 * crust,
          0.6 - 0.4 * crust,
          0.62 * share,
        );
        mixMaterial(strip, k, TONES.rust, 0.85, 0.05, 0.2 * share * ease(0.2, 0.6, -patch));
        mixMaterial(strip, k, TONES.slag, 0.4, 0, 0.6 * share * ease(0.45, 0.7, patch));
        strip.brush[k] *= 1 - share;
      });
    },
    measure(work) {
      const found = measureCrown(work, { range: { from: from - 2, to: to + 2 }, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "excess-penetration", found);
    },
  };
};
