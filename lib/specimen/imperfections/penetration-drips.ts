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
  /** Tip off the middle of the foot, in radii. */
  readonly tip: readonly [along: number, across: number];
  /** Share of the radius that is left at half of the height, and how blunt the tip is: 0 an icicle, 1 a knob. */
  readonly slender: number;
  readonly blunt: number;
  /** Depth of the neck where it grew from the bead, mm. */
  readonly neck: number;
  readonly seed: number;
}

/** How many large drips a stretch holds: up to these lengths one, two, else three; mm. */
const ONE_UP_TO = 6;
const TWO_UP_TO = 12;
/** Small ones that froze beside a large one and ran together with it: how many at most, and their size. */
const BESIDE = { most: 2, height: [0.28, 0.6], radius: [0.75, 1.3] } as const;

function drawDrip(random: RandomStream, at: Pick<Drip, "x" | "off" | "height" | "radius">): Drip {
  return {
    ...at,
    oval: random.uniform(1.05, 1.75),
    turn: random.uniform(0, Math.PI),
    lean: random.uniform(0.15, 0.5),
    tip: [random.normal(0, 0.16), random.normal(0, 0.16)],
    slender: random.uniform(0.46, 0.66),
    blunt: random.uniform(0, 0.8),
    neck: random.chance(0.55) ? random.uniform(0.03, 0.1) : 0,
    seed: random.seed(),
  };
}

/** Large drips spread over the length, one of them as high as asked, and small ones on their feet. */
function drawDrips(random: RandomStream, request: FeatureRequest): Drip[] {
  const { x, length, severity } = request;
  const count = length <= ONE_UP_TO ? 1 : length <= TWO_UP_TO ? 2 : 3;
  const largest = random.integer(count);
  return Array.from({ length: count }).flatMap((_, n) => {
    const height = n === largest ? severity : severity * random.uniform(0.42, 0.85);
    const share = count === 1 ? 0.5 : mix(0.12, 0.88, n / (count - 1)) + random.normal(0, 0.07);
    const main = drawDrip(random, {
      x: x + length * share,
      off: random.normal(0, 0.25),
      height,
      radius: random.uniform(1.25, 1.8) + 0.15 * Math.min(height, 6),
    });
    const small = Array.from({ length: random.integer(BESIDE.most + 1) }, () =>
      drawDrip(random, {
        x: main.x + random.pick([-1, 1]) * main.radius * random.uniform(0.4, 0.85),
        off: main.off + random.normal(0, 0.22),
        height: Math.max(1.8, height * random.uniform(...BESIDE.height)),
        radius: random.uniform(...BESIDE.radius),
      }),
    );
    return [main, ...small];
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

/** Distance from a drip's axis in radii: short on the side it hangs to, long on the other, uneven all round, its tip off the middle. */
function distance(drip: Drip, down: readonly [number, number], dx: number, dy: number): number {
  const c = Math.cos(drip.turn);
  const s = Math.sin(drip.turn);
  const stretch = Math.sqrt(drip.oval);
  const fallen = dx * down[0] + dy * down[1];
  const hung = fallen > 0 ? -drip.lean * 0.5 * fallen : -drip.lean * 0.35 * fallen;
  // the tip bends away while the foot stays
  const bent = ease(1.1, 0, Math.hypot(dx, dy) / drip.radius) * drip.radius;
  const px = dx - down[0] * hung - drip.tip[0] * bent;
  const py = dy - down[1] * hung - drip.tip[1] * bent;
  const along = (px * c + py * s) / stretch;
  const across = (-px * s + py * c) * stretch;
  const uneven =
    1 +
    0.4 * gradient2(dx / 2.2, dy / 2.2, drip.seed) +
    0.05 * gradient2(dx / 1.2, dy / 1.2, drip.seed + 1) +
    0.008 * gradient2(dx / 0.45, dy / 0.45, drip.seed + 6);
  return Math.hypot(along, across) / (drip.radius * uneven);
}

/** Height share at a distance: a tip between icicle and knob, a steep flank, a foot that runs out hollow into the bead. */
function dripProfile({ slender, blunt }: Drip, d: number): number {
  const icicle = 1 / (1 + (d / slender) ** 2.1);
  const knob = 1 / (1 + (d / (slender + 0.12)) ** 4.5);
  return ease(1.42, 0.6, d) * mix(icicle, knob, blunt);
}

/** Wrinkles in which the skin of a drip froze: uneven rings about its tip, strongest half way down, and creases aslant. */
function wrinkles({ seed, radius }: Drip, d: number, x: number, y: number): number {
  const rings = gradient1((d * radius + 0.5 * gradient2(x / 1.4, y / 1.4, seed + 2)) / 0.36, seed + 3);
  const creases = 0.2 - Math.abs(gradient2(x / 1.1, y / 1.1, seed + 4));
  return (0.075 * rings + 0.07 * creases) * ease(0.12, 0.4, d) * ease(1.35, 0.9, d);
}

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
      strip.z[k] = base + 0.5 * (over + Math.hypot(over, 0.6)) * ease(0.015, 0.12, profile) - necked;
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
