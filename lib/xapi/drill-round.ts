import type { Drill, DrillRound } from "../drills";
import { workshopActivity } from "./marked-section";
import { activity, idOf, learnerAccount, type XapiPlace } from "./place";
import { isoDuration, type Statement, VERBS } from "./statement";

const DRILL_WORDS: Readonly<Record<Drill, string>> = {
  "read-scale": "Read the scale of a gauge",
  "seat-gauge": "Seat a gauge",
  "find-largest": "Find the largest along a weld",
};

/** A finished round of a drill: completed, with how many answers were right. An exercise has no pass mark. */
export function drillStatement(place: XapiPlace, userId: string, round: DrillRound): Statement {
  const { id, drill, asked, right, seconds, finishedAt } = round;
  return {
    id: idOf(place, `drill/${id}`),
    actor: learnerAccount(place, userId),
    verb: VERBS.completed,
    object: activity(place, `drills/${drill}`, { type: "performance", name: `Drill: ${DRILL_WORDS[drill]}` }),
    result: {
      score: { scaled: right / asked, raw: right, min: 0, max: asked },
      completion: true,
      duration: isoDuration(seconds),
    },
    context: {
      registration: idOf(place, `round/${id}`),
      platform: "Toeline",
      language: "en",
      contextActivities: { grouping: [workshopActivity(place)] },
    },
    timestamp: finishedAt.toISOString(),
    version: "1.0.0",
  };
}
