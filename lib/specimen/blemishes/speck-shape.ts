import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import { type Colour, type Field, mixColour, mixMaterial } from "../field";
import { between } from "../imperfections/tones";
import { boxAround } from "../plate/patches";
import type { SpeckKind } from "./blemish-habits";
import { BLEMISH_TONES as TONES } from "./tones";

/** One small mark; lengths in mm, angles in radians. */
export interface Speck {
  readonly kind: SpeckKind;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Long over short axis, and the long axis's direction. */
  readonly stretch: number;
  readonly turn: number;
  /** Height of what lies on the metal, negative for a pit. */
  readonly rise: number;
  readonly colour: Colour;
  /** How much of the metal it hides, 0..1. */
  readonly cover: number;
  readonly rough: number;
  readonly metal: number;
  readonly seed: number;
}

interface SpeckStyle {
  /** Usual radius, how it scatters, the largest; mm. */
  readonly radius: readonly [usual: number, sigma: number, most: number];
  readonly rise: readonly [number, number];
  readonly colours: readonly [Colour, Colour];
  readonly cover: readonly [number, number];
  readonly rough: readonly [number, number];
  readonly metal: number;
}

const STYLES: Readonly<Record<SpeckKind, SpeckStyle>> = {
  oxide: {
    radius: [0.12, 0.5, 0.22],
    rise: [-0.006, 0.008],
    colours: [TONES.oxide, TONES.oxideGrey],
    cover: [0.4, 1],
    rough: [0.55, 0.75],
    metal: 0.1,
  },
  glass: {
    radius: [0.12, 0.5, 0.22],
    rise: [0.015, 0.04],
    colours: [TONES.glassDark, TONES.glassAmber],
    cover: [0.5, 0.96],
    rough: [0.1, 0.2],
    metal: 0,
  },
  crumb: {
    radius: [0.12, 0.5, 0.22],
    rise: [0.018, 0.045],
    colours: [TONES.slag, TONES.slagPale],
    cover: [0.5, 0.96],
    rough: [0.3, 0.6],
    metal: 0,
  },
  pit: {
    radius: [0.125, 0.5, 0.22],
    rise: [-0.045, -0.018],
    colours: [TONES.pit, TONES.oxideGrey],
    cover: [0.45, 1],
    rough: [0.5, 0.65],
    metal: 0.3,
  },
  fleck: {
    radius: [0.1, 0.45, 0.18],
    rise: [-0.008, 0.006],
    colours: [TONES.bright, TONES.bareSteel],
    cover: [0.5, 0.9],
    rough: [0.24, 0.36],
    metal: 0.9,
  },
  spot: {
    radius: [0.22, 0.12, 0.26],
    rise: [0, 0],
    colours: [TONES.oxide, TONES.oxideGrey],
    cover: [0.85, 1],
    rough: [0.6, 0.75],
    metal: 0.1,
  },
};

/** Smallest radius that a strip still shows, mm. */
const LEAST_RADIUS = 0.06;

export function drawSpeck(random: RandomStream, kind: SpeckKind, x: number, y: number, along: number | null): Speck {
  const style = STYLES[kind];
  const [usual, sigma, most] = style.radius;
  const isLong = kind !== "spot" && random.chance(along === null ? 0.3 : 0.55);
  return {
    kind,
    x,
    y,
    radius: clamp(random.logNormal(usual, sigma), LEAST_RADIUS, most),
    stretch: isLong ? random.uniform(1.4, 2.6) : random.uniform(1, 1.35),
    turn: along === null ? random.uniform(0, Math.PI) : along + random.normal(0, 0.25),
    rise: random.uniform(...style.rise),
    colour: between(...style.colours, random.uniform(0, 1) ** 1.5),
    cover: random.uniform(...style.cover),
    rough: random.uniform(...style.rough),
    metal: style.metal,
    seed: random.seed(),
  };
}

/** Thin ground soot or rub that ties a mark to the metal round it, in radii, and how strong it is. */
const BED = { reach: 2.4, share: 0.3 };

/** No outline is more ragged than this, in radii. */
const RAGGED = 0.5;

/** Puts a mark on the metal. Its outline is ragged, its edge as soft as a pixel. */
export function laySpeck(field: Field, speck: Speck): void {
  const { x: cx, y: cy, radius, stretch, turn } = speck;
  const reach = BED.reach * radius * Math.sqrt(stretch) + 0.15;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const long = Math.sqrt(stretch);
  forEachPixel(field.grid, boxAround(cx, cy, reach), (k, x, y) => {
    const u = ((x - cx) * c + (y - cy) * s) / (radius * long);
    const v = (((y - cy) * c - (x - cx) * s) * long) / radius;
    const plain = hypot(u, v);
    if (plain <= BED.reach + RAGGED) markPixel(field, speck, k, x, y, plain);
  });
}

/** One pixel of a mark, `plain` of its radii from the middle. */
function markPixel(field: Field, speck: Speck, k: number, x: number, y: number, plain: number): void {
  const { radius, seed, kind } = speck;
  const soft = 0.5 / (field.grid.perMm * radius);
  const wave = 1.15 * radius;
  const ragged = 0.34 * gradient2(x / wave, y / wave, seed) + 0.16 * gradient2(x / 0.17, y / 0.17, seed + 1);
  const d = plain + ragged;
  const bed = BED.share * ease(BED.reach, 0.9, d) * clamp(0.5 + 1.2 * gradient2(x / 0.4, y / 0.4, seed + 2), 0, 1);
  if (bed > 0) mixColour(field, k, speck.colour, bed * speck.cover);
  const share = ease(1 + soft, 1 - soft, d);
  if (share <= 0) return;
  const dome = clamp(1 - 0.7 * d * d, 0, 1);
  // the edge of a flat mark is thin: the metal shows through
  const hides = kind === "spot" || kind === "oxide" ? 0.8 + 0.3 * gradient2(x / 0.2, y / 0.2, seed + 3) : 1;
  field.z[k] += speck.rise * share * dome;
  mixMaterial(field, k, speck.colour, speck.rough, speck.metal, clamp(speck.cover * hides, 0, 1) * share);
  field.brush[k] *= 1 - share;
}
