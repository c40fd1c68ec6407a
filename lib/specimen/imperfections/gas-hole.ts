import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal2, gradient1, gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { roundOff } from "./round-off";
import { between, scaled, TONES } from "./tones";

/** One gas hole open to the surface, before it is cut. Lengths in mm, angles in radians. */
export interface GasHole {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly depth: number;
  /** Long over short axis of the mouth, and the long axis's direction. */
  readonly stretch: number;
  readonly turn: number;
  /** How far the bottom lies off the middle, as a share of the radius, and where to: one wall steep, the other a ramp. */
  readonly lean: number;
  readonly leanTo: number;
  /** Raised edge on one side. */
  readonly lip: number;
  readonly lipAt: number;
  /** Skin of metal over part of the mouth: from this share of the radius on, towards an angle. Null for an open mouth. */
  readonly skin: { readonly from: number; readonly towards: number } | null;
  /** Share of the depth at which slag stands inside; null for an empty hole. */
  readonly slag: number | null;
  /** A mere dimple with a pinhole in it: the dimple's share of the depth, the pinhole's place and radius in radii. */
  readonly pinhole: { readonly dimple: number; readonly a: number; readonly b: number; readonly radius: number } | null;
  /** How bright the metal inside froze: 0 dull with oxide, 1 silvery. */
  readonly gloss: number;
  /** Lobes of the outline: share of the radius and phase of the second and third harmonic. */
  readonly lobes: readonly [number, number, number, number];
  readonly seed: number;
}

/** What may be asked of a hole besides its place and its diameter. */
export interface GasHoleWish {
  readonly depth?: number;
  readonly stretch?: number;
  readonly turn?: number;
  /** No skin and no pinhole mouth; slag may lie in it. */
  readonly open?: boolean;
  /** Half closed by a skin, however small it is. */
  readonly covered?: boolean;
  /** Two that ran into one another: how far the long mouth is drawn in between them, as a share of its radius. */
  readonly pinched?: number;
}

/** Share of the mouth that a skin beginning at `from` radii covers (area of a circular segment). */
const coveredShare = (from: number): number => (Math.acos(from) - from * Math.sqrt(1 - from * from)) / Math.PI;

/** The edge is this much wider than what counts as mouth (35 % of the depth); a dimple falls off more gently. */
const MOUTH_TO_EDGE = { hole: 1.16, dimple: 1.25 };
const DEEPEST = 2.6;
/** A smaller saucer would hardly be a hole, mm. */
const SAUCER_FROM = 0.32;
/** Radii between which a hole turns from a dull speck into a cavity with walls, a lip and a shine of its own, mm. */
const CAVITY = { from: 0.3, fully: 0.85 };
/** Gas from slag leaves some of it behind: share of the holes that hold slag or thick oxide, small ones oftener. */
const FILLED = { small: 0.62, large: 0.18 };

type Shape = "open" | "skin" | "slag" | "pinhole";

function drawShape(random: RandomStream, diameter: number, isOpen: boolean): Shape {
  const fate = random.uniform(0, 1);
  const filled = mix(FILLED.small, FILLED.large, ease(CAVITY.from, CAVITY.fully, diameter / 2));
  if (fate > 1 - filled) return "slag";
  if (isOpen) return "open";
  if (diameter > 0.8 && fate < 0.22) return "skin";
  return diameter > 0.7 && fate < 0.38 ? "pinhole" : "open";
}

/** Depth of a hole: most about half as deep as wide, some saucers, some deep. */
function drawDepth(random: RandomStream, radius: number, shape: Shape): number {
  const kind = random.uniform(0, 1);
  const slender = random.uniform(0, 1);
  if (shape === "pinhole") return 0.2 + radius * mix(0.25, 0.45, slender);
  if (kind < 0.2 && shape === "open" && radius > SAUCER_FROM) return 0.14 + radius * mix(0.2, 0.36, slender);
  const sunk = kind > 0.85 ? mix(1.1, 1.6, slender) : mix(0.5, 0.95, slender);
  const cavity = ease(CAVITY.from, CAVITY.fully, radius);
  return Math.min(DEEPEST, mix(0.13, 0.1, cavity) + radius * sunk * mix(0.46, 1, cavity));
}

