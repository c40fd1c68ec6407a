import { TRAY_WORDS } from "@/app/_bench/gauge/gauge-words";
import { DRILL_GAUGES, DRILLS, type Drill, type DrillGauge, type DrillRound, ROUND_LENGTH } from "@/lib/drills";

interface DrillWords {
  readonly title: string;
  readonly does: string;
  /** One task and more of them. */
  readonly task: readonly [one: string, many: string];
}

export const DRILL_WORDS: Readonly<Record<Drill, DrillWords>> = {
  "read-scale": {
    title: "Read the scale",
    does: "A gauge as it stands, its scale under the lens. Type what it reads, and see at once what it does read and why.",
    task: ["reading", "readings"],
  },
  "seat-gauge": {
    title: "Seat the gauge",
    does: "A weld with spatter, bent or stepped plates about it. Set the gauge down so that what it reads is true.",
    task: ["seat", "seats"],
  },
  "find-largest": {
    title: "Find the largest",
    does: "A bare weld. Go along it with the gauge, and say how high the cap or how deep the undercut is at most, and where.",
    task: ["weld", "welds"],
  },
};

/** lengthWords("read-scale") = "10 readings a round". */
export const lengthWords = (drill: Drill): string => `${ROUND_LENGTH[drill]} ${DRILL_WORDS[drill].task[1]} a round`;

/** "All", or the gauges by their tray names. */
export function gaugesWords(drill: Drill, gauges: readonly DrillGauge[]): string {
  if (gauges.length === DRILL_GAUGES[drill].length) return "All";
  return gauges.map((kind) => TRAY_WORDS[kind]).join(", ");
}

/** 102 -> "1 min 42 s". */
export function durationWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : `${minutes} min ${seconds % 60} s`;
}

/** In hundredths, which is finer than any gauge here is read: 0.1 -> "0.10 mm". */
export const errorWords = (error: number | null): string =>
  error === null ? "nothing read" : `${error.toFixed(2)} mm`;

/** A drill is steady from this share of right answers in its last round. Common practice, no source. */
const STEADY_SHARE = 0.8;

/** What to do next, in a sentence: the first drill in order that is not steady yet, or the one left alone for longest. */
export function describeNext(rounds: Readonly<Record<Drill, readonly DrillRound[]>>): string {
  if (DRILLS.every((drill) => rounds[drill].length === 0)) {
    return "Begin with “Read the scale”: ten quick readings, each with its answer at once.";
  }
  const next = DRILLS.find((drill) => !isSteady(rounds[drill][0]));
  if (!next) {
    const oldest = DRILLS.reduce((a, b) => (rounds[a][0].finishedAt <= rounds[b][0].finishedAt ? a : b));
    return `All three go well. Measure on a fresh plate, or go back to “${DRILL_WORDS[oldest].title}”, which you have left alone for longest.`;
  }
  const { title } = DRILL_WORDS[next];
  const last = rounds[next][0];
  return last
    ? `Take “${title}” again: ${last.right} of ${last.asked} were right in your last round.`
    : `Next is “${title}”: you have not taken it yet.`;
}

const isSteady = (last: DrillRound | undefined): boolean =>
  last !== undefined && last.right / last.asked >= STEADY_SHARE;
