import { clamp, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import type { GasHoleWish } from "./gas-hole";
import { type PoreSpot, poreGroup } from "./pore-group";
import { runIndex, visibleRun } from "./visible-run";

const SMALLEST = 0.2;
/** A mouth so wide is sure to be deep enough to count, mm. */
const SURE = 0.28;
/** Metal left between two mouths, mm. */
const NECK = 0.18;
/** The row wanders by about this much across, mm; its pores lie off it by so much, and strays by more. */
const WANDER = 0.9;
const OFF = 0.13;
/** So far inside the run's edges they stay, mm. */
const INSIDE = 0.8;
const STRAYS = { share: 0.2, by: [0.35, 0.8] } as const;
/** Smaller mouths are too small for a skin or a neck to be seen on them, mm. */
const SHAPED_FROM = { skin: 0.36, pair: 0.42 };

interface Mouth extends GasHoleWish {
  readonly along: number;
  readonly diameter: number;
}

/** What became of one mouth: gas drew it out, two ran into one another, a skin half closed it, or it hardly opened. */
function drawFate(random: RandomStream, diameter: number): GasHoleWish {
  const fate = random.uniform(0, 1);
  const turn = random.normal(0, 0.6);
  const share = random.uniform(0, 1);
  if (fate < 0.22) return { stretch: mix(1.5, 2.3, share), turn };
  if (fate < 0.38 && diameter > SHAPED_FROM.pair)
    return { stretch: mix(1.7, 2.1, share), turn, pinched: mix(0.2, 0.32, share) };
  if (fate < 0.54 && diameter > SHAPED_FROM.skin) return { covered: true };
  if (fate < 0.72) return { depth: 0.15 + 0.12 * share * diameter, open: true };
  return fate > 0.86 ? { depth: 0.2 + mix(0.5, 0.85, share) * diameter, open: true } : {};
}

/** An open hole, deep enough to count. */
const whole = (diameter: number) => ({ diameter, depth: 0.2 + 0.4 * diameter, open: true });

/** Mouths along a row from 0 to `length` mm: all sizes, larger for a stretch, uneven gaps, now and then a pair or a long sound stretch. */
function rowOfPores(random: RandomStream, length: number, largest: number): Mouth[] {
  const usual = clamp(0.9 + 0.9 * largest, 1.3, 3.2);
  const row: Mouth[] = [];
  const seed = random.seed();
  let edge = 0;
  while (edge < length) {
    const swell = 1 + 0.7 * gradient1(edge / 6.5, seed);
    const diameter = clamp(swell * random.logNormal(0.44 * largest, 0.55), SMALLEST, 0.9 * largest);
    if (edge + diameter > length) break;
    row.push({ along: edge + diameter / 2, diameter, ...drawFate(random, diameter) });
    const gap = random.chance(0.24) ? NECK : random.chance(0.2) ? 2.8 * usual : random.logNormal(usual, 0.65);
    edge += diameter + clamp(gap, NECK, 6);
  }
  const last = row[row.length - 1];
  const fitted = (length - last.diameter / 2) / last.along;
  return row.map((mouth, n) => {
    const along = mouth.along * fitted;
    // the outermost ones are whole, so that the row is as long as asked
    return n > 0 && n < row.length - 1 ? { ...mouth, along } : { along, ...whole(Math.max(SURE, mouth.diameter)) };
  });
}

function placePores(work: FaceWork, request: FeatureRequest, random: RandomStream): PoreSpot[] {
  const length = Math.max(6, request.length);
  const run = runIndex(work, request);
  const place = random.uniform(0.18, 0.82);
  const seed = random.seed();
  const row = rowOfPores(random, length, request.severity);
  const chosen = random.integer(row.length);
  return row.map(({ along, ...mouth }, n) => {
    const x = request.x + along;
    const { low, high } = visibleRun(work, run, x);
    const lane = request.y ?? mix(low, high, place);
    const strays = random.chance(STRAYS.share) ? random.pick([-1, 1]) * random.uniform(...STRAYS.by) : 0;
    const wanders = lane + WANDER * gradient1(x / 7, seed) + random.normal(strays, OFF);
    const y = clamp(wanders, Math.min(lane, low + INSIDE), Math.max(lane, high - INSIDE));
    return n === chosen ? { x, y, diameter: request.severity, open: true } : { x, y, ...mouth };
  });
}

/**
 * Pores in a row along a run from `x` over `length` mm (8 to 45), the largest mouth `severity` mm across (0.36 to 1.6).
 * Truth: size = largest mouth; start and end = outermost mouth edges.
 */
export const buildLinearPorosity: FeatureBuilder = (request, random) =>
  poreGroup(request.id, "linear-porosity", random, (work) => placePores(work, request, random.child("row")));
