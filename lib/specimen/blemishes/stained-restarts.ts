import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal2, gradient1, gradient2, nearestColumn } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import type { RunPlan, Segment } from "../plan";
import { boxAround } from "../plate/patches";
import type { FaceWork } from "../work";
import { BLEMISH_TONES as TONES } from "./tones";

/** Share of ordinary restarts whose old metal is stained, and of those with a dark line where the new metal ends. */
const SHARE = { stain: 0.75, line: 0.6 };
/** Soot lies this far over the old metal, mm. */
const STAIN = [2.5, 6] as const;

/** Where an electrode was struck anew, the old metal keeps soot, and the edge of the new metal oxide. */
export function stainRestarts(work: FaceWork, random: RandomStream): void {
  work.plan.runs.forEach((run, n) => {
    run.segments.slice(1).forEach((segment, m) => {
      stain(work, run, n, segment, random.child(`run ${n} stop ${m}`));
    });
  });
}

/** One restart: where its rear edge lies at y, mm, and all that was drawn for it. */
interface Restart {
  readonly run: RunPlan;
  readonly number: number;
  readonly start: number;
  readonly half: number;
  readonly middle: number;
  readonly edge: (y: number) => number;
  readonly seed: number;
}

function stain(work: FaceWork, run: RunPlan, index: number, segment: Segment, random: RandomStream): void {
  const start = run.direction > 0 ? segment.a : segment.b;
  const i = nearestColumn(work.strip.grid, start);
  const half = run.halfWidth[i];
  const middle = run.centre[i];
  const rear = segment.rearRadius ?? 0.7 * half;
  const edge = (y: number) => {
    const share = Math.min(1, Math.abs(y - middle) / half);
    return start - run.direction * rear * Math.sqrt(1 - 0.9 * share * share);
  };
  const restart = { run, number: index + 1, start, half, middle, edge, seed: random.seed() };
  const reach = random.uniform(...STAIN);
  if (random.chance(SHARE.stain)) soot(work, restart, rear, reach, random.uniform(0.3, 0.75));
  if (random.chance(SHARE.line)) drawEdge(work, rear, random.uniform(0.5, 0.95), restart);
}

/** Soot on the old metal, thickest at the new one's edge. */
function soot({ strip }: FaceWork, restart: Restart, rear: number, reach: number, strength: number): void {
  const { run, half, middle, edge, start, seed } = restart;
  forEachPixel(strip.grid, boxAround(start, middle, rear + reach + 2, half + 1), (k, x, y) => {
    if (strip.run[k] !== restart.number || strip.clean[k] > 0.05) return;
    const share = Math.min(1, Math.abs(y - middle) / half);
    const behind = (edge(y) - x) * run.direction + 0.5 * gradient2(x / 1.3, y / 1.1, seed);
    if (behind > reach || behind < -0.8) return;
    const cloud = clamp(0.5 + 0.9 * fractal2(x / 2.4, y / 1.8, seed + 1, 3, 0.6), 0, 1);
    const dark = strength * cloud * ease(reach, 0.2 * reach, behind) * ease(-0.7, 0.1, behind) * (1 - share ** 4);
    mixColour(strip, k, TONES.soot, 0.75 * dark);
    strip.rough[k] += 0.15 * dark;
  });
}

/** Oxide lies in creases this near to where the new metal ends, mm; from the first depth on, thickest from the second. */
const CAUGHT = { within: 1, from: 0.004, fully: 0.028 };

/** Oxide in the crease where the new metal ends, as far as there is one. */
function drawEdge({ strip }: FaceWork, rear: number, dark: number, restart: Restart): void {
  const { grid, z } = strip;
  const { half, middle, edge, start, number, seed } = restart;
  const beside = Math.round(0.35 * grid.perMm);
  forEachPixel(grid, boxAround(start, middle, rear + 1.5, 0.95 * half), (k, x, y) => {
    if (strip.run[k] !== number || strip.clean[k] > 0.05) return;
    const off = Math.abs(x - edge(y));
    if (off > CAUGHT.within) return;
    const deep = 0.5 * (z[k - beside] + z[k + beside]) - z[k];
    const caught = ease(CAUGHT.from, CAUGHT.fully, deep) * ease(CAUGHT.within, 0.4, off);
    const broken = clamp(0.7 + 0.8 * gradient1(y / 1.7, seed + 2), 0, 1);
    mixMaterial(strip, k, TONES.toeLine, 0.6, 0.15, dark * broken * caught);
  });
}
