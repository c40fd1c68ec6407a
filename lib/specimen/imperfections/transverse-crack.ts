import type { Point } from "../truth";
import type { Feature, FeatureBuilder } from "../work";
import { boxAround, openCrack, paintCracks, unevenOpening } from "./crack-opening";
import { crackPath, echelonPieces, settleIntoCreases } from "./crack-path";
import { measuredCrack } from "./measured-mask";
import { placeOnRun, runIndex } from "./visible-run";

const WIDEST = 0.16;

/**
 * A crack across the weld at `x`, `severity` mm long across (or, without one, as wide as the run), on one run or over
 * several. Truth: a point at the middle of the visible opening (coverage from 0.25 up); width = its extent across.
 */
export const transverseCrack: FeatureBuilder = (request, random): Feature => {
  let lines: Point[][] = [];
  return {
    id: request.id,
    cut(work) {
      const path = random.child("path");
      const middle = request.y ?? placeOnRun(work, runIndex(work, request), request.x, path, 0.3);
      const length = request.severity > 0 ? request.severity : 8;
      const tilt = path.normal(0, 0.09) * length;
      const from: Point = [request.x - tilt / 2, middle - length / 2 - 0.2];
      const to: Point = [request.x + tilt / 2, middle + length / 2 + 0.2];
      const settled = settleIntoCreases(work.strip, crackPath(path, from, to, 0.32, 0.55), 0.5);
      const widest = path.uniform(0.8, 1.15) * WIDEST;
      const pieces = length > 7 && path.chance(0.55) ? 2 : 1;
      const main = echelonPieces(path, settled.map(flip), pieces, 0.3).map((piece) => piece.map(flip));
      for (const piece of main) openCrack(work.strip, piece, unevenOpening(path, widest), 0.22);
      lines = main;
      if (path.chance(0.6)) {
        const [x, y] = settled[Math.floor(settled.length * path.uniform(0.3, 0.7))];
        const branch = crackPath(path, [x, y], [x + path.normal(0, 0.9), y + path.uniform(1, 2.4)], 0.08, 0.4);
        openCrack(work.strip, branch, (t, whole) => 0.65 * widest * (1 - t / whole), 0.18);
        lines.push(branch);
      }
    },
    paint(work) {
      if (lines.length) paintCracks(work.strip, boxAround(lines, 0.4));
    },
    measure: (work) => (lines.length ? measuredCrack(work, request.id, "transverse-crack", lines) : null),
  };
};

/** Exchanges along and across. */
const flip = ([x, y]: Point): Point => [y, x];
