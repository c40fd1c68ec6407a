import { clamp, ease, mix } from "../../math";
import { forEachPixel, fractal1, gradient1, gradient2, nearestColumn } from "../../surface";
import { mixMaterial } from "../field";
import { measureValley, type ValleySearch, valleySoundings } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { laterRun, runBorder } from "./run-border";
import { between, TONES } from "./tones";
import { drawEnds, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, columnTable, type WeldBorder } from "./weld-border";

/** Deeper than this below the sound valley counts, mm; fused bridges up to `BRIDGE` mm do not end it. */
const THRESHOLD = 0.22;
const BRIDGE = 3;
/** The later run's edge is rolled over instead of wetted out. */
const ROLLED_EXPONENT = 4.6;
/** Furthest that the rolled edge leans out over the earlier run, mm. */
const LEANS = 0.55;
const EASED = 3;
/** Width of the bead's edge that is rounded over the crease, mm. */
const ROUNDED = 0.75;

/** What the cut left for the painter. */
interface Touched {
  readonly k: number;
  readonly x: number;
  readonly y: number;
  /** Outside the later run's border, mm. */
  readonly out: number;
  /** Depth of the crease here as a share of its own bottom, and of the deepest one. */
  readonly share: number;
  readonly open: number;
}

/**
 * Lack of inter-run fusion open to the surface: a sharp, broken crease under the rolled edge of the later of two runs
 * (`run`, the last one if absent). `severity` = largest depth below the sound valley, mm. Nothing with a single run.
 * Truth: `measureValley` with threshold 0.22 mm, fused bridges up to 3 mm.
 */
