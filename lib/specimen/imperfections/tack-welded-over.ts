import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { measureRidge } from "../measure";
import { forColumns } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { tackNear } from "./tack-place";
import { between, scaled, TONES } from "./tones";
import { alongColumns } from "./weld-border";

/** Higher or lower than the bead beside it by more than this, and sound metal between lump and notch; mm. */
const THRESHOLD = 0.6;
const BRIDGE = 12;
/** The tack is looked for so far beyond its own ends, mm. */
const LOOKED = 5;

/** What is wrong with the tack: how far it stands out (negative: sunk), and the notches at its datum and far end; shares of the severity. */
interface Fault {
  readonly lump: number;
  readonly notches: readonly [datum: number, far: number];
}

function drawFault(random: RandomStream): Fault {
  const deep = random.uniform(0.85, 1.05);
  const shallow = random.uniform(0.25, 0.55);
  const pair = random.chance(0.5) ? ([deep, shallow] as const) : ([shallow, deep] as const);
  const kind = random.uniform(0, 1);
  if (kind < 0.45) return { lump: random.uniform(0.75, 1), notches: random.chance(0.5) ? [deep, 0] : [0, deep] };
  if (kind < 0.75) return { lump: random.uniform(0, 0.2), notches: pair };
  return { lump: -random.uniform(0.6, 0.8), notches: pair };
}

/** The end of a tack: blunt on the tack's side, run out on the side of the bead that came up to it; mm. */
const NOTCH = { tackSide: 1.05, beadSide: 2.3 };

/**
 * A faulty tack that the root run went over without melting it away: a short length of other metal with ripples of its
 * own, standing out or sunk, with notches where the run met its ends. `severity` = height of the lump over the bead beside
 * it and depth of the notch below it, mm. Truth: `measureRidge`, threshold 0.6 mm; no size.
 */
export const buildTackWeldedOver: FeatureBuilder = (request, random) => {
  const fault = drawFault(random.child("fault"));
  const seed = random.seed();
  const wider = random.uniform(0.15, 0.6);
  const ends = { first: random.uniform(1.5, 3), last: random.uniform(1.5, 3) };
  const half = Math.max(3, request.length / 2);
  let middle = request.x + request.length / 2;
  /** How surely x lies within the tack, 0..1. */
  const inTack = (x: number) =>
    ease(-half - 0.5 * ends.first, -half + 0.5 * ends.first, x - middle) *
    ease(half + 0.5 * ends.last, half - 0.5 * ends.last, x - middle);

  function planTack(work: FaceWork): void {
    middle = tackNear(work, request);
    const [run] = work.plan.runs;
    forColumns(work.strip.grid, middle - half - 4, middle + half + 4, (i, x) => {
      const share = inTack(x);
      const uneven = clamp(1 + 0.3 * gradient1(x / 5, seed) + 0.12 * gradient1(x / 2.2, seed + 1), 0.5, 1.4);
      run.height[i] += fault.lump * request.severity * uneven * share;
      run.halfWidth[i] += (wider + 0.3 * gradient1(x / 4.1, seed + 2)) * share;
      run.ripple[i] *= 1 - 0.85 * share;
      run.raggedMinus[i] *= 1 + 0.4 * share;
      run.raggedPlus[i] *= 1 + 0.4 * share;
    });
  }

  /** The notch at one end, as a share of its depth, at a place `along` mm beyond the tack's end. */
  function notchAt(along: number, y: number, n: number): number {
    const bent =
      along + 0.17 * y * y + 0.8 * gradient1(y / 2.1, seed + 10 + n) + 0.16 * gradient1(y / 0.7, seed + 12 + n);
    const width = (bent < 0 ? NOTCH.tackSide : NOTCH.beadSide) * (1 + 0.3 * gradient1(y / 1.9, seed + 14 + n));
    return Math.exp(-((bent / width) ** 2));
  }

  const boxOf = { y0: -6.5, y1: 6.5 };
  const marks: { k: number; notch: number; tack: number; x: number; y: number }[] = [];

  function cutTack(work: FaceWork): void {
    const { strip, plan } = work;
    const [run] = plan.runs;
    const box = { x0: middle - half - LOOKED, x1: middle + half + LOOKED, ...boxOf };
    forEachPixel(strip.grid, box, (k, x, y) => {
      if (strip.bead[k] < 0.05) return;
      const dy = y - alongColumns(work, run.centre, x);
      const off = Math.abs(dy) / alongColumns(work, run.halfWidth, x);
      const inside = ease(1.02, 0.72, off) * strip.bead[k];
      const tack = inTack(x - 0.12 * dy * dy * Math.sign(x - middle)) * strip.bead[k];
      // it was laid the other way about, on its own
      const own = gradient1(
        (x * run.direction + 0.3 * dy * dy + 0.4 * gradient2(x / 1.6, y / 1.2, seed + 20)) / 0.95,
        seed + 21,
      );
      strip.z[k] += 0.055 * own * tack * ease(1, 0.6, off);
      const notches = fault.notches.map((share, n) => {
        if (share <= 0) return 0;
        const along = n === 0 ? middle - half - x : x - middle - half;
        return share * notchAt(along, dy, n);
      });
      const notch = Math.max(...notches) * inside;
      strip.z[k] -= request.severity * notch;
      if (notch > 0.02 || tack > 0.02) {
        strip.clean[k] = Math.max(strip.clean[k], 0.8 * Math.min(1, 2 * notch + 0.5 * tack));
        marks.push({ k, notch, tack, x, y });
      }
    });
  }

  return {
    id: request.id,
    plan: planTack,
    cut: cutTack,
    paint({ strip }) {
      for (const { k, notch, tack, x, y } of marks) {
        const patch = gradient2(x / 2.3, y / 1.7, seed + 30) + 0.35 * gradient2(x / 0.8, y / 0.7, seed + 31);
        mixMaterial(
          strip,
          k,
          between(TONES.skin, TONES.brown, clamp(0.4 + patch, 0, 1)),
          0.55,
          0.4,
          0.34 * tack * clamp(0.7 + patch, 0, 1),
        );
        mixMaterial(strip, k, scaled(TONES.oxide, 1.2), 0.7, 0.25, 0.26 * ease(0.15, 0.8, notch));
        mixMaterial(strip, k, TONES.slag, 0.4, 0, 0.4 * ease(0.75, 1.15, notch + 0.6 * patch) * ease(0.3, 0.6, notch));
        strip.brush[k] *= 1 - Math.max(notch, 0.7 * tack);
      }
    },
    measure(work) {
      const range = { from: middle - half - LOOKED, to: middle + half + LOOKED };
      const found = measureRidge(work, { range, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "tack-imperfection", found);
    },
  };
};
