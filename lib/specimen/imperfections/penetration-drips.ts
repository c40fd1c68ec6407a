import { clamp, ease, hypot, mix } from "../../math";
import { forEachPixel, gradient1, gradient2, nearestColumn } from "../../surface";
import { mixMaterial } from "../field";
import { measureCrown } from "../measure";
import { forColumns } from "../runs/edit";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, FeatureBuilder } from "../work";
import { type Drip, distance, downOn, drawDrips, dripProfile, wrinkles } from "./drip-shape";
import { truthItem } from "./found";
import { between, scaled, TONES } from "./tones";

/** Crown from which the penetration is recorded, and sound bead between drips that is passed over; mm. */
const THRESHOLD = 2.6;
const BRIDGE = 8;
/** The bead is swollen round a drip up to this height and over this half length, mm. */
const SWOLLEN = { height: 1.75, along: 4.5, wider: 0.45 };

interface Touched {
  readonly k: number;
  readonly share: number;
  /** Height share, 1 at the tip. */
  readonly up: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Local excess penetration: one to three drips, icicles or knobs, that froze at the root (5041), small ones run together with
 * them, wrinkled under a skin of oxide. `severity` = height of
 * the largest above the plates, mm (3.7 to 9). Truth: `measureCrown`, length where it exceeds 2.6 mm, drips up to 8 mm
 * apart taken together.
 */
export const buildPenetrationDrips: FeatureBuilder = (request, random) => {
  const drips = drawDrips(random.child("drips"), request);
  const from = request.x - 8;
  const to = request.x + request.length + 8;
  const seed = random.seed();
  const swelling = (x: number) =>
    drips.reduce((most, drip) => Math.max(most, Math.exp(-(((x - drip.x) / SWOLLEN.along) ** 2))), 0);
  let touched: Touched[] = [];

  function cutDrip(work: FaceWork, drip: Drip): void {
    const { strip, plan, joint } = work;
    const [run] = plan.runs;
    const down = downOn(joint.position, run.direction);
    const chord = levelBetweenPlates(work);
    const i = nearestColumn(strip.grid, drip.x);
    const y0 = run.centre[i] + clamp(drip.off, -0.4, 0.4) * run.halfWidth[i] + 0.4 * drip.lean * down[1];
    const reach = 2.1 * drip.radius;
    const box = { x0: drip.x - reach, x1: drip.x + reach, y0: y0 - reach, y1: y0 + reach };
    forEachPixel(strip.grid, box, (k, x, y, column) => {
      const d = distance(drip, down, x - drip.x, y - y0);
      // its foot ends with the bead: it wets no plate
      const profile = dripProfile(drip, d) * mix(ease(0.95, 0.6, d), 1, ease(0, 0.5, strip.bead[k]));
      if (profile < 0.015) return;
      const skin = wrinkles(drip, d, x, y);
      const top = chord(column, y) + drip.height * profile + skin;
      const base = strip.z[k];
      // the two surfaces flow into each other, or meet in a neck
      const over = top - base;
      const necked =
        drip.neck *
        Math.exp(-(((d - 1.05) / 0.2) ** 2)) *
        clamp(0.5 + 1.4 * gradient2(x / 1.3, y / 1.3, drip.seed + 5), 0, 1);
      strip.z[k] = base + 0.5 * (over + hypot(over, 0.6)) * ease(0.015, 0.12, profile) - necked;
      strip.clean[k] = Math.max(strip.clean[k], ease(0.02, 0.15, profile));
      touched.push({ k, share: ease(0.06, 0.4, profile), up: profile, x, y });
    });
  }

  return {
    id: request.id,
    plan(work) {
      const [run] = work.plan.runs;
      forColumns(work.strip.grid, from - 4, to + 4, (i, x) => {
        const share = swelling(x);
        const raised = Math.max(run.height[i], SWOLLEN.height * (0.85 + 0.3 * gradient1(x / 4, seed)));
        run.height[i] = mix(run.height[i], raised, share);
        run.halfWidth[i] += SWOLLEN.wider * share;
        run.ripple[i] *= 1 - 0.55 * share;
      });
    },
    cut(work) {
      touched = [];
      for (const drip of drips) cutDrip(work, drip);
    },
    paint({ strip }) {
      for (const { k, share, up, x, y } of touched) {
        const patch = gradient2(x / 1.7, y / 1.7, seed + 3) + 0.35 * gradient2(x / 0.6, y / 0.6, seed + 4);
        const flake = ease(
          0,
          0.55,
          gradient2(x / 0.8, y / 0.8, seed + 6) + 0.4 * gradient2(x / 0.3, y / 0.3, seed + 7),
        );
        const grey = between(scaled(TONES.skin, 1.1), between(TONES.blue, TONES.skin, 0.4), ease(-0.1, 0.4, patch));
        mixMaterial(
          strip,
          k,
          between(grey, TONES.brown, 0.5 * ease(0.2, 0.6, -patch)),
          0.6 + 0.14 * patch,
          0.4,
          0.62 * share,
        );
        mixMaterial(strip, k, TONES.oxide, 0.78, 0.12, 0.55 * share * ease(0.1, 0.45, -patch) * (1 - flake));
        // where the oxide flaked off, and on the tip, the metal is barer
        mixMaterial(
          strip,
          k,
          TONES.meltedMetal,
          0.5,
          0.65,
          0.22 * share * Math.max(flake, ease(0.8, 0.97, up) * clamp(0.6 + patch, 0, 1)),
        );
        mixMaterial(
          strip,
          k,
          TONES.soot,
          0.85,
          0.05,
          0.3 * ease(0.03, 0.12, up) * ease(0.45, 0.15, up) * ease(-0.1, 0.35, patch),
        );
        strip.brush[k] *= 1 - share;
      }
    },
    measure(work) {
      const found = measureCrown(work, { range: { from, to }, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "excess-penetration", found);
    },
  };
};
