import { clamp, ease } from "../../math";
import { hash01 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { PlateState } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** The noise of one row of a patch that a plate's skin is made of, one value per column. */
export interface SkinLines {
  readonly blotch: Float32Array;
  readonly blotchFine: Float32Array;
  readonly micro: Float32Array;
  readonly flake: Float32Array;
  readonly streak: Float32Array;
  readonly zone: Float32Array;
}

/** A plate whose scale was taken off before welding. Heights in mm. */
interface Skin {
  readonly light: number;
  readonly rough: number;
  readonly metal: number;
  readonly pitted: number;
  readonly waves: number;
  readonly streaked: number;
  readonly blotched: number;
  readonly grain: number;
}

const SKINS: Readonly<Record<Exclude<PlateState, "mill-scale">, Skin>> = {
  // grit leaves a matt grey skin of fine dimples, alike in every direction
  blasted: {
    light: 0.62,
    rough: 0.7,
    metal: 0.4,
    pitted: 0.011,
    waves: 0.004,
    streaked: 0.02,
    blotched: 0.07,
    grain: 0.3,
  },
  // acid leaves a smooth pale skin with run marks and stains
  pickled: {
    light: 0.72,
    rough: 0.5,
    metal: 0.46,
    pitted: 0.006,
    waves: 0.006,
    streaked: 0.12,
    blotched: 0.14,
    grain: 0.12,
  },
};

/** One row of a blasted or pickled plate: bare steel without scale, the first breath of rust where it was touched or got wet. */
export function layCleaned(
  field: Field,
  lines: SkinLines,
  j: number,
  state: Exclude<PlateState, "mill-scale">,
  rustiness: number,
  grainSeed: number,
): void {
  const { z, parent, red, green, blue, rough, metal } = field;
  const { blotch, blotchFine, micro, flake, streak, zone } = lines;
  const { columns } = field.grid;
  const skin = SKINS[state];
  const [r, g, b] = TONES.bareSteel;
  for (let i = 0, k = j * columns; i < columns; i++, k++) {
    const grain = hash01(k, 1, grainSeed) - 0.5;
    const fine = micro[i];
    z[k] = parent[k] + skin.pitted * (fine + grain) + skin.waves * blotchFine[i];
    const uneven = skin.blotched * (0.6 * blotch[i] + 0.5 * zone[i] + 0.3 * flake[i]) + skin.streaked * streak[i];
    const light = skin.light * (1 + uneven + skin.grain * (0.25 * fine + 0.5 * grain));
    red[k] = r * light;
    green[k] = g * light;
    blue[k] = b * light;
    rough[k] = skin.rough + 0.06 * blotchFine[i] + 0.05 * fine;
    metal[k] = skin.metal;
    const damp = 0.55 * blotch[i] + 0.5 * zone[i] + 0.3 * blotchFine[i] + 0.2 * fine;
    if (damp <= 0.3) continue;
    const bloom = rustiness * ease(0.3, 1, damp) * clamp(0.6 + 0.6 * fine, 0, 1);
    mixMaterial(field, k, fine > 0.15 ? TONES.rustPale : TONES.rust, 0.84, 0.05, 0.4 * bloom);
  }
}
