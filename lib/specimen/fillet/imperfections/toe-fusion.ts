import { clamp, ease, mix } from "../../../math";
import { forEachPixel, fractal1, gradient1, gradient2 } from "../../../surface";
import { mixMaterial } from "../../field";
import { truthItem } from "../../imperfections/found";
import { TONES } from "../../imperfections/tones";
import { drawEnds, evenedOut, unevenEnvelope } from "../../imperfections/uneven-ends";
import { alongColumns, weldBorder } from "../../imperfections/weld-border";
import { measureAlongEdge } from "../../measure";
import { forColumns, outerRun } from "../../runs/edit";
import type { FeatureBuilder } from "../../work";

/** Deeper than this below the plate counts, mm; sound stretches up to the second do not end it. */
const THRESHOLD = 0.12;
const BRIDGE = 2.5;
/** Sounded from inside the toe to outside it, mm. */
const WINDOW = { inside: 0.5, outside: 1.2 };
/** The bead's edge stands up unwetted, mm and exponent. */
const COLD = { exponent: 4.4, height: 0.3 };
/** Half width of the open joint between bead and plate, mm, from tight to open. */
const OPEN = [0.14, 0.3] as const;

/**
 * Lack of side wall fusion at a toe: the bead lies against the plate, which was not melted: a straight plate edge, a narrow,
 * broken, open line between both, and an unwetted rounded bead edge. `severity` = depth of the line below the plate, mm.
 * Truth: `measureAlongEdge`, longest stretch deeper than 0.12 mm.
 */
export const toeFusion: FeatureBuilder = (request, random) => {
  const { side, severity } = request;
  const ends = drawEnds(random, request.length, [3, 5], [5, 10]);
  const from = request.x - 0.4 * ends.first;
  const to = request.x + request.length + 0.4 * ends.last;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.9, seed);
  const cold = evenedOut((x) => ease(0, 0.6, envelope(x)), 2.5);
  const depthAt = (x: number) => {
    const uneven = clamp(0.8 + 0.55 * fractal1(x / 4.6, seed + 2, 2) + 0.15 * gradient1(x / 1.2, seed + 3), 0.1, 1.1);
    return severity * envelope(x) * uneven;
  };
  const opened: { k: number; share: number; out: number }[] = [];

  return {
    id: request.id,
    plan(work) {
      const run = outerRun(work.plan, side);
      const exponent = side < 0 ? run.exponentMinus : run.exponentPlus;
      const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
      forColumns(work.strip.grid, from - 3, to + 3, (i, x) => {
        exponent[i] = mix(exponent[i], COLD.exponent, cold(x));
        run.height[i] += COLD.height * cold(x);
        ragged[i] *= 1 - 0.45 * cold(x);
      });
    },
    cut(work) {
      const { strip } = work;
      const border = weldBorder(work, side);
      const middle = alongColumns(work, border, (from + to) / 2);
      forEachPixel(strip.grid, { x0: from, x1: to, y0: middle - 4, y1: middle + 4 }, (k, x, y) => {
        const out = (y - alongColumns(work, border, x)) * side;
        if (!(out > -0.9 && out < 0.9)) return;
        const depth = depthAt(x);
        if (depth < 0.02) return;
        const half = mix(...OPEN, clamp(0.35 + 0.8 * gradient1(x / 2.1, seed + 5), 0, 1));
        const at = 0.04 + 0.05 * gradient1(x / 1.7, seed + 6);
        const share = Math.max(0, 1 - Math.abs(out - at) / half) ** 0.7;
        strip.clean[k] = Math.max(strip.clean[k], cold(x));
        if (share <= 0) return;
        // down to the plate that was there before and on into the gap
        strip.z[k] = mix(strip.z[k], Math.min(strip.z[k], strip.parent[k] - depth), share);
        opened.push({ k, share: share * ease(0.03, 0.2, depth), out });
      });
    },
    paint({ strip, noise }) {
      for (const { k, share } of opened) {
        const grain = clamp(0.5 + 0.5 * noise.micro[k], 0, 1);
        mixMaterial(strip, k, grain > 0.6 ? TONES.soot : TONES.gap, 0.8, 0.03, 0.85 * ease(0.15, 0.8, share));
        strip.brush[k] *= 1 - share;
      }
      const box = { x0: from, x1: to, y0: -20, y1: 20 };
      forEachPixel(strip.grid, box, (k, x, y) => {
        if (strip.bead[k] <= 0.5 || Math.abs(strip.across[k]) < 0.8 || Math.sign(strip.across[k]) !== side) return;
        const skin = cold(x) * clamp(0.3 + 0.6 * gradient2(x / 1.9, y / 0.9, seed + 8), 0, 0.6);
        mixMaterial(strip, k, TONES.skin, 0.52, 0.4, skin * ease(0.8, 0.97, Math.abs(strip.across[k])));
      });
    },
    measure(work) {
      const border = weldBorder(work, side);
      const search = { side, range: { from: from - 1, to: to + 1 }, threshold: THRESHOLD, bridge: BRIDGE };
      const found = measureAlongEdge(work, search, (x) => alongColumns(work, border, x), WINDOW);
      return found && truthItem(work, request.id, "sidewall-fusion", found);
    },
  };
};
