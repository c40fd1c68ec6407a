import { nearestRow, rowY } from "../../surface";
import type { FaceWork, FeatureRequest } from "../work";
import { runIndex } from "./visible-run";
import { evened, type WeldBorder } from "./weld-border";

/** The border is looked for within this distance of the edge as laid, mm. */
const SEARCHED = 1.4;

/**
 * Index of the later of two neighbouring runs, the one whose lower edge lies on the run before it: the one the request
 * names, or the last. Null where there is one run only.
 */
export function laterRun(work: FaceWork, request: Pick<FeatureRequest, "run">): number | null {
  return work.plan.runs.length < 2 ? null : Math.max(1, runIndex(work, request));
}

/**
 * Border of a run's metal on the run before it (towards plate B) as it lies, scallops included; y mm per column, NaN where
 * the run is absent.
 */
export function runBorder(work: FaceWork, run: number): WeldBorder {
  const { grid, run: top } = work.strip;
  const edge = work.runMinus[run];
  const raw = edge.map((at, i) => {
    if (Number.isNaN(at)) return Number.NaN;
    const last = nearestRow(grid, at + SEARCHED);
    for (let j = nearestRow(grid, at - SEARCHED); j <= last; j++)
      if (top[j * grid.columns + i] === run + 1) return rowY(grid, j) - 0.5 / grid.perMm;
    return at;
  });
  return evened(raw);
}