/** Draws one hole whose visible mouth is about `diameter` mm. */
export function drawGasHole(
  random: RandomStream,
  x: number,
  y: number,
  diameter: number,
  wish: GasHoleWish = {},
): GasHole {
  const drawn = drawShape(random, diameter, Boolean(wish.open));
  const shape = wish.covered ? "skin" : drawn;
  const skin = shape === "skin" ? { from: random.uniform(0.12, 0.5), towards: random.uniform(0, 6.28) } : null;
  const edge = shape === "pinhole" ? MOUTH_TO_EDGE.dimple : MOUTH_TO_EDGE.hole;
  const radius = (edge * 0.5 * diameter) / Math.sqrt(1 - (skin ? coveredShare(skin.from) : 0));
  const cavity = ease(CAVITY.from, CAVITY.fully, radius);
  return {
    x,
    y,
    radius,
    depth: wish.depth ?? drawDepth(random, radius, shape),
    stretch: wish.stretch ?? (random.chance(0.35) ? random.uniform(1.35, 1.8) : random.uniform(1.03, 1.32)),
    turn: wish.turn ?? random.uniform(0, Math.PI),
    lean: random.uniform(0.15, 0.62),
    leanTo: random.uniform(0, 6.28),
    lip: random.uniform(0.01, 0.085) * cavity,
    lipAt: random.uniform(0, 6.28),
    skin,
    slag: shape === "slag" ? random.uniform(0.55, 0.8) + 0.17 * cavity : null,
    pinhole:
      shape === "pinhole"
        ? {
            dimple: random.uniform(0.52, 0.64),
            a: random.uniform(-0.4, 0.4),
            b: random.uniform(-0.4, 0.4),
            radius: random.uniform(0.18, 0.3),
          }
        : null,
    gloss: clamp(random.normal(0.35, 0.35), 0, 1) * cavity,
    lobes: pinch(wish.pinched, [
      random.uniform(0.02, 0.13),
      random.uniform(0, 6.28),
      random.uniform(0.01, 0.09),
      random.uniform(0, 6.28),
    ]),
    seed: random.seed(),
  };
}

/** The second harmonic drawn in across the long axis. */
const pinch = (pinched: number | undefined, lobes: GasHole["lobes"]): GasHole["lobes"] =>
  pinched === undefined ? lobes : [pinched, 0, lobes[2], lobes[3]];

type Part = "wall" | "slag" | "skin" | "ring";
interface Touched {
  readonly k: number;
  readonly part: Part;
  /** Coverage, 0..1. */
  readonly share: number;
  /** Depth as a share of the hole's (wall), or noise (the others). */
  readonly value: number;
}
/** What the cut of a hole left for the painter. */
export type HoleTrace = readonly Touched[];

/** Where the edge lies, in radii, for rounding it off. */
const RIM = { from: 0.78, to: 1.2 };
const DISTURBED = 2.5;
const RING = 1.9;

/** Plane through the metal round the hole, or through its middle where that lies lower, as in the valley between runs. */
function planeAround(field: Field, hole: GasHole): (dx: number, dy: number) => number {
  const r = RING * hole.radius;
  let level = 0;
  let slopeX = 0;
  let slopeY = 0;
  for (let n = 0; n < 16; n++) {
    const c = Math.cos((n * Math.PI) / 8);
    const s = Math.sin((n * Math.PI) / 8);
    const z = sampleAt(field.grid, field.z, hole.x + r * c, hole.y + r * s);
    level += z / 16;
    slopeX += (z * c) / (8 * r);
    slopeY += (z * s) / (8 * r);
  }
  const middle = Math.min(level, sampleAt(field.grid, field.z, hole.x, hole.y));
  return (dx, dy) => middle + slopeX * dx + slopeY * dy;
}

/** Position in the mouth in units of its outline: |(a, b)| is 1 on the edge. */
function mouthPosition(hole: GasHole, dx: number, dy: number): { a: number; b: number; angle: number } {
  const c = Math.cos(hole.turn);
  const s = Math.sin(hole.turn);
  const along = (dx * c + dy * s) / Math.sqrt(hole.stretch);
  const across = (-dx * s + dy * c) * Math.sqrt(hole.stretch);
  const angle = Math.atan2(across, along);
  const [second, secondPhase, third, thirdPhase] = hole.lobes;
  // a small one is a crumbled speck, a large one a round mouth with nicks
  const crumbled = 0.42 * ease(0.75, 0.25, hole.radius) * gradient2(dx / 0.26, dy / 0.26, hole.seed + 14);
  const nicks = 0.05 * gradient2(dx / 0.3, dy / 0.3, hole.seed + 7) * Math.min(1, hole.radius / 0.5) + crumbled;
  const edge =
    hole.radius * (1 + second * Math.cos(2 * angle + secondPhase) + third * Math.cos(3 * angle + thirdPhase) + nicks);
  return { a: along / edge, b: across / edge, angle };
}

