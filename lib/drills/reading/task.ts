import {
  FILLET_USES,
  type FilletUse,
  GAUGES,
  type GaugePlacement,
  type Heights,
  setDown,
  takeFromTray,
} from "../../gauges";
import { type Mm, roundTo } from "../../math";
import type { RandomStream } from "../../random";
import type { DrillGauge } from "../drills";
import { STEADY } from "../steady";
import { MIDDLE, WORK } from "./work-under";

/** How far the moving part may stand from a line of the scale, in steps: near enough that one line is nearest. */
const MOST_BESIDE = 0.35;

interface Reading {
  /** Where the moving part stands on the scale, mm; of a rule, the place of the mark beside its edge. */
  readonly position: Mm;
  /** What a careful eye reads there: to the gauge's own step. */
  readonly key: Mm;
}

/** A gauge as it stands on a piece of work, to be read. */
export type StandingTask = Reading & {
  readonly kind: Exclude<DrillGauge<"read-scale">, "steel-rule">;
  readonly placement: GaugePlacement;
  readonly heights: Heights;
  /** What the scale shows beyond the place of the part's end, mm: the end is drawn on the metal. */
  readonly noise: Mm;
};
export type RuleTask = Reading & { readonly kind: "steel-rule" };
/**
 * It holds its own answer and may go to the browser: a drill is an exercise with feedback, and nothing is marked. No
 * practice and no paper takes anything from here.
 */
export type ReadingTask = StandingTask | RuleTask;

/** Draws a scale to read: every value that the scale has is as likely as any other, below nought too. */
export function drawReadingTask(random: RandomStream, kinds: readonly DrillGauge<"read-scale">[]): ReadingTask {
  const kind = random.child("kind").pick(kinds);
  const reading = drawReading(random.child("place"), kind);
  if (kind === "steel-rule") return { kind, ...reading };
  const taken = takeFromTray(kind, { x: MIDDLE, y: 0, turn: 90 });
  const placement = taken.kind === "fillet-gauge" ? { ...taken, use: drawUse(random, reading.key) } : taken;
  const { of, most } = WORK[placement.kind === "fillet-gauge" ? placement.use : placement.kind];
  const heights = of(Math.min(reading.position, most));
  const standing = setDown(heights, placement, STEADY);
  const touches = standing.ok && reading.position <= most;
  return { kind, ...reading, placement, heights, noise: touches ? reading.position - standing.exact : 0 };
}

/** The flat end of the throat's slide rests on both plates from 0.8 mm down: a scale that shows less measures a leg. */
const drawUse = (random: RandomStream, key: Mm): FilletUse => (key < 1 ? "leg" : random.child("use").pick(FILLET_USES));

function drawReading(random: RandomStream, kind: DrillGauge<"read-scale">): Reading {
  const { range, step } = GAUGES[kind];
  if (range === null) throw new Error(`${kind} has no scale`);
  const lines = Math.round((range.highest - range.lowest) / step) + 1;
  const key = roundTo(range.lowest + random.integer(lines) * step, step) + 0;
  return { key, position: key + random.uniform(-MOST_BESIDE, MOST_BESIDE) * step };
}
