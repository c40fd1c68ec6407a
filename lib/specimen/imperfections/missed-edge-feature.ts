import type { ImperfectionType } from "../../imperfections";
import { ease } from "../../math";
import { measureAlongEdge } from "../measure";
import type { FaceWork, Feature } from "../work";
import { cutExposedFace, type ExposedFace, type ExposedTrace, paintExposedFace } from "./exposed-face";
import { truthItem } from "./found";
import { type MissedEdge, planMissedEdge, setBackAlong } from "./missed-edge";

/** A worn corner alone is shallower, mm. */
const THRESHOLD = 0.2;
const BRIDGE = 4;
/** What is sounded begins and ends this far beyond the edge's own range, mm. */
const BEYOND = 1;
const GAPING = 0.12;

/** An unfused edge as one type has it. */
export interface UnfusedEdge {
  readonly type: ImperfectionType;
  readonly edge: MissedEdge;
  /** Edge exponent of the bead beside it. */
  readonly exponent: number;
  /** Shapes what lies below before the bead is laid. */
  readonly lower: (work: FaceWork) => void;
  /** The face that stays bare. */
  readonly bare: (work: FaceWork) => Pick<ExposedFace, "corner" | "slope" | "floor" | "crevice" | "beyondCentre">;
  /** Sounded from this far inside the joint's edge to this far outside it, mm. */
  readonly window: { readonly inside: number; readonly outside: number };
}

/**
 * The phases of an edge that the bead ran past without fusing it. Truth: `measureAlongEdge` at the joint's edge over the
 * window, threshold 0.2 mm, fused bridges up to 4 mm.
 */
export function missedEdgeFeature(id: string, { type, edge, exponent, lower, bare, window }: UnfusedEdge): Feature {
  const { side, range, preparation } = edge;
  let face: ExposedFace | null = null;
  let trace: ExposedTrace = [];
  return {
    id,
    plan(work) {
      lower(work);
      planMissedEdge(work, edge, exponent);
    },
    cut(work) {
      const setBack = setBackAlong(edge);
      const shown = (x: number) => ease(-0.1, 0.2, setBack(x));
      face = { side, range, preparation, shown, gaping: GAPING, ...bare(work) };
      trace = cutExposedFace(work, face);
    },
    paint(work) {
      if (face) paintExposedFace(work, face, trace);
    },
    measure(work) {
      const search = {
        side,
        range: { from: range.from - BEYOND, to: range.to + BEYOND },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      };
      const found = measureAlongEdge(work, search, () => side * work.plan.groove, window);
      return found && truthItem(work, id, type, found);
    },
  };
}
