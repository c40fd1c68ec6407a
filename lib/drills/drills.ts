import { z } from "zod";
import type { GaugeKind } from "../gauges";
import { median } from "../math";

/** The gauge drills, in the order in which they are best taken. */
export const DRILLS = ["read-scale", "seat-gauge", "find-largest"] as const;
export type Drill = (typeof DRILLS)[number];

/** Gauges that a drill may ask for. */
export const DRILL_GAUGES = {
  "read-scale": ["height-gauge", "depth-gauge", "hook-gauge", "fillet-gauge", "caliper", "steel-rule"],
  "seat-gauge": ["height-gauge", "depth-gauge", "hook-gauge"],
  "find-largest": ["height-gauge", "depth-gauge"],
} as const satisfies Readonly<Record<Drill, readonly GaugeKind[]>>;
export type DrillGauge<D extends Drill = Drill> = (typeof DRILL_GAUGES)[D][number];

/** Tasks in a round: many quick ones, a few long ones. */
export const ROUND_LENGTH: Readonly<Record<Drill, number>> = { "read-scale": 10, "seat-gauge": 5, "find-largest": 3 };

/** What became of one task. */
export interface DrillAnswer {
  readonly isRight: boolean;
  /** What was given less what would be right, mm; null where nothing could be read. */
  readonly error: number | null;
}

/** A finished round, as it is kept. It is the learner's own note of an exercise, and no mark. */
export const drillRoundSchema = z
  .strictObject({
    drill: z.enum(DRILLS),
    gauges: z.array(z.enum(DRILL_GAUGES["read-scale"])).min(1),
    asked: z.int().positive(),
    right: z.int().min(0),
    /** Median of the absolute errors, mm; null where nothing could be read. */
    medianError: z.number().min(0).max(1_000_000).nullable(),
    /** From the first task to the last feedback. */
    seconds: z.int().min(0).max(86_400),
  })
  .refine(({ drill, asked }) => asked === ROUND_LENGTH[drill], {
    path: ["asked"],
    error: "as many tasks as a round of this drill has",
  })
  .refine(({ asked, right }) => right <= asked, { path: ["right"], error: "no more than were asked" })
  .refine(({ gauges }) => new Set(gauges).size === gauges.length, { path: ["gauges"], error: "each gauge once" })
  .refine(({ drill, gauges }) => gauges.every((kind) => (DRILL_GAUGES[drill] as readonly GaugeKind[]).includes(kind)), {
    path: ["gauges"],
    error: "gauges of this drill",
  });
export type NewDrillRound = Readonly<z.infer<typeof drillRoundSchema>>;

export interface DrillRound extends NewDrillRound {
  readonly id: string;
  readonly finishedAt: Date;
}

/** How a round stands: tally([{ isRight: true, error: -0.1 }]) = { asked: 1, right: 1, medianError: 0.1 }. */
export function tally(answers: readonly DrillAnswer[]): Pick<NewDrillRound, "asked" | "right" | "medianError"> {
  const errors = answers.flatMap(({ error }) => (error === null ? [] : [Math.abs(error)]));
  return {
    asked: answers.length,
    right: answers.filter(({ isRight }) => isRight).length,
    medianError: errors.length === 0 ? null : Math.round(median(errors) * 1000) / 1000,
  };
}
