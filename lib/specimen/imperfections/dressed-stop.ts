import { clamp, ease, hypot, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { floatGrid, forEachPixel, gradient1, gradient2, nearestColumn, nearestRow, value1 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { measureMaskExtent, type Region } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { foundExtent, truthItem } from "./found";
import type { RestartPlace } from "./restart-profile";
import { planSoundStop } from "./sound-stop";
import { scaled, TONES } from "./tones";

/** The bead's own form is taken from this far to both sides of the stop, mm. */
const SOUND = { from: 13, to: 18 };
/** A place counts as ground from this share on. */
const GROUND_FROM = 0.4;
const BRIDGE = 0.6;
/** Depth of single scratches, mm. */
const SCRATCH = 0.012;

/** One touch of the disc. Lengths in mm, about the stop; angle in radians. */
interface Touch {
  readonly x: number;
  readonly y: number;
  readonly reachX: number;
  readonly reachY: number;
  /** How far below the bead's own form the disc went at its middle. */
  readonly deep: number;
  readonly angle: number;
  readonly tone: number;
  readonly seed: number;
}

/** Strokes run out as far as this, against the reach of a touch. */
const RUNS_OUT = 2;
/** Radius of the disc, mm. */
const DISC = 58;

/** Who dresses a stop fills its crater first. */
const FILLED = 0.5;

/** How strongly a pixel was ground, how light it is and the direction of its scratches. */
type Ground = Map<number, readonly [share: number, light: number, angle: number]>;

/** Height of the bead row by row as if there were no stop: the line between what it is like before and after. */
function soundForm(field: Field, x: number, box: Region): (x: number, j: number) => number {
  const { grid, z } = field;
  const first = nearestRow(grid, box.y0);
  const last = nearestRow(grid, box.y1);
  const level = (from: number, to: number) =>
    tabulate(last - first + 1, (n) => {
      let sum = 0;
      let count = 0;
      for (let i = nearestColumn(grid, from); i <= nearestColumn(grid, to); i++, count++)
        sum += z[(first + n) * grid.columns + i];
      return sum / count;
    });
  const before = level(x - SOUND.to, x - SOUND.from);
  const after = level(x + SOUND.from, x + SOUND.to);
  return (at, j) => {
    const n = clamp(j - first, 0, before.length - 1);
    const share = clamp((at - x) / (SOUND.from + SOUND.to) + 0.5, 0, 1);
    return before[n] + (after[n] - before[n]) * share;
  };
}

function boxOf({ x, y }: RestartPlace, touches: readonly Touch[]): Region {
  const alongs = touches.map((touch) => Math.abs(touch.x) + RUNS_OUT * touch.reachX);
  const beside = touches.map((touch) => Math.abs(touch.y) + RUNS_OUT * touch.reachY);
  const reachX = Math.max(...alongs);
  const reachY = Math.max(...beside);
  return { x0: x - reachX, x1: x + reachX, y0: y - reachY, y1: y + reachY };
}

/** Takes off what stands above the dressed form; what lies below it, such as the last of a crater, stays as it was. */
function grind(work: FaceWork, place: RestartPlace, touches: readonly Touch[]): Ground {
  const { strip } = work;
  const box = boxOf(place, touches);
  const form = soundForm(strip, place.x, box);
  const ground: Ground = new Map();
  for (const touch of touches) {
    const { reachX, reachY, deep, angle, seed } = touch;
    const cx = place.x + touch.x;
    const cy = place.y + touch.y;
    const centreX = cx - DISC * Math.cos(angle);
    const centreY = cy - DISC * Math.sin(angle);
    forEachPixel(strip.grid, box, (k, x, y, _, j) => {
      if (strip.bead[k] < 0.3) return;
      const r = hypot(x - centreX, y - centreY);
      const along = r * 0.09 + gradient2(x / 9, y / 6, seed + 8);
      const lines = 0.2 * gradient2(along, r / 0.4, seed) + 0.28 * gradient2(along, r / 1.2, seed + 1);
      const oval = hypot((x - cx) / reachX, (y - cy) / reachY);
      if (oval > RUNS_OUT) return;
      const d = oval * (1 + 0.4 * gradient2(x / 5, y / 3, seed + 2)) + lines * ease(0.1, 0.9, oval);
      if (d > 1.4) return;
      const scratch = 0.6 * value1(r / 0.28, seed + 3) + 0.6 * value1(r / 0.75, seed + 4);
      const uneven = 0.05 * gradient2(x / 6, y / 4, seed + 5) + SCRATCH * scratch;
      const over = strip.z[k] - form(x, j) + deep * (1 - 1.25 * oval * oval) - uneven;
      const pressed = ease(1.4, 0.35, d) * ease(RUNS_OUT, 1.4, oval);
      if (over > 0) strip.z[k] -= over * pressed;
      // hollows between ripples keep their skin
      const share = pressed * ease(-0.05, 0.035, over + 0.02 * scratch);
      if (share < 0.03) return;
      strip.clean[k] = Math.max(strip.clean[k], share);
      const [before = 0] = ground.get(k) ?? [];
      const light = touch.tone + 0.26 * scratch;
      if (share >= 0.7 * before) ground.set(k, [Math.max(share, before), light, angle + Math.PI / 2]);
    });
  }
  return ground;
}

function paintGround(field: Field, ground: Ground, seed: number): void {
  const { columns, perMm } = field.grid;
  for (const [k, [share, light, angle]] of ground) {
    const x = (k % columns) / perMm;
    const y = Math.floor(k / columns) / perMm;
    const patchy = light + 0.12 * gradient2(x / 3, y / 2, seed + 6);
    mixMaterial(field, k, scaled(TONES.cutMetal, patchy), 0.42, 0.68, 0.66 * share);
    mixMaterial(field, k, TONES.straw, 0.42, 0.7, 0.14 * share * clamp(gradient1(x / 6, seed + 7), 0, 1));
    field.brush[k] += (0.8 - field.brush[k]) * share;
    if (share > 0.4) field.brushAngle[k] = angle;
  }
}

/** Depth of the deepest ground place below the bead's form to both sides, and the extent of what shines. */
function measuredDressing(
  work: FaceWork,
  id: string,
  place: RestartPlace,
  touches: readonly Touch[],
  ground: Ground,
): TruthItem | null {
  const { grid, z } = work.strip;
  const box = boxOf(place, touches);
  const shares = floatGrid(grid.columns * grid.rows);
  for (const [k, [share]] of ground) shares[k] = share;
  const extent = measureMaskExtent(grid, shares, GROUND_FROM, box, BRIDGE);
  if (!extent) return null;
  const form = soundForm(work.strip, place.x, box);
  let size = 0;
  let worst = extent.strongest;
  forEachPixel(grid, box, (k, x, y, _, j) => {
    const depth = form(x, j) - z[k];
    if (shares[k] <= GROUND_FROM || depth <= size) return;
    size = depth;
    worst = [x, y];
  });
  return truthItem(work, id, "grinding-mark", { ...foundExtent(extent), size, worst, harmless: true });
}

/** Two or three touches that overlap, the first right over the stop. */
function drawTouches(random: RandomStream, halfWidth: number): Touch[] {
  const heading = random.normal(Math.PI / 2, 0.5) * random.pick([-1, 1]);
  return Array.from({ length: 2 + random.integer(2) }, (_, n) => ({
    x: n === 0 ? 0 : random.uniform(-6, 6),
    y: n === 0 ? 0 : random.normal(0, 0.25) * halfWidth,
    reachX: random.uniform(4.5, 7.5),
    reachY: halfWidth * random.uniform(0.7, 1.1),
    deep: random.uniform(0.06, 0.15) * (n === 0 ? 1 : 0.75),
    angle: heading + random.normal(0, 0.2),
    tone: random.uniform(0.5, 0.68),
    seed: random.seed(),
  }));
}

/**
 * Harmless: a stop and restart at `x` that was ground flush with the bead and smooth; bright, nearly without ripples. Its
 * truth is a neutral grinding mark over what shines, or nothing where no stop fits.
 */
export const dressedStop: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("stop");
  const seed = draw.seed();
  let place: RestartPlace | null = null;
  let touches: readonly Touch[] = [];
  let ground: Ground = new Map();
  return {
    id: request.id,
    plan(work) {
      place = planSoundStop(work, request, draw, FILLED);
      if (place) touches = drawTouches(random.child("dressing"), place.halfWidth);
    },
    cut(work) {
      if (place) ground = grind(work, place, touches);
    },
    paint: (work) => paintGround(work.strip, ground, seed),
    measure: (work) => place && measuredDressing(work, request.id, place, touches, ground),
  };
};
