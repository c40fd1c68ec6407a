import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { betweenEdges, measureHollow } from "../measure";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { buildRootPenetration } from "./root-penetration";
import { tackNear } from "./tack-place";
import { between, scaled, TONES } from "./tones";

const THRESHOLD = 0.3;
const BRIDGE = 6;
/** The gap is sounded within this share of its half width, as for incomplete penetration. */
const SOUNDED = 0.7;
/** Level of the tack's underside below the plates, as a share of the depth of the gap, and how far it fills the gap's width. */
const TACK = { level: 0.62, fills: 0.86 };

/**
 * A tack that broke or never went through: the root run stops at either side, and in the open gap lies the tack's own
 * short metal, cracked across. `severity` = depth of the gap, mm. Truth: `measureHollow` within 0.7 of the gap's half
 * width, threshold 0.3 mm; no size.
 */
export const buildBrokenTack: FeatureBuilder = (request, random): Feature => {
  const seed = random.seed();
  const shift = random.uniform(-0.18, 0.18) * request.length;
  const opening = random.uniform(0.25, 0.55);
  const isBroken = random.chance(0.7);
  const shares = { first: random.uniform(0.34, 0.46), last: random.uniform(0.34, 0.46) };
  let gap: Feature | null = null;
  let middle = 0;
  const touched: { k: number; share: number; crack: number; x: number; y: number }[] = [];

  /** The two halves came apart along a jagged line across. */
  const breakAt = (y: number) =>
    middle + shift + 0.7 * gradient1(y / 1.5, seed + 1) + 0.25 * gradient1(y / 0.5, seed + 2);

  function cutTack(work: FaceWork): void {
    const { strip, plan } = work;
    const { grid, z } = strip;
    const chord = levelBetweenPlates(work);
    const first = middle - shares.first * request.length;
    const last = middle + shares.last * request.length;
    const box = { x0: first - 2, x1: last + 2, y0: -plan.groove, y1: plan.groove };
    forEachPixel(grid, box, (k, x, y, i) => {
      const across = Math.abs(y) / (TACK.fills * plan.groove * (1 + 0.14 * gradient1(x / 2.7, seed + (y < 0 ? 3 : 4))));
      const bow = 0.16 * y * y + 0.5 * gradient1(y / 1.7, seed + 5);
      const along = Math.min(x - first - bow, last - bow - x);
      const share = ease(-0.2, 1.3, along) * ease(1.08, 0.85, across);
      if (share <= 0.01) return;
      const own = gradient1((x - 0.4 * y * y) / 0.85 + 0.5 * gradient2(x / 1.4, y, seed + 6), seed + 7);
      const round = request.severity * (0.1 - 0.22 * Math.min(1, across) ** 2);
      const top =
        chord(i, y) - TACK.level * request.severity + round + 0.06 * own + 0.08 * gradient1(x / 3.3, seed + 8);
      const off = isBroken ? x - breakAt(y) : Number.POSITIVE_INFINITY;
      const crack = ease(opening, 0.35 * opening, Math.abs(off));
      // one half hangs a little lower than the other
      const lower = off > 0 ? 0.12 * Math.exp(-off / 3) : 0;
      const target = top - lower - crack * (0.5 + 0.3 * request.severity);
      z[k] = mix(z[k], Math.max(target, z[k] - 0.9 * crack), share);
      touched.push({ k, share, crack: crack * share, x, y });
    });
  }

  return {
    id: request.id,
    plan(work) {
      middle = tackNear(work, request);
      gap = buildRootPenetration({ ...request, x: middle - request.length / 2 }, random.child("gap"));
      gap.plan?.(work);
    },
    cut(work) {
      gap?.cut?.(work);
      cutTack(work);
    },
    paint(work) {
      gap?.paint?.(work);
      for (const { k, share, crack, x, y } of touched) {
        const patch = gradient2(x / 1.9, y / 1.3, seed + 9) + 0.3 * gradient2(x / 0.6, y / 0.5, seed + 10);
        const metal = between(scaled(TONES.skin, 1.1), scaled(TONES.brown, 1.1), clamp(0.35 + 0.9 * patch, 0, 1));
        mixMaterial(work.strip, k, metal, 0.5, 0.45, 0.8 * share * (1 - crack));
        mixMaterial(work.strip, k, TONES.soot, 0.75, 0.1, 0.6 * crack);
      }
    },
    measure(work) {
      const found = measureHollow(work, betweenEdges(work.plan.groove), SOUNDED, {
        range: { from: middle - request.length / 2 - 6, to: middle + request.length / 2 + 6 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "tack-imperfection", found);
    },
  };
};
