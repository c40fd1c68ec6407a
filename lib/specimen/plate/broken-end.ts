import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixColour, mixLit } from "../field";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** Mean width of the fracture seen from above, and the most of it, mm. */
const TORN: { readonly inset: Range; readonly most: number } = { inset: [0.4, 1], most: 1.8 };
/** How far the fracture falls from the weld's own surface per mm, and the weld's edge is drawn down before it tore, mm. */
const STEEP: Range = [0.8, 1.4];
const DRAWN = { reach: 0.9, by: 0.07 };
/** It falls no lower than this under the plates, mm: below lies the plate's own side. */
const LOWEST = 0.2;

/** The tab was bent off: ripples run up to an uneven edge, beyond it a narrow, steep fracture of torn grey grain. */
export function breakEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  const levelAt = levelBetweenPlates(work);
  const inset = random.uniform(...TORN.inset);
  const steep = random.uniform(...STEEP);
  const lean = random.normal(0, 0.02);
  const old = random.uniform(0, 0.4);
  const seed = random.seed();
  const inward = end === 0 ? 1 : -1;
  forEachPixel(strip.grid, { x0: end - 4, x1: end + 4, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    const away = (x - end) * inward;
    const uneven =
      1 +
      0.6 * gradient1(y / 8.3, seed) +
      0.25 * gradient1(y / 2.3, seed + 1) +
      0.16 * gradient1(y / 0.9 + 0.8 * gradient1(y / 3.7, seed + 8), seed + 2) +
      lean * y;
    const past = Math.min(TORN.most, inset * uneven) - away;
    if (past < -DRAWN.reach) return;
    const drawn = DRAWN.by * Math.exp(-((Math.min(0, past) / (0.4 * DRAWN.reach)) ** 2));
    strip.z[k] -= drawn;
    // lumps of grain that were pulled apart, finer ones on them
    const lumps = gradient2(x / 0.75, y / 1, seed + 3);
    const grain = gradient2(x / 0.36, y / 0.36, seed + 4);
    const torn = lumps + 0.6 * grain;
    const share = ease(-0.12, 0.22, past + 0.14 * torn);
    if (share <= 0) return;
    const above = strip.z[k] - levelAt(i, y) + LOWEST;
    const fall = Math.max(0, past) * steep * (1 + 0.3 * lumps);
    strip.z[k] -= Math.min(Math.max(0, above), Math.max(0, fall)) - 0.03 * torn * share;
    const tone = clamp(0.62 + 0.17 * torn + 0.16 * gradient2(x / 0.2, y / 0.2, seed + 6), 0.25, 0.9);
    mixLit(strip, k, TONES.groundSteel, tone, 0.62 - 0.1 * grain, 0.45, 0.8 * share);
    mixColour(strip, k, TONES.rust, old * clamp(gradient2(x / 0.9, y / 1.6, seed + 7), 0, 0.5) * share);
    strip.brush[k] *= 1 - share;
  });
}
