import { setImmediate as breathe } from "node:timers/promises";
import {
  afterSection,
  type CalibrationRow,
  type Correction,
  calibrate,
  calibrationRows,
  NEW_LEARNER,
} from "@/lib/progress";
import { listPracticeSections, readObservations } from "@/prisma/stores/progress";

/** So many sections are gone over, the latest: a workshop of years takes a few seconds. */
const SECTIONS_MOST = 1500;
const AT_ONCE = 25;
/** Until so many sections have shown how good somebody is, nothing is concluded from what they miss. Common practice, no source. */
const TO_KNOW = 3;
/** While there is little of it, every piece tells; later it takes seconds, and some more change it little. */
const FRESH_FOR_MS = { few: 30_000, many: 15 * 60_000 };
const MANY = 200;

/** How hard imperfections turned out in practice, by type and size. */
export interface Calibration {
  readonly corrections: readonly Correction[];
  readonly sections: number;
  readonly learners: number;
  readonly madeAt: Date;
}

const shared = globalThis as typeof globalThis & {
  toelineCalibration?: { at: number; isFew: boolean; made: Promise<Calibration> };
};

/** The same one for a quarter of an hour, once there is much of it. */
export function currentCalibration(now: Date): Promise<Calibration> {
  const kept = shared.toelineCalibration;
  if (kept && Math.abs(now.getTime() - kept.at) < FRESH_FOR_MS[kept.isFew ? "few" : "many"]) return kept.made;
  const next = { at: now.getTime(), isFew: false, made: makeCalibration(now) };
  shared.toelineCalibration = next;
  next.made.then(
    ({ sections }) => {
      next.isFew = sections < MANY;
    },
    () => {
      shared.toelineCalibration = undefined;
    },
  );
  return next.made;
}

/**
 * From practice alone: in a sitting another clock presses. Each learner is followed from the first of the sections that are gone
 * over, so that what somebody finds is held against how good they were just before.
 */
export async function makeCalibration(now: Date): Promise<Calibration> {
  const sections = await listPracticeSections(SECTIONS_MOST);
  const byLearner = new Map<string, string[]>();
  for (const { id, userId } of sections) byLearner.set(userId, [...(byLearner.get(userId) ?? []), id]);
  const rows: CalibrationRow[] = [];
  for (const [userId, own] of byLearner) rows.push(...(await rowsOf(userId, own)));
  const corrections = calibrate(rows);
  return { corrections, sections: sections.length, learners: byLearner.size, madeAt: now };
}

/** @param latestFirst ids of one learner's sections */
async function rowsOf(userId: string, latestFirst: readonly string[]): Promise<CalibrationRow[]> {
  const ids = latestFirst.toReversed();
  const rows: CalibrationRow[] = [];
  let learner = NEW_LEARNER;
  let known = 0;
  for (let from = 0; from < ids.length; from += AT_ONCE) {
    const read = await readObservations(ids.slice(from, from + AT_ONCE));
    for (const { at, observations } of read.toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))) {
      if (known >= TO_KNOW) rows.push(...calibrationRows(userId, learner, observations));
      learner = afterSection(learner, observations, at);
      known++;
    }
    await breathe();
  }
  return rows;
}