export const buildInterRunFusion: FeatureBuilder = (request, random) => {
  const ends = drawEnds(random, request.length, [2.5, 5], [5, 9]);
  const from = request.x - 0.45 * ends.first;
  const to = request.x + request.length + 0.45 * ends.last;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.7, seed);
  const rolled = evenedOut(unevenEnvelope(from - 2, to + 2, ends, 0.8, seed + 40), 1.5);
  const uneven = (x: number) =>
    envelope(x) * clamp(0.62 + 0.55 * fractal1(x / 4.2, seed + 2, 3) + 0.12 * gradient1(x / 0.9, seed + 5), 0.12, 1.3);
  const most = largestAlong(from, to, uneven);
  const depthAt = (x: number) => (request.severity * uneven(x)) / most;
  const trace: Touched[] = [];
  /** A shallow crease is hardly more than the valley between two sound runs: 0 shallow .. 1 gaping. */
  const gaping = ease(0.35, 1.1, request.severity);

  /** Where the crease runs: it leaves the bead's border a little, straighter than the scallops. */
  const creaseAt = (x: number) => 0.05 + 0.08 * gradient1(x / 2.1, seed + 6);
  const halfWidthAt = (x: number) => clamp(0.2 + 0.07 * gradient1(x / 1.7, seed + 7), 0.13, 0.3);

  const searchAlong = (work: FaceWork, border: WeldBorder): ValleySearch => ({
    edge: (x) => alongColumns(work, border, x),
    side: -1,
    range: { from: from - 1, to: to + 1 },
    threshold: THRESHOLD,
    bridge: BRIDGE,
  });

  /** What the crease still has to be cut by: the rolled edge alone makes the valley deeper already. */
  function missingDepth(work: FaceWork, border: WeldBorder): (x: number) => number {
    const missing = new Float32Array(border.length);
    for (const { x, value } of valleySoundings(work.strip, searchAlong(work, border)))
      missing[nearestColumn(work.strip.grid, x)] = depthAt(x) - Math.max(0, value);
    return evenedOut((x) => Math.max(0.3 * depthAt(x), alongColumns(work, missing, x)), 0.4);
  }

  function cutCrease(work: FaceWork, border: WeldBorder): void {
    const { strip } = work;
    const missing = columnTable(work, missingDepth(work, border), from - 1, to + 1);
    const middle = alongColumns(work, border, request.x + request.length / 2);
    const box = { x0: from - 1, x1: to + 1, y0: middle - 4, y1: middle + 4 };
    forEachPixel(strip.grid, box, (k, x, y) => {
      const out = alongColumns(work, border, x) - y;
      if (!(out > -1.2 && out < 1)) return;
      const depth = alongColumns(work, missing, x);
      if (depth < 0.01) return;
      const open = depthAt(x) / request.severity;
      strip.clean[k] = Math.max(strip.clean[k], 0.8 * ease(0, 0.2, open));
      const half = halfWidthAt(x) * (0.7 + 0.5 * open) * mix(0.8, 1.1, gaping);
      const away = (out - creaseAt(x)) / half;
      // the earlier run's side falls in slowly, the rolled edge overhangs as far as a height field can
      const share = away > 0 ? Math.max(0, 1 - away / 1.9) ** 1.5 : Math.max(0, 1 + away) ** 1.1;
      const lip = out < 0.05 && out > 0.05 - ROUNDED ? 0.14 * depth * (1 + (out - 0.05) / ROUNDED) ** 2.2 : 0;
      strip.z[k] -= Math.max(depth * share, lip);
      if (share > 0 || out > -1) trace.push({ k, x, y, out, share, open });
    });
  }

  return {
    id: request.id,
    plan(work) {
      const index = laterRun(work, request);
      if (index === null) return;
      const run = work.plan.runs[index];
      forColumns(work.strip.grid, from - EASED - 2, to + EASED + 2, (i, x) => {
        const share = rolled(x);
        if (share < 0.005) return;
        const tongue = clamp(0.55 + 0.6 * gradient1(x / 3.7, seed + 8) + 0.2 * gradient1(x / 1.5, seed + 9), 0, 1.2);
        const edge = run.centre[i] - run.halfWidth[i];
        moveToe(run, -1, i, edge - LEANS * tongue * share, 1);
        run.exponentMinus[i] = mix(run.exponentMinus[i], ROLLED_EXPONENT + gradient1(x / 4.5, seed + 10), share);
        run.raggedMinus[i] *= 1 + 0.3 * share;
      });
    },
    cut(work) {
      const index = laterRun(work, request);
      if (index !== null) cutCrease(work, runBorder(work, index));
    },
    paint(work) {
      const { strip, noise } = work;
      for (const { k, x, y, out, share, open } of trace) {
        const skin =
          out < 0 ? ease(-0.9, -0.2, out) * clamp(0.4 + 0.6 * noise.patchFine[k], 0, 0.7) * ease(0.05, 0.4, open) : 0;
        mixMaterial(strip, k, TONES.skin, 0.46, 0.6, skin);
        if (share <= 0) continue;
        const wall = ease(0.1, 0.55, share) * ease(0.05, 0.35, open);
        mixMaterial(strip, k, TONES.oxide, 0.5, 0.4, mix(0.12, 0.45, gaping) * wall);
        const gapes = clamp(mix(0, 0.3, gaping) + 1.1 * fractal1(x / 3.4, seed + 12, 2), 0, 1);
        mixMaterial(
          strip,
          k,
          TONES.shade,
          0.7,
          0.1,
          mix(0.35, 0.75, gaping) * ease(0.62, 0.95, share) * gapes * ease(0.15, 0.5, open),
        );
        const speck =
          ease(0.15, 0.45, gradient2(x / 1.1, y / 0.5, seed + 13) + 0.4 * gradient1(x / 3.1, seed + 14)) * wall;
        const glass = between(TONES.slag, TONES.slagGreen, clamp(0.5 + gradient1(x / 0.7, seed + 15), 0, 1));
        mixMaterial(strip, k, glass, 0.26, 0, mix(0.25, 0.75, gaping) * speck);
        strip.brush[k] *= 1 - wall;
      }
    },
    measure(work) {
      const index = laterRun(work, request);
      if (index === null) return null;
      const border = runBorder(work, index);
      const found = measureValley(work.strip, searchAlong(work, border));
      return found && truthItem(work, request.id, "inter-run-fusion", found);
    },
  };
};
