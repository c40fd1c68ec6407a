import type { RandomStream } from "../../random";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { boxAround, openCrack, paintCracks, unevenOpening } from "./crack-opening";
import { crackPath, echelonPieces, settleIntoCreases } from "./crack-path";
import { measuredCrack } from "./measured-mask";
import { placeOnRun, runIndex } from "./visible-run";

/** Where a longitudinal crack runs. */
const PLACES = {
  /** Along the middle of a run. */
  centre: { wander: 0.5, settle: 0.45, apart: 0.42, facet: 0.6, jagged: 0.26 },
  /** In the corner of a toe. */
  toe: { wander: 0.14, settle: 0.24, apart: 0.12, facet: 0.55, jagged: 0.13 },
  /** In the plate 1.2 to 2.2 mm outside a toe. */
  haz: { wander: 0.35, settle: 0.12, apart: 0.34, facet: 0.7, jagged: 0.2 },
} as const;
type Place = keyof typeof PLACES;

const NOTCH = 0.2;
/** Tips too fine to be seen, mm at each end. */
const HIDDEN_TIP = 0.35;

function baseLine(work: FaceWork, request: FeatureRequest, place: Place, away: number): (x: number) => number {
  if (place === "centre") {
    const run = runIndex(work, request);
    return (x) => request.y ?? placeOnRun(work, run, x);
  }
  const outside = place === "haz" ? away : 0.05;
  return (x) => toeAt(work, request.side, x, 1.2) + request.side * outside;
}

/** Short side branches that leave the main line at an angle. */
function sideBranches(random: RandomStream, line: readonly Point[], length: number): Point[][] {
  const count = Math.floor(length / 11 + random.uniform(0, 1));
  return Array.from({ length: count }, () => {
    const [x, y] = line[2 + random.integer(Math.max(1, line.length - 4))] ?? line[0];
    const angle = random.normal(0, 0.3) + (random.chance(0.5) ? 0.6 : -0.6) + (random.chance(0.5) ? Math.PI : 0);
    const reach = random.uniform(0.7, 2);
    return crackPath(random, [x, y], [x + reach * Math.cos(angle), y + reach * Math.sin(angle)], 0.06, 0.35);
  });
}

/**
 * A crack along the weld from `x` over `length` mm, `severity` mm wide (0.1 to 0.25), variant "centre" (default), "toe"
 * or "haz", in one to four pieces that overlap. Truth: from the first to the last place where the opening covers a
 * quarter of a pixel or more; no size.
 */
export const longitudinalCrack: FeatureBuilder = (request, random): Feature => {
  const place: Place = request.variant === "toe" || request.variant === "haz" ? request.variant : "centre";
  const shape = PLACES[place];
  let lines: Point[][] = [];
  return {
    id: request.id,
    cut(work) {
      const path = random.child("path");
      const base = baseLine(work, request, place, path.uniform(1.2, 2.2));
      const straight = crackPath(
        path,
        [request.x - HIDDEN_TIP, 0],
        [request.x + request.length + HIDDEN_TIP, 0],
        shape.wander,
        shape.facet,
        shape.jagged,
      );
      const laid = straight.map(([x, y]): Point => [x, y + base(x)]);
      const settled = settleIntoCreases(work.strip, laid, shape.settle);
      const pieces = request.length > 10 ? 1 + path.integer(Math.min(4, Math.floor(request.length / 8) + 1)) : 1;
      const main = echelonPieces(path, settled, pieces, shape.apart);
      const widest = request.severity > 0 ? request.severity : 0.15;
      for (const piece of main) openCrack(work.strip, piece, unevenOpening(path, widest), NOTCH);
      const branches = sideBranches(path, settled, request.length);
      for (const branch of branches)
        openCrack(work.strip, branch, (t, length) => 0.65 * widest * (1 - t / length), 0.75 * NOTCH);
      lines = [...main, ...branches];
    },
    paint(work) {
      if (lines.length) paintCracks(work.strip, boxAround(lines, 0.4));
    },
    measure: (work) => (lines.length ? measuredCrack(work, request.id, "longitudinal-crack", lines) : null),
  };
};
