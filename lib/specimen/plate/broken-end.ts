import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, hash01 } from "../../surface";
import type { Face } from "../../weld";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** Height at which a fracture lies against the plates, mm. */
const TORN: Readonly<Record<Face, Range>> = { cap: [-0.5, 0.5], root: [-0.3, 0.25] };
/** Width of the fracture on the weld, and share of it that is coated with slag and scale. */
const BROKEN: { readonly inset: Range; readonly crust: Range } = { inset: [1.2, 4.2], crust: [0.2, 0.75] };

/** The tab was bent off: a ragged grey fracture in steps, lower than the weld, crusty, with a bright lip where it let go last. */
export function breakEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip, face } = work;
  const levelAt = levelBetweenPlates(work);
  const inset = random.uniform(...BROKEN.inset);
  const lowest = random.uniform(...TORN[face]);
  const lean = random.normal(0, 0.05);
  const old = random.uniform(0, 0.8);
  const crusty = random.uniform(...BROKEN.crust);
  const climbs = random.uniform(0.1, 0.45);
  const seed = random.seed();
  const inward = end === 0 ? 1 : -1;
  forEachPixel(strip.grid, { x0: end - 9, x1: end + 9, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    const away = (x - end) * inward;
    const line =
      inset *
        (1 +
          0.55 * gradient1(y / 6.3, seed) +
          0.28 * gradient1(y / 2.4, seed + 1) +
          0.1 * gradient1(y / 0.9, seed + 2)) +
      0.1 * gradient1(y / 0.4, seed + 12);
    const past = line - away;
    if (past < -0.35) return;
    const torn = gradient2(x / 0.9, y / 1.6, seed + 3) + 0.6 * gradient2(x / 0.4, y / 0.45, seed + 4);
    // it tore in shelves that step up into the weld
    const shelves = Math.round(1.6 * gradient2(x / 2.6, y / 3.4, seed + 13) + 0.5 * torn) * 0.22;
    const floor =
      levelAt(i, y) +
      lowest +
      lean * y +
      climbs * away +
      shelves +
      0.16 * torn +
      0.3 * gradient2(x / 3, y / 4, seed + 5);
    const above = strip.z[k] - floor;
    const fallen = ease(-0.05, 0.5, past) * (above > 0 ? 1 : 0.3);
    if (above > 0) strip.z[k] -= above * fallen;
    const lip = Math.exp(-(((past + 0.08) / 0.2) ** 2)) * clamp(0.3 + 0.8 * gradient1(y / 1.1, seed + 14), 0, 1);
    strip.z[k] += 0.1 * lip;
    const grain = hash01(Math.floor(x / 0.25), Math.floor(y / 0.25), seed + 6);
    const light = clamp(0.46 + 0.16 * torn + 0.2 * (grain - 0.5), 0.18, 0.8);
    const share = ease(-0.1, 0.25, past);
    mixMaterial(strip, k, scaled(TONES.groundSteel, light), 0.56 + 0.14 * grain, 0.5, 0.85 * share);
    const crust = ease(0.1, 0.5, gradient2(x / 1.5, y / 1.9, seed + 15) + 0.3 * torn + crusty - 0.45);
    strip.z[k] += 0.07 * crust * share * (0.6 + gradient2(x / 0.35, y / 0.35, seed + 16));
    mixMaterial(strip, k, TONES.scaleBurnt, 0.72, 0.15, 0.7 * crust * share);
    mixMaterial(strip, k, TONES.rust, 0.8, 0.1, 0.35 * old * clamp(0.4 + torn, 0, 1) * share);
    mixColour(strip, k, TONES.bareSteel, 0.5 * lip);
    strip.brush[k] *= 1 - share;
  });
}
