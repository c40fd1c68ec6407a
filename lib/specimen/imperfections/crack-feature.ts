import type { ImperfectionType } from "../../imperfections";
import type { RandomStream } from "../../random";
import type { Point } from "../truth";
import type { FaceWork, Feature } from "../work";
import {
  boxAround,
  type CrackTrace,
  type OpeningWidth,
  openCrack,
  paintCracks,
  paintSeam,
  SEAMS,
  type Seam,
} from "./crack-opening";
import { measuredCrack } from "./measured-mask";

/** One line of a crack: where it runs, how wide it gapes, mm deep. */
export interface CrackLine {
  readonly points: readonly Point[];
  readonly width: OpeningWidth;
  readonly depth: number;
}

const SEAM_REACH = 0.5;
/** Fewer knots than this are no line. */
const LEAST_KNOTS = 2;

/** How often what has settled beside a crack, in the order of `SEAMS`. */
function drawSeam(random: RandomStream): Seam {
  const luck = random.uniform(0, 1);
  return luck < 0.7 ? SEAMS[0] : luck < 0.88 ? SEAMS[1] : SEAMS[2];
}

/**
 * A feature of one or more crack lines, drawn when the metal lies there. Truth: the visible opening near them, parts up
 * to `bridge` mm apart taken together, see `measuredCrack`.
 */
export function crackFeature(
  id: string,
  type: ImperfectionType,
  random: RandomStream,
  drawLines: (work: FaceWork) => readonly CrackLine[],
  bridge?: number,
): Feature {
  const lines: (readonly Point[])[] = [];
  const traces: CrackTrace[] = [];
  return {
    id,
    cut(work) {
      for (const { points, width, depth } of drawLines(work)) {
        if (points.length < LEAST_KNOTS) continue;
        lines.push(points);
        traces.push(openCrack(work.strip, points, width, depth));
      }
    },
    paint({ strip }) {
      if (lines.length === 0) return;
      const draw = random.child("seam");
      const seam = drawSeam(draw);
      for (const trace of traces) paintSeam(strip, trace, seam, draw.seed());
      paintCracks(strip, boxAround(lines, SEAM_REACH));
    },
    measure: (work) => (lines.length > 0 ? measuredCrack(work, id, type, lines, bridge) : null),
  };
}
