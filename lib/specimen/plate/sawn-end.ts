import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, value1 } from "../../surface";
import { mixColour, mixLit } from "../field";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** The cut of a saw or thin disc: how far inside the plate's edge it stands at the weld's foot, mm, how far it stands off upright, and the distance of its lines, mm. */
const SAWN: { readonly inset: Range; readonly steep: Range; readonly lines: Range; readonly slant: number } = {
  inset: [0.05, 0.3],
  steep: [3, 6],
  lines: [0.2, 0.34],
  slant: 0.012,
};
/** A file broke the sharp edge: over this much of the height, mm. */
const BROKEN: Range = [0.08, 0.3];
/** Further in than this the cut is not to be seen, mm. */
const REACH = 3;
/** The cut falls no lower than about this under the plates, mm, but for its lines: below lies the plate's own side. */
const LOWEST = 0.06;

/**
 * Sawn off with the tab, all but flush with the plate's side: from above, the cut is a narrow strip as wide as the weld is
 * high, with the saw's lines on it; its upper edge is broken by a file or carries a torn burr.
 */
export function sawEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  const levelAt = levelBetweenPlates(work);
  const inset = random.uniform(...SAWN.inset);
  const steep = random.uniform(...SAWN.steep);
  const slant = random.normal(0, SAWN.slant);
  const pitch = random.uniform(...SAWN.lines);
  const broken = random.uniform(...BROKEN);
  const torn = random.uniform(0.2, 1);
  const burnt = random.uniform(0, 0.4);
  const rusty = random.uniform(0, 0.35);
  const seed = random.seed();
  const inward = end === 0 ? 1 : -1;
  forEachPixel(strip.grid, { x0: end - REACH, x1: end + REACH, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    // the saw ran off a little, and shook
    const foot =
      inset +
      slant * y +
      0.12 * gradient1(y / 9, seed) +
      0.05 * gradient1(y / 2.3, seed + 1) +
      0.03 * gradient1(y / 0.7, seed + 2);
    const along = (x - end) * inward - Math.max(0, foot);
    const lines =
      value1(along / (0.5 * pitch) + 0.4 * y * slant, seed + 3) *
        clamp(0.5 + gradient2(x / 0.8, y / 3, seed + 4), 0, 1.2) +
      0.8 * value1(y / pitch + 1.5 * along, seed + 5);
    const face = levelAt(i, y) - LOWEST + steep * Math.max(0, along) + 0.05 * lines;
    const above = strip.z[k] - face;
    const edge =
      broken * clamp(0.55 + 0.6 * gradient1(y / 2.6, seed + 6) + 0.5 * gradient1(y / 0.8, seed + 7), 0.1, 1.5);
    if (above <= -edge) {
      if (above < -1.6) return;
      // what the saw tore up hangs over the edge where no file has been
      const burr =
        torn * clamp(gradient1(y / 0.9, seed + 8) + 0.8 * gradient1(y / 3.1, seed + 9), 0, 1) * ease(-1.2, -0.2, above);
      strip.z[k] += 0.06 * burr;
      mixColour(strip, k, TONES.bareSteel, 0.4 * burr);
      return;
    }
    // rounded over the broken edge: taken off more and more
    strip.z[k] -= above >= edge ? above : (above + edge) ** 2 / (4 * edge);
    const cut = ease(-edge, edge, above + 0.3 * edge * lines);
    const filed = cut * (1 - ease(0.2 * edge, 2.5 * edge, above));
    const light = clamp(0.62 + 0.16 * lines + 0.2 * gradient2(x / 0.9, y / 2.2, seed + 10) + 0.25 * filed, 0.3, 1);
    mixLit(strip, k, TONES.groundSteel, light, 0.5, 0.5, 0.85 * cut);
    mixColour(strip, k, TONES.blue, burnt * clamp(0.1 + gradient2(x / 1.2, y / 3.4, seed + 11), 0, 0.6) * cut);
    mixColour(strip, k, TONES.rust, rusty * clamp(gradient2(x / 0.7, y / 1.4, seed + 12), 0, 0.6) * cut);
    strip.brush[k] += (0.5 - strip.brush[k]) * cut;
    if (cut > 0.4) strip.brushAngle[k] = Math.PI / 2;
  });
}
