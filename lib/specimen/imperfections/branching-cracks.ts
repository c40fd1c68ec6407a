import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { taperingOpening, unevenOpening } from "./crack-opening";
import { crackPath, cutOff, forkFrom, settleIntoCreases } from "./crack-path";
import { placeOnRun, runIndex } from "./visible-run";

const NOTCH = 0.2;
/** Tips too fine to be seen, mm at each end. */
const HIDDEN_TIP = 0.35;
const INTO_PLATE = 0.6;

/** The main line, from where the crack began to its tip, aslant on its run. */
function stem(work: FaceWork, request: FeatureRequest, random: RandomStream): Point[] {
  const run = runIndex(work, request);
  const from = request.x - HIDDEN_TIP;
  const to = request.x + Math.max(5, request.length) + HIDDEN_TIP;
  const y = (x: number) => request.y ?? placeOnRun(work, run, x);
  const slant = random.normal(0, 0.7);
  const forward = random.chance(0.5);
  const [a, b] = forward ? [from, to] : [to, from];
  const line = crackPath(random, [a, 0], [b, 0], 0.7, 0.6, 0.3).map(([x, off]): Point => {
    const along = (x - from) / (to - from) - 0.5;
    return [x, y(x) + off + slant * along];
  });
  return settleIntoCreases(work.strip, line, 0.4);
}

function drawTwig(work: FaceWork, request: FeatureRequest, random: RandomStream): CrackLine[] {
  const main = stem(work, request, random);
  const length = Math.max(5, request.length);
  const middle = request.x + length / 2;
  const low = toeAt(work, -1, middle, 3) - INTO_PLATE;
  const high = toeAt(work, 1, middle, 3) + INTO_PLATE;
  const widest = (request.severity > 0 ? request.severity : 0.15) * clamp(0.5 + length / 40, 0.6, 1.1);
  const swelling = unevenOpening(random, 1.2 * widest);
  const lines: CrackLine[] = [
    { points: main, width: (t, whole) => swelling(t, whole) * (1 - (0.4 * t) / whole), depth: NOTCH },
  ];
  const count = clamp(Math.round(2 + length / 8 + random.uniform(-0.7, 0.7)), 2, 7);
  let side = random.pick([-1, 1]);
  for (let n = 0; n < count; n++) {
    const at = 0.12 + (0.74 * (n + random.uniform(0.1, 0.9))) / count;
    const reach = clamp(length * random.uniform(0.1, 0.3), 1.3, 6.5) * (n === count - 1 ? 1.2 : 1);
    side = random.chance(0.75) ? -side : side;
    const turn = side * random.uniform(0.4, 0.95);
    const twig = cutOff(settleIntoCreases(work.strip, forkFrom(random, main, at, turn, reach), 0.25), low, high);
    const width = 0.85 * widest * random.uniform(0.65, 1);
    lines.push({ points: twig, width: taperingOpening(random, width), depth: 0.85 * NOTCH });
    if (twig.length < 5 || !random.chance(0.5)) continue;
    const again = forkFrom(random, twig, random.uniform(0.3, 0.6), -side * random.uniform(0.4, 0.9), 0.5 * reach);
    lines.push({ points: cutOff(again, low, high), width: taperingOpening(random, 0.65 * width), depth: 0.6 * NOTCH });
  }
  return lines;
}

/**
 * One crack from `x` over `length` mm along a run that forks like a twig, `severity` mm wide (0.08 to 0.18), its forks all
 * pointing the way it grew. Truth: extent of the visible opening, forks included; no size.
 */
export const buildBranchingCracks: FeatureBuilder = (request, random) =>
  crackFeature(request.id, "branching-cracks", random, (work) => drawTwig(work, request, random.child("twig")));
