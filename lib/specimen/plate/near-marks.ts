import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { fractal2, gradient1, gradient2, value1 } from "../../surface";
import { type Colour, mixMaterial } from "../field";
import { between, linear } from "../imperfections/tones";
import type { Range } from "../runs";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** How many of each lie beside one weld, fewest and most. */
const COUNTS = {
  dents: [12, 26],
  blows: [1, 4],
  blooms: [4, 11],
  touches: [1, 4],
  dots: [0, 2],
} as const satisfies Record<string, Range>;
/** Distance from the toe within which they lie, mm. */
const BESIDE = { least: 1.2, most: 24 };

/**
 * Harmless marks on the plate near the weld: small dents, hammer blows, blooms of rust, touches of a grinder, dots of a
 * marker. None is deeper than 0.05 mm; marks of tools are measured from 0.08 mm.
 */
export function markNearWeld(work: FaceWork, random: RandomStream): void {
  const often = (name: keyof typeof COUNTS, leave: (work: FaceWork, at: Point, draw: RandomStream) => void) => {
    const draw = random.child(name);
    const [least, most]: Range = COUNTS[name];
    for (let n = Math.round(draw.uniform(least, most)); n > 0; n--) leave(work, drawPlace(work, draw), draw);
  };
  often("blooms", bloom);
  often("touches", touch);
  often("blows", blow);
  often("dents", dent);
  often("dots", dot);
}

function drawPlace(work: FaceWork, random: RandomStream): Point {
  const x = random.uniform(5, work.joint.length - 5);
  const side = random.pick([-1, 1] as const);
  const share = random.uniform(0, 1) ** 1.4;
  return [x, toeAt(work, side, x, 1) + side * (BESIDE.least + share * (BESIDE.most - BESIDE.least))];
}

/** A knock of something small: a dimple with a slight rim, most a few tenths wide, some struck slantwise. */
function dent(work: FaceWork, [x, y]: Point, random: RandomStream): void {
  const radius = clamp(random.logNormal(0.3, 0.5), 0.14, 0.9);
  const depth = Math.min(0.048, random.uniform(0.018, 0.036) + 0.02 * radius);
  const stretch = random.uniform(1, 2.4);
  const turn = random.uniform(0, Math.PI);
  const shade = random.chance(0.5) ? TONES.bareSteel : TONES.oxide;
  const share = random.uniform(0.2, 0.65);
  const seed = random.seed();
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  forEachPlatePixel(work, boxAround(x, y, 1.7 * radius * stretch), (field, k, px, py) => {
    if (field.bead[k] > 0.1 || field.clean[k] > 0.05) return;
    const u = ((px - x) * c + (py - y) * s) / (radius * stretch);
    const v = ((py - y) * c - (px - x) * s) / radius;
    const d = hypot(u, v) * (1 + 0.3 * gradient2(px / (0.8 * radius), py / (0.8 * radius), seed));
    if (d > 1.5) return;
    const core = Math.exp(-3 * d * d);
    // the rim stands where the metal was pushed to
    field.z[k] += 0.22 * depth * Math.exp(-(((d - 1.05) / 0.22) ** 2)) * clamp(0.6 + u, 0, 1) - depth * core;
    mixMaterial(field, k, shade, 0.45, 0.6, share * core);
  });
}

/** The print of a hammer's face that met the plate at a slant: a shallow crescent, bright at its edge. */
function blow(work: FaceWork, [x, y]: Point, random: RandomStream): void {
  const radius = random.uniform(1.4, 3.2);
  const depth = random.uniform(0.018, 0.036);
  const turn = random.uniform(0, 2 * Math.PI);
  const bright = random.uniform(0.15, 0.45);
  const seed = random.seed();
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  forEachPlatePixel(work, boxAround(x, y, 1.3 * radius), (field, k, px, py) => {
    if (field.bead[k] > 0.1 || field.clean[k] > 0.05) return;
    const u = ((px - x) * c + (py - y) * s) / radius;
    const v = ((py - y) * c - (px - x) * s) / radius;
    const d = hypot(u, v) + 0.07 * gradient2(px / 1.1, py / 1.1, seed);
    if (d > 1.15) return;
    // one edge bit, the opposite one hardly touched
    const pressed = ease(-0.5, 0.9, u) * clamp(0.8 + 0.5 * gradient2(px / 0.7, py / 0.7, seed + 1), 0.2, 1);
    const edge = ease(0.2 + 0.14 * clamp(v, -1, 1), 0, Math.abs(d - 0.92));
    field.z[k] -= depth * pressed * ease(1.02, 0.8, d);
    mixMaterial(field, k, TONES.bareSteel, 0.38, 0.7, bright * pressed * Math.max(edge, 0.35 * ease(1, 0.8, d)));
  });
}