/** Distance from the bottom to the edge, 0..1, along a cone whose tip lies off the middle by (ox, oy). */
function fromBottom(a: number, b: number, ox: number, oy: number): number {
  const qa = a - ox;
  const qb = b - oy;
  const dot = qa * ox + qb * oy;
  const rest = 1 - ox * ox - oy * oy;
  return (dot + Math.sqrt(dot * dot + rest * (qa * qa + qb * qb))) / rest;
}

/** Depth as a share of the whole, q from the bottom (0) to the edge (1): a ramp on the far side of the lean, a wall on the near one. */
function bowlProfile(hole: GasHole, angle: number, q: number): number {
  const steep = 0.5 + 0.5 * Math.cos(angle - hole.leanTo);
  return Math.max(0, 1 - q ** mix(1.95, 2.6, steep)) ** mix(0.95, 0.72, steep);
}

/** Depth as a share of the whole in a dimple with a pinhole, (a, b) in radii. */
function dimpleProfile({ dimple, ...pin }: NonNullable<GasHole["pinhole"]>, a: number, b: number): number {
  const d = hypot(a, b);
  const inPin = Math.max(0, 1 - (hypot(a - pin.a, b - pin.b) / pin.radius) ** 2);
  return dimple * Math.max(0, 1 - d ** 4) + (1 - dimple) * Math.sqrt(inPin);
}

/** How far inside the skin a place is, in radii: above 0 the skin covers it. Its edge is torn. */
function insideSkin(hole: GasHole, dx: number, dy: number): number {
  if (!hole.skin) return -1;
  const c = Math.cos(hole.skin.towards);
  const s = Math.sin(hole.skin.towards);
  const along = (dx * c + dy * s) / hole.radius;
  const side = (-dx * s + dy * c) / hole.radius;
  return along - hole.skin.from - 0.16 * gradient1(side / 0.7, hole.seed + 3) + 0.2 * side * side;
}

/**
 * Cuts the hole into a field: an oval, leaning cavity with a bottom, a lip on one side, perhaps half closed by a skin or
 * holding slag; ripples bend round it. Returns what was touched, for `paintGasHole`.
 */
