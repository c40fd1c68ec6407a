import { ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, gradient2 } from "../../surface";
import type { JointPosition } from "../../weld";
import type { FeatureRequest } from "../work";

/** One drip that froze before it fell, mm. */
export interface Drip {
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
export function drawDrips(random: RandomStream, request: FeatureRequest): Drip[] {
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
export function downOn(position: JointPosition, direction: 1 | -1): readonly [x: number, y: number] {
  switch (position) {
    case "PB":
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
export function distance(drip: Drip, down: readonly [number, number], dx: number, dy: number): number {
  const c = Math.cos(drip.turn);
  const s = Math.sin(drip.turn);
  const stretch = Math.sqrt(drip.oval);
  const fallen = dx * down[0] + dy * down[1];
  const hung = fallen > 0 ? -drip.lean * 0.5 * fallen : -drip.lean * 0.35 * fallen;
  // the tip bends away while the foot stays
  const bent = ease(1.1, 0, hypot(dx, dy) / drip.radius) * drip.radius;
  const px = dx - down[0] * hung - drip.tip[0] * bent;
  const py = dy - down[1] * hung - drip.tip[1] * bent;
  const along = (px * c + py * s) / stretch;
  const across = (-px * s + py * c) * stretch;
  const uneven =
    1 +
    0.4 * gradient2(dx / 2.2, dy / 2.2, drip.seed) +
    0.05 * gradient2(dx / 1.2, dy / 1.2, drip.seed + 1) +
    0.008 * gradient2(dx / 0.45, dy / 0.45, drip.seed + 6);
  return hypot(along, across) / (drip.radius * uneven);
}

/** Height share at a distance: a tip between icicle and knob, a steep flank, a foot that runs out hollow into the bead. */
export function dripProfile({ slender, blunt }: Drip, d: number): number {
  const icicle = 1 / (1 + (d / slender) ** 2.1);
  const knob = 1 / (1 + (d / (slender + 0.12)) ** 4.5);
  return ease(1.42, 0.6, d) * mix(icicle, knob, blunt);
}

/** Wrinkles in which the skin of a drip froze: uneven rings about its tip, strongest half way down, and creases aslant. */
export function wrinkles({ seed, radius }: Drip, d: number, x: number, y: number): number {
  const rings = gradient1((d * radius + 0.5 * gradient2(x / 1.4, y / 1.4, seed + 2)) / 0.36, seed + 3);
  const creases = 0.2 - Math.abs(gradient2(x / 1.1, y / 1.1, seed + 4));
  return (0.075 * rings + 0.07 * creases) * ease(0.12, 0.4, d) * ease(1.35, 0.9, d);
}