/** A bloom of rust where a drop dried: ragged, thin at the edge, dark in the middle. */
function bloom(work: FaceWork, [x, y]: Point, random: RandomStream): void {
  const radius = clamp(random.logNormal(0.65, 0.55), 0.25, 2.4);
  const stretch = random.uniform(1, 1.7);
  const dense = random.uniform(0.35, 0.85) * (0.6 + 0.5 * work.look.rust);
  const seed = random.seed();
  forEachPlatePixel(work, boxAround(x, y, 2 * radius * stretch, 2 * radius), (field, k, px, py) => {
    if (field.clean[k] > 0.05) return;
    const d =
      hypot((px - x) / stretch, py - y) / radius +
      0.55 * fractal2(px / (1.3 * radius), py / (1.3 * radius), seed, 3, 0.6);
    if (d > 1.6) return;
    const cloud = clamp(0.4 + 1.2 * fractal2(px / 0.5, py / 0.5, seed + 3, 3, 0.75), 0, 1);
    const share = dense * ease(1.5, 0.2, d) * cloud;
    mixMaterial(field, k, between(TONES.rustPale, TONES.rust, ease(0.9, 0.1, d)), 0.85, 0.05, share);
    field.z[k] += 0.01 * share * gradient2(px / 0.28, py / 0.28, seed + 5);
    field.brush[k] *= 1 - share;
  });
}

/** A grinder touched the plate in passing: a short bright sheaf of scratches, bowed as the disc's edge is. */
function touch(work: FaceWork, [x, y]: Point, random: RandomStream): void {
  const half = random.uniform(2.5, 8);
  const wide = random.uniform(0.3, 1.1);
  const turn = random.normal(0, 0.7);
  const bow = random.normal(0, 0.012);
  const deep = random.uniform(0.015, 0.036);
  const bright = random.uniform(0.45, 0.9);
  const seed = random.seed();
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  forEachPlatePixel(work, boxAround(x, y, half, half * Math.abs(s) + wide + 1), (field, k, px, py) => {
    if (field.bead[k] > 0.1 || field.clean[k] > 0.05) return;
    const along = (px - x) * c + (py - y) * s;
    const across = (py - y) * c - (px - x) * s + bow * along * along;
    const place = Math.abs(along) / half;
    if (place > 1) return;
    // it bites at once and slides off
    const pressed = ease(1, along > 0 ? 0.15 : 0.75, place) * ease(wide, 0.3 * wide, Math.abs(across));
    const lines = ease(-0.25, 0.6, value1(across / 0.16, seed) + 0.4 * gradient1(along / 2.3, seed + 1));
    const share = pressed * lines;
    if (share <= 0) return;
    field.z[k] -= deep * share;
    mixMaterial(field, k, TONES.bareSteel, 0.34, 0.8, bright * share);
  });
}

const INKS: readonly Colour[] = [linear("#d6d4cc"), linear("#c9a73a"), linear("#2b3c68"), linear("#8f2f26")];

/** A dot of a paint marker or a crayon, worn. */
function dot(work: FaceWork, [x, y]: Point, random: RandomStream): void {
  const radius = random.uniform(0.4, 1.1);
  const ink = random.pick(INKS);
  const dense = random.uniform(0.3, 0.62);
  const turn = random.uniform(0, Math.PI);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const worn = random.uniform(0.1, 0.6);
  const stretch = random.uniform(1.2, 3);
  const seed = random.seed();
  forEachPlatePixel(work, boxAround(x, y, 1.6 * radius * stretch), (field, k, px, py) => {
    if (field.bead[k] > 0.1 || field.clean[k] > 0.05) return;
    const along = (px - x) * c + (py - y) * s;
    const across = (py - y) * c - (px - x) * s;
    const d = hypot(along / stretch, across) / radius + 0.3 * fractal2(px / 0.9, py / 0.9, seed, 2);
    // the stick slid: it leaves its colour in streaks, and the plate shows through all over
    const caught = 0.5 * gradient2(along / 1.6, across / 0.3, seed + 1) + 0.4 * gradient2(px / 1.1, py / 1.1, seed + 2);
    const cover = ease(1.2, 0.3, d) * ease(-0.5, 0.9, caught + 0.75 - worn);
    if (cover > 0) mixMaterial(field, k, ink, 0.65, 0, dense * cover);
  });
}
