import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, hash01 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** Mean width of the fracture seen from above, and the most of it, mm: it stands nearly upright. */
const TORN: { readonly inset: Range; readonly most: number } = { inset: [0.3, 0.8], most: 1.4 };
/** How far the fracture falls from the weld's own surface per mm, and the weld's edge is drawn down before it tore, mm. */
const STEEP: Range = [1.1, 2.4];
const DRAWN = { reach: 0.9, by: 0.07 };
/** It falls no lower than this against the plates, mm: below lies the plate's own side. */
const LOWEST = -0.5;

/** The tab was bent off: ripples run up to an uneven edge, beyond it a narrow, nearly upright fracture of torn grey grain. */
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
      0.9 * gradient1(y / 5.3, seed) +
      0.6 * gradient1(y / 1.9, seed + 1) +
      0.3 * gradient1(y / 0.7, seed + 2) +
      lean * y;
    const past = Math.min(TORN.most, inset * uneven) - away;
    if (past < -DRAWN.reach) return;
    const drawn = DRAWN.by * Math.exp(-((Math.min(0, past) / (0.4 * DRAWN.reach)) ** 2));
    strip.z[k] -= drawn;
    const torn = gradient2(x / 0.55, y / 0.8, seed + 3) + 0.5 * gradient2(x / 0.3, y / 0.3, seed + 4);
    const share = ease(-0.12, 0.22, past + 0.12 * torn);
    if (share <= 0) return;
    const above = strip.z[k] - levelAt(i, y) - LOWEST;
    const fall = Math.max(0, past) * steep * (1 + 0.35 * torn);
    strip.z[k] -= Math.min(Math.max(0, above), Math.max(0, fall)) - 0.025 * torn * share;
    const grain = hash01(Math.floor(x / 0.2), Math.floor(y / 0.2), seed + 6);
    const tone = clamp(0.62 + 0.12 * torn + 0.16 * (grain - 0.5), 0.4, 0.85);
    mixMaterial(strip, k, scaled(TONES.groundSteel, tone), 0.5 + 0.1 * grain, 0.45, 0.72 * share);
    mixColour(strip, k, TONES.rust, old * clamp(gradient2(x / 0.9, y / 1.6, seed + 7), 0, 0.5) * share);
    strip.brush[k] *= 1 - share;
  });
}
