import { clamp, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type PoreSpot, poreGroup } from "./pore-group";
import { runIndex, visibleRun } from "./visible-run";

const SMALLEST = 0.26;
/** Metal left between two mouths, mm. */
const NECK = 0.18;
/** The row wanders by about this much across, mm. */
const WANDER = 0.5;

/** Mouths along a row from 0 to `length` mm: uneven gaps, now and then a pair close together or a long sound stretch. */
function rowOfPores(random: RandomStream, length: number, largest: number): { along: number; diameter: number }[] {
  const usual = clamp(0.9 + 0.9 * largest, 1.3, 3.2);
  const row: { along: number; diameter: number }[] = [];
  let edge = 0;
  while (edge < length) {
    const diameter = clamp(random.logNormal(0.5 * largest, 0.42), SMALLEST, 0.9 * largest);
    if (edge + diameter > length) break;
    row.push({ along: edge + diameter / 2, diameter });
    const gap = random.chance(0.18) ? NECK : random.chance(0.2) ? 2.8 * usual : random.logNormal(usual, 0.5);
    edge += diameter + clamp(gap, NECK, 6);
  }
  const last = row[row.length - 1];
  return row.map(({ along, diameter }) => ({
    along: (along * (length - last.diameter / 2)) / last.along,
    diameter,
  }));
}

function placePores(work: FaceWork, request: FeatureRequest, random: RandomStream): PoreSpot[] {
  const length = Math.max(6, request.length);
  const run = runIndex(work, request);
  const place = random.uniform(0.18, 0.82);
  const seed = random.seed();
  const row = rowOfPores(random, length, request.severity);
  const chosen = random.integer(row.length);
  return row.map(({ along, diameter }, n) => {
    const x = request.x + along;
    const { low, high } = visibleRun(work, run, x);
    const lane = request.y ?? mix(low, high, place);
    const y = lane + WANDER * gradient1(x / 7, seed) + random.normal(0, 0.2);
    return n === chosen ? { x, y, diameter: request.severity, open: true } : { x, y, diameter };
  });
}

/**
 * Pores in a row along a run from `x` over `length` mm (8 to 45), the largest mouth `severity` mm across (0.36 to 1.6).
 * Truth: size = largest mouth; start and end = outermost mouth edges.
 */
export const buildLinearPorosity: FeatureBuilder = (request, random) =>
  poreGroup(request.id, "linear-porosity", random, (work) => placePores(work, request, random.child("row")));
