import type { RandomStream } from "../../random";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { taperingOpening, unevenOpening } from "./crack-opening";
import { crackPath, echelonPieces, settleIntoCreases } from "./crack-path";
import { placeOnRun, runIndex } from "./visible-run";

const NARROWEST = 0.045;
/** A longer crack gapes wider: mm per mm. */
const WIDENS = 0.012;
const NOTCH = 0.2;
/** It runs in a crease between two ripples where one lies within this, mm. */
const CREASE_REACH = 0.9;
/** Tips too fine to be seen, mm at each end. */
const HIDDEN_TIP = 0.2;

/** Exchanges along and across. */
const flip = ([x, y]: Point): Point => [y, x];

function drawLines(work: FaceWork, request: FeatureRequest, path: RandomStream): CrackLine[] {
  const middle = request.y ?? placeOnRun(work, runIndex(work, request), request.x, path, 0.3);
  const length = request.severity > 0 ? request.severity : 8;
  const tilt = path.normal(0, 0.14) * length;
  const half = length / 2 + HIDDEN_TIP;
  const from: Point = [request.x - tilt / 2, middle - half];
  const to: Point = [request.x + tilt / 2, middle + half];
  const settled = settleIntoCreases(work.strip, crackPath(path, from, to, 0.05 * length, 0.55, 0.24), CREASE_REACH);
  const widest = path.uniform(0.85, 1.25) * (NARROWEST + WIDENS * length);
  const pieces = length > 7 && path.chance(0.55) ? 2 : 1;
  const lines: CrackLine[] = echelonPieces(path, settled.map(flip), pieces, 0.3).map((piece) => ({
    points: piece.map(flip),
    width: unevenOpening(path, widest),
    depth: NOTCH,
  }));
  if (length < 7 || !path.chance(0.2)) return lines;
  const [x, y] = settled[Math.floor(settled.length * path.uniform(0.3, 0.7))];
  const branch = crackPath(path, [x, y], [x + path.normal(0, 0.9), y + path.uniform(1, 2.2)], 0.08, 0.4);
  return [...lines, { points: branch, width: taperingOpening(path, 0.65 * widest), depth: 0.8 * NOTCH }];
}

/**
 * A crack across the weld at `x`, `severity` mm long across (8 without one), on one run or over several. Truth: a point
 * at the middle of the visible opening (coverage from 0.25 up); width = the larger of its extents.
 */
export const transverseCrack: FeatureBuilder = (request, random) =>
  crackFeature(request.id, "transverse-crack", random, (work) => drawLines(work, request, random.child("path")));
