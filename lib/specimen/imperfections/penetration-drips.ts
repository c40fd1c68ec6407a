import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, nearestColumn } from "../../surface";
import type { Position } from "../../weld";
import { mixMaterial } from "../field";
import { measureCrown } from "../measure";
import { forColumns } from "../runs/edit";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { truthItem } from "./found";
import { between, scaled, TONES } from "./tones";

/** Crown from which the penetration is recorded, and sound bead between drips that is passed over; mm. */
const THRESHOLD = 2.6;
const BRIDGE = 8;
/** So much of a drip's radius is left at half of its height. */
const FLANK = 0.7;
/** The bead is swollen round a drip up to this height and over this half length, mm. */
const SWOLLEN = { height: 1.75, along: 4.5, wider: 0.45 };

/** One drip that froze before it fell, mm. */
interface Drip {
  readonly x: number;
  /** Off the bead's middle line. */
  readonly off: number;
  readonly height: number;
  readonly radius: number;
  /** Ratio of its two axes, and the direction of the longer one. */
  readonly oval: number;
  readonly turn: number;
  /** How far it hangs over towards where down is. */
  readonly lean: number;
  readonly seed: number;
}

/** How many drips a stretch holds: up to these lengths one, two, else three; mm. */
const ONE_UP_TO = 6;
const TWO_UP_TO = 12;

function drawDrips(random: RandomStream, request: FeatureRequest): Drip[] {
  const { x, length, severity } = request;
  const count = length <= ONE_UP_TO ? 1 : length <= TWO_UP_TO ? 2 : 3;
  const largest = random.integer(count);
  return Array.from({ length: count }, (_, n) => {
    const height = n === largest ? severity : severity * random.uniform(0.5, 0.85);
    const share = count === 1 ? 0.5 : mix(0.12, 0.88, n / (count - 1)) + random.normal(0, 0.05);
    return {
      x: x + length * share,
      off: random.normal(0, 0.25),
      height,
      radius: random.uniform(1.35, 1.8) + 0.13 * Math.min(height, 6),
      oval: random.uniform(1, 1.35),
      turn: random.uniform(0, Math.PI),
      lean: random.uniform(0.15, 0.5),
      seed: random.seed(),
    };
  });
}

/** Where down is along the root face, as a direction in x and y: nowhere when it points straight out of the face or into it. */
function downOn(position: Position, direction: 1 | -1): readonly [x: number, y: number] {
  switch (position) {
    case "PC":
      return [0, -1];
    case "PF":
      return [-direction, 0];
    case "PA":
    case "PE":
      return [0, 0];
  }
}

/** Distance from a drip's axis in radii: short on the side it hangs to, long on the other, uneven all round. */
function distance(drip: Drip, down: readonly [number, number], dx: number, dy: number): number {
  const c = Math.cos(drip.turn);
  const s = Math.sin(drip.turn);
  const stretch = Math.sqrt(drip.oval);
  const fallen = dx * down[0] + dy * down[1];
  const hung = fallen > 0 ? -drip.lean * 0.5 * fallen : -drip.lean * 0.35 * fallen;
  const px = dx - down[0] * hung;
  const py = dy - down[1] * hung;
  const along = (px * c + py * s) / stretch;
  const across = (-px * s + py * c) * stretch;
  const uneven =
    1 + 0.18 * gradient2(dx / 1.5, dy / 1.5, drip.seed) + 0.06 * gradient2(dx / 0.6, dy / 0.6, drip.seed + 1);
  return Math.hypot(along, across) / (drip.radius * uneven);
}

/** Height share at a distance: a round tip, a steep flank, a foot that runs out hollow into the bead. */
const dripProfile = (d: number): number => ease(1.5, 0.95, d) / (1 + (d / FLANK) ** 4);

interface Touched {
  readonly k: number;
  readonly share: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Local excess penetration: one to three drips, like short icicles, that froze at the root (5041). `severity` = height of
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
      const profile = dripProfile(distance(drip, down, x - drip.x, y - y0));
      if (profile < 0.015) return;
      const skin = 0.05 * gradient2(x / 0.9, y / 0.9, drip.seed + 2) * (1 - profile);
      const top = chord(column, y) + drip.height * profile + skin;
      const base = strip.z[k];
      // the two surfaces flow into each other
      const over = top - base;
      strip.z[k] = base + 0.5 * (over + Math.hypot(over, 0.35)) * ease(0.015, 0.12, profile);
      strip.clean[k] = Math.max(strip.clean[k], ease(0.02, 0.15, profile));
      touched.push({ k, share: ease(0.06, 0.4, profile), x, y });
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
      for (const { k, share, x, y } of touched) {
        const patch = gradient2(x / 1.7, y / 1.7, seed + 3) + 0.35 * gradient2(x / 0.6, y / 0.6, seed + 4);
        const skin = between(
          scaled(TONES.skin, 1.05),
          between(TONES.blue, TONES.brown, 0.5 + 0.4 * patch),
          ease(0, 0.7, patch),
        );
        mixMaterial(strip, k, skin, 0.42 + 0.12 * patch, 0.5, 0.6 * share);
        mixMaterial(strip, k, TONES.oxide, 0.7, 0.15, 0.4 * share * ease(0.15, 0.5, -patch));
        strip.brush[k] *= 1 - share;
      }
    },
    measure(work) {
      const found = measureCrown(work, { range: { from, to }, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "excess-penetration", found);
    },
  };
};
