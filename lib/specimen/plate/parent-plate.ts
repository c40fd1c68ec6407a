import { clamp, ease } from "../../math";
import { columnX, hash01, noiseField, rowY } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { parentHeight } from "../parent";
import type { FaceWork } from "../work";
import { layHandlingScratches } from "./handling-scratches";
import { patchesOf } from "./patches";
import { drawPlateNoise, type PlateNoise, plateSeed } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** Parent plates of the joint with mill scale, lost flakes, rust and handling scratches; fills the strip's shared noise. */
export function layParentPlate(work: FaceWork): void {
  for (const field of patchesOf(work)) {
    const noise = drawPlateNoise(work, field);
    if (field === work.strip) keepNoise(work, noise);
    layParent(work, field);
    layScale(work, field, noise);
  }
  layHandlingScratches(work);
}

function keepNoise(work: FaceWork, noise: PlateNoise): void {
  work.noise.blotch.set(noise.blotch);
  work.noise.blotchFine.set(noise.blotchFine);
  work.noise.micro.set(noise.micro);
  work.noise.flake.set(noise.flake);
}

/** Untextured height: the joint's geometry and the rolling waves of the plate. */
function layParent(work: FaceWork, field: Field): void {
  const { grid, parent } = field;
  const seed = plateSeed(work);
  const long = noiseField(grid, 44, 44, seed + 1);
  const short = noiseField(grid, 9, 9, seed + 2);
  for (let j = 0, k = 0; j < grid.rows; j++) {
    const y = rowY(grid, j);
    for (let i = 0; i < grid.columns; i++, k++) {
      parent[k] =
        parentHeight(work.face, work.joint, work.plates, columnX(grid, i), y) + 0.035 * long[k] + 0.01 * short[k];
    }
  }
}

function layScale(work: FaceWork, field: Field, noise: PlateNoise): void {
  const { grid, z, parent, red, green, blue, rough, metal } = field;
  const { blotch, blotchFine, micro, flake } = noise;
  const seed = plateSeed(work);
  const streak = noiseField(grid, 110, 4.2, seed + 6, 2, 0.6);
  const zone = noiseField(grid, 70, 55, seed + 8, 2);
  const rustiness = work.look.rust;
  const grainSeed = seed + 9;
  for (let k = 0; k < z.length; k++) {
    const grain = hash01(k, 1, grainSeed) - 0.5;
    // sharp-edged flakes of scale have sprung off; what lies below is a little lower and only slightly lighter
    const lost = ease(0.22, 0.26, flake[k] + 0.04 * micro[k] + 0.3 * zone[k]);
    z[k] = parent[k] + 0.016 * (1 - lost) + 0.007 * micro[k] * (0.5 + lost) + 0.005 * blotchFine[k] + 0.004 * grain;
    const pale = clamp(0.45 + 0.5 * blotch[k] + 0.3 * streak[k] + 0.35 * zone[k], 0, 1);
    const brown = 0.4 * ease(0.05, 0.6, 0.55 * blotchFine[k] + 0.25 * blotch[k] + 0.8 * zone[k]);
    const speck = 1 + 0.15 * micro[k] + 0.1 * blotchFine[k] + 0.2 * grain;
    const { scaleDark, scalePale, scaleBrown } = TONES;
    red[k] = speck * tinted(scaleDark[0], scalePale[0], scaleBrown[0], pale, brown);
    green[k] = speck * tinted(scaleDark[1], scalePale[1], scaleBrown[1], pale, brown);
    blue[k] = speck * tinted(scaleDark[2], scalePale[2], scaleBrown[2], pale, brown);
    rough[k] = 0.47 + 0.12 * blotchFine[k] + 0.1 * micro[k];
    metal[k] = 0.2;
    if (lost > 0) mixMaterial(field, k, TONES.bareSteel, 0.56, 0.32, lost * (0.17 + 0.14 * micro[k]));
    const rust = rustAt(rustiness, lost, micro[k], blotchFine[k], zone[k]);
    if (rust > 0.01) {
      mixMaterial(field, k, micro[k] > 0.15 ? TONES.rustPale : TONES.rust, 0.85, 0.02, rust * 0.6);
      z[k] += 0.012 * rust * micro[k];
    }
  }
}

const tinted = (dark: number, pale: number, brown: number, share: number, brownShare: number): number => {
  const grey = dark + (pale - dark) * share;
  return grey + (brown - grey) * brownShare;
};

/** Rust begins as pin points where the scale is gone or cracked, and joins to a bloom only on a neglected plate. */
function rustAt(rustiness: number, lost: number, micro: number, blotchFine: number, zone: number): number {
  const bloom = ease(0.5 - 0.3 * rustiness, 0.85, 0.75 * blotchFine + 0.45 * zone + 0.12 * lost);
  const points = ease(0.42, 0.62, micro + 0.3 * zone - 0.1 + 0.16 * lost);
  return rustiness * Math.max(bloom * (0.6 + 0.5 * micro), 0.55 * points);
}
