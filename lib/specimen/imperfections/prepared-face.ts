import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, gradient2 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { between, TONES } from "./tones";

const CORNER_ROUNDED = 0.14;

/**
 * How far a face has fallen below its corner, in mm across, at `inside` mm from the corner: 0 well outside, `inside` well
 * within, and rounded in between, because a corner sharper than a pixel would be drawn as a staircase.
 */
export const roundedFall = (inside: number): number =>
  0.5 * (inside + hypot(inside, CORNER_ROUNDED)) * ease(-0.55, -0.2, inside);

/** How the plate's edge was prepared: ground with a disc, flame-cut (drag lines), or left with scale and slag on it. */
export type Manner = "ground" | "flame-cut" | "scaled";
const MANNERS: readonly Manner[] = ["ground", "flame-cut", "scaled"];

/** One prepared edge of the joint, bevel or root face. */
export interface Preparation {
  readonly manner: Manner;
  /** Drag lines of a flame cut: distance in mm, and how far they lean per mm of depth. */
  readonly pitch: number;
  readonly lean: number;
  /** Oxide rather blue (true) or rather brown. */
  readonly bluish: boolean;
  readonly seed: number;
}

export function drawPreparation(random: RandomStream): Preparation {
  return {
    manner: random.pick(MANNERS),
    pitch: random.uniform(0.55, 1.1),
    lean: random.normal(0, 0.5),
    bluish: random.chance(0.5),
    seed: random.seed(),
  };
}

/** Height of the preparation's own marks, mm, at x along and `down` mm below the corner (measured across). */
export function preparedRelief(face: Preparation, x: number, down: number): number {
  const { seed } = face;
  switch (face.manner) {
    case "ground":
      return 0.022 * gradient2(x / 5, down / 0.42, seed) + 0.012 * gradient2(x / 1.2, down / 0.4, seed + 1);
    case "flame-cut": {
      const dragged = (x + face.lean * down + 0.22 * down * down) / face.pitch;
      const line = gradient1(dragged + 0.5 * gradient1(x / 6, seed), seed + 1);
      return 0.034 * line + 0.015 * gradient2(x / 0.7, down / 0.7, seed + 2);
    }
    case "scaled":
      return 0.035 * gradient2(x / 1.1, down / 0.8, seed) + 0.02 * gradient2(x / 0.5, down / 0.45, seed + 1);
  }
}

/** Colours of the clean face and of the oxide on it. */
function tonesOf(face: Preparation) {
  const clean = { ground: TONES.wall, "flame-cut": TONES.brown, scaled: TONES.brown }[face.manner];
  const stain = face.manner === "scaled" ? TONES.oxide : face.bluish ? TONES.blue : TONES.brown;
  return { clean, stain };
}

/**
 * Colours a pixel of a prepared face that the weld left bare: its own oxide, darker with depth, specks of slag near the
 * bead's edge (`toBead` mm away), rust on a scaled one.
 */
export function paintPrepared(
  field: Field,
  k: number,
  face: Preparation,
  at: { readonly x: number; readonly down: number; readonly toBead: number },
  share: number,
): void {
  const { seed } = face;
  const { x, down, toBead } = at;
  const { clean, stain } = tonesOf(face);
  const mottle = clamp(
    0.5 + 0.75 * gradient2(x / 2.7, down, seed + 5) + 0.3 * gradient2(x / 0.8, down / 0.6, seed + 6),
    0,
    1,
  );
  const deep = ease(0.1, 1.5, down);
  // where the disc or the arc left it bare it is steel like the plate beside it
  const bare = between(clean, TONES.meltedMetal, 0.45 * (1 - mottle));
  const colour = between(between(bare, stain, 0.75 * mottle), TONES.oxide, 0.12 * deep);
  mixMaterial(field, k, colour, 0.46 + 0.14 * mottle, 0.55 - 0.2 * deep, share);
  const slag = ease(0.1, 0.45, gradient2(x / 1.5, down / 0.7, seed + 8) + 0.5 * Math.exp(-toBead / 0.22) - 0.6);
  mixMaterial(field, k, TONES.slag, 0.4, 0, 0.7 * slag * share);
  if (face.manner === "scaled") {
    const rust = ease(0.3, 0.7, gradient2(x / 2.1, down / 1.3, seed + 9));
    mixMaterial(field, k, TONES.rust, 0.85, 0, 0.4 * rust * share);
  }
  field.brush[k] *= 1 - share;
}

/** Colours the worn corner of a prepared face, `off` mm from it: a thin bright line, broken along x. */
export function paintCorner(field: Field, k: number, face: Preparation, x: number, off: number, share: number): void {
  const along = gradient1(x / 2.9, face.seed + 11) + 0.3 * gradient1(x / 1.2, face.seed + 12);
  const worn = Math.exp(-((off / 0.2) ** 2)) * ease(-0.15, 0.4, along) * share;
  if (worn > 0.02) mixMaterial(field, k, TONES.meltedMetal, 0.38, 0.7, 0.26 * worn);
}