export function cutGasHole(field: Field, hole: GasHole): HoleTrace {
  const { grid, z } = field;
  const { x, y, radius, depth, seed } = hole;
  const pixel = 1 / grid.perMm;
  const reach = radius * 3.1;
  const plane = planeAround(field, hole);
  const ox = hole.lean * Math.cos(hole.leanTo);
  const oy = hole.lean * Math.sin(hole.leanTo);
  const trace: Touched[] = [];
  const rim: number[] = [];
  const heights: [k: number, height: number, tint: number][] = [];
  forEachPixel(grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
    const dx = px - x;
    const dy = py - y;
    const { a, b, angle } = mouthPosition(hole, dx, dy);
    const d = hypot(a, b);
    if (d > DISTURBED) return;
    const fall = ease(DISTURBED, 1, d);
    // a large one would draw the ripples round it out to a star
    const bent = 1 - mix(0.32, 0.1, ease(0.35, 0.9, radius)) * fall;
    let height = mix(sampleAt(grid, z, x + dx * bent, y + dy * bent), plane(dx, dy), d < 1 ? 0.85 : 0.3 * fall);
    let part: Part = "wall";
    let value = 0;
    if (d < 1) {
      const bowl = hole.pinhole
        ? dimpleProfile(hole.pinhole, a, b)
        : bowlProfile(hole, angle, fromBottom(a, b, ox, oy));
      let drop = depth * bowl * (1 + 0.08 * gradient2(dx / (0.5 * radius), dy / (0.5 * radius), seed + 1));
      value = drop / depth;
      if (hole.slag !== null && drop > depth * hole.slag) {
        drop = depth * hole.slag - 0.08 * radius * (1 - d * d) + 0.04 * gradient2(dx / 0.3, dy / 0.3, seed + 2);
        part = "slag";
        value = fractal2(dx / 0.4, dy / 0.4, seed + 12, 2);
      }
      const covered = insideSkin(hole, dx, dy);
      if (covered > 0) {
        const sag = 0.02 + 0.14 * radius * ease(0.6, 0, covered) * (1 - d);
        drop = mix(drop, sag, ease(0, (1.5 * pixel) / radius, covered));
        part = "skin";
        value = gradient2(dx / 0.5, dy / 0.5, seed + 9);
      }
      height -= drop;
    } else {
      const onLip = Math.max(0, 0.5 + 0.5 * Math.cos(angle - hole.lipAt)) ** 1.5;
      const sunk = 0.5 - 0.5 * Math.cos(angle - hole.lipAt);
      height +=
        hole.lip * Math.exp(-(((d - 1.16) / 0.2) ** 2)) * onLip -
        radius * (0.02 + 0.05 * sunk) * mix(1.9, 1, ease(0.25, 0.6, radius)) * ease(1.35, 1, d);
    }
    if (d > RIM.from && d < RIM.to) rim.push(k);
    heights.push([k, height, sampleAt(grid, field.tint, x + dx * bent, y + dy * bent)]);
    const share = clamp(((1.03 - d) * radius * 0.8) / pixel + 0.5, 0, 1);
    if (share > 0) trace.push({ k, part, share, value });
    if (d > 0.97 && d < 1.8) {
      const patchy = gradient2(px / (0.9 * radius), py / (0.9 * radius), seed + 8);
      const oneSided = 0.55 - 0.45 * Math.cos(angle - hole.lipAt);
      trace.push({ k, part: "ring", share: oneSided * ease(1.8, 1, d), value: patchy });
    }
    if (d < 1.6) field.clean[k] = 1;
  });
  for (const [k, height, tint] of heights) {
    z[k] = height;
    field.tint[k] = tint;
  }
  roundOff(field, rim, mix(0.75, 1, ease(0.25, 0.7, radius)));
  return trace;
}

/** Colours a cut hole: metal walls, dull or silvery, dark only low down in a slender one, a broken ring of oxide. */
export function paintGasHole(field: Field, hole: GasHole, trace: HoleTrace): void {
  const slender = clamp((hole.depth / hole.radius - 0.9) / 1.1, 0, 1);
  const wall = between(TONES.oxide, TONES.meltedMetal, 0.2 + 0.55 * hole.gloss);
  const rough = mix(0.75, 0.36, hole.gloss);
  const { columns } = field.grid;
  const isSpeck = ease(0.62, 0.4, hole.radius);
  for (const { k, part, share, value } of trace) {
    if (part === "ring") {
      const film = share * clamp(0.16 + 0.6 * value, 0, 0.6) * (1 - 0.6 * hole.gloss);
      mixMaterial(field, k, scaled(TONES.skin, 0.85), 0.52, 0.4, film);
      continue;
    }
    if (part === "slag") {
      const tone = between(TONES.slag, TONES.slagPale, clamp(0.25 + 0.5 * value, 0, 0.6));
      mixMaterial(field, k, tone, 0.3, 0, 0.92 * share);
    }
    if (part === "skin") mixMaterial(field, k, TONES.skin, 0.5, 0.5, share * clamp(0.35 + 0.3 * value, 0.1, 0.6));
    if (part === "wall") {
      mixMaterial(field, k, wall, rough, 0.15 + 0.45 * hole.gloss, 0.75 * share * ease(0.0, 0.2, value));
      mixMaterial(field, k, TONES.shade, 0.5, 0.2, 0.28 * slender * share * ease(0.7, 1, value));
    }
    if (isSpeck > 0 && part !== "skin") {
      // oxide and dirt fill it, no darker than the specks beside it
      const i = k % columns;
      const crumb = gradient2(i / 2.3, (k - i) / columns / 2.3, hole.seed + 15);
      const dirt = between(scaled(TONES.oxide, 1.25), between(TONES.brown, TONES.rust, 0.4), clamp(0.3 + crumb, 0, 1));
      mixMaterial(field, k, dirt, 0.92, 0.03, isSpeck * share * clamp(0.72 + 0.5 * crumb, 0.3, 0.95));
    }
    field.brush[k] *= 1 - share;
  }
}
