import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, value1 } from "../../surface";
import { mixMaterial } from "../field";
import { toeAt } from "../runs/edit";
import type { FaceWork } from "../work";
import { dress, tackPlaces } from "./dressing";
import { grindSpot } from "./ground-spot";
import { markNearWeld } from "./near-marks";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

const SCUFFS = 5;
const DENTS = 9;

/** What the workshop left on the plate and no inspector minds: ground-off strongbacks and tacks, scuffs, small dents. */
export function leaveWorkshopMarks(work: FaceWork): void {
  const random = work.random.child("plate/marks");
  if (work.face === "root") dressTacks(work, random.child("tacks"));
  grindStrongbacks(work, random.child("strongbacks"));
  for (let n = 0; n < SCUFFS; n++) scuff(work, random.child(`scuff ${n}`));
  for (let n = 0; n < DENTS; n++) dent(work, random.child(`dent ${n}`));
  markNearWeld(work, random.child("near"));
}

function dressTacks(work: FaceWork, random: RandomStream): void {
  for (const place of tackPlaces(work)) {
    for (const side of [-1, 1] as const) {
      if (!random.chance(0.75)) continue;
      dress(
        work,
        {
          x: place + random.normal(0, 1.5),
          y: toeAt(work, side, place) + side * random.uniform(0.6, 1.4),
          reachX: random.uniform(5, 8),
          reachY: random.uniform(1.5, 2.6),
          left: 0.03,
          bare: 0.34,
        },
        random,
      );
    }
  }
}

/** A strongback stood across the joint on fillets a plate's thickness apart, or a clamp or a lug left its place on one plate. */
function grindStrongbacks(work: FaceWork, random: RandomStream): void {
  const count = random.integer(3);
  for (let n = 0; n < count; n++) {
    const x = work.joint.length * (count === 1 ? random.uniform(0.1, 0.9) : random.uniform(0.1, 0.42) + 0.48 * n);
    const fresh = random.uniform(0.05, 1);
    if (random.chance(0.5)) {
      const y = random.pick([-1, 1]) * random.uniform(34, 58);
      grindOff(work, x, y, random.uniform(0, Math.PI), fresh, random);
      continue;
    }
    const apart = random.uniform(7, 14);
    for (const side of [-1, 1]) {
      // whoever knocked it off ground each plate by itself, and some of its welds not at all
      const y = side * random.uniform(33, 54);
      const skew = random.normal(0, 3);
      for (const flank of [-0.5, 0.5]) {
        if (random.chance(0.4)) continue;
        const at = x + skew + flank * apart * random.uniform(0.7, 1.2);
        const turn = Math.PI / 2 + random.normal(0, 0.15);
        grindOff(work, at, y + random.normal(0, 4), turn, clamp(fresh + random.normal(0, 0.15), 0, 1), random);
      }
    }
  }
}

function grindOff(work: FaceWork, x: number, y: number, turn: number, fresh: number, random: RandomStream): void {
  const long = clamp(random.logNormal(4, 0.4), 1.6, 9);
  const wide = random.uniform(0.8, 2.6);
  const left = random.chance(0.7) ? random.uniform(0.02, 0.1) : 0;
  grindSpot(work, { x, y, long, wide, turn, left, fresh }, random);
}

/** A sheaf of faint scratches where something was dragged over the plate. */
function scuff(work: FaceWork, random: RandomStream): void {
  const x = random.uniform(10, work.joint.length - 10);
  const y = random.uniform(-work.joint.width / 2 + 8, work.joint.width / 2 - 8);
  const angle = random.normal(0, 0.5);
  const half = random.uniform(7, 23);
  const wide = random.uniform(2, 7);
  const bright = random.uniform(0.12, 0.34);
  const seed = random.seed();
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const box = boxAround(x, y, half + 3, half * Math.abs(sine) + wide + 3);
  forEachPlatePixel(work, box, (field, k, px, py) => {
    const along = (px - x) * cosine + (py - y) * sine;
    const across = (py - y) * cosine - (px - x) * sine + 0.004 * along * along;
    if (Math.abs(across) > wide || Math.abs(along) > half || field.bead[k] > 0.1) return;
    const lines = 0.7 * value1(across / 0.34, seed) + 0.5 * gradient2(along / 9, across / 1.2, seed + 1);
    const ends = ease(half, half / 2, Math.abs(along) + 3 * value1(across / 0.6, seed + 2));
    const share = ease(0.15, 0.6, lines) * ease(wide, 0.4 * wide, Math.abs(across)) * ends;
    if (share <= 0) return;
    mixMaterial(field, k, TONES.bareSteel, 0.42, 0.5, bright * share * (1 - 0.6 * field.band[k]));
    field.z[k] -= 0.004 * share;
  });
}

/** A shallow knock with a slight rim, well away from the weld. */
function dent(work: FaceWork, random: RandomStream): void {
  const x = random.uniform(6, work.joint.length - 6);
  const y = random.pick([-1, 1]) * random.uniform(27, work.joint.width / 2 - 4);
  const radius = random.uniform(0.5, 1.5);
  const depth = random.uniform(0.02, 0.055);
  const stretch = random.uniform(1, 2.2);
  const seed = random.seed();
  forEachPlatePixel(work, boxAround(x, y, 1.6 * radius * stretch, 1.6 * radius), (field, k, px, py) => {
    const oval = hypot((px - x) / (radius * stretch), (py - y) / radius);
    const d = oval * (1 + 0.15 * gradient2(px, py, seed));
    if (d > 1.4) return;
    const core = Math.exp(-3 * d * d);
    field.z[k] += 0.25 * depth * Math.exp(-(((d - 1.05) / 0.2) ** 2)) - depth * core;
    mixMaterial(field, k, TONES.bareSteel, 0.42, 0.5, 0.35 * core);
  });
}
