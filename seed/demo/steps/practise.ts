import { closeReport } from "@/app/_server/use-cases/close-report";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { DRILL_GAUGES, type Drill, ROUND_LENGTH } from "@/lib/drills";
import type { Section } from "@/lib/results";
import { listDrillRounds } from "@/prisma/stores/drill-rounds";
import { listPractices, readPractice } from "@/prisma/stores/practices";
import type { DemoLearner } from "../classes";
import { daysBetween, minutesAfter } from "../days";
import { LEARNING_DAYS } from "../inspector/skill";
import { callerAt, demoStream, done, type Entry, personOf, sourceOf } from "../writing";
import { halfOf, reportOf, withAnswers } from "./inspected";

const begunAt = async (userId: string, at: Date) =>
  (await listPractices(userId)).find(({ startedAt }) => startedAt.getTime() === at.getTime());

/** A learner practises on a piece of the demo and hands it in. */
export const practice = (
  learner: DemoLearner,
  {
    section,
    key,
    at,
    beganAt,
  }: { readonly section: Section; readonly key: string; readonly at: Date; readonly beganAt: Date },
): Entry => ({
  at,
  write: async ({ piece }) => {
    const person = await personOf(learner.signInName);
    const by = (minutes: number) => callerAt(person, minutesAfter(at, minutes));
    const specimenId = await piece(key);
    const source = sourceOf({ butt: specimenId, fillet: specimenId });
    if (!(await begunAt(person.id, at)))
      await done(startPractice(by(0), { section, piece: "any" }, source), "too-many-open");
    const begun = await begunAt(person.id, at);
    const kept = begun && (await readPractice(begun.id));
    if (!kept || kept.state === "handed-in") return;
    const work = `practice/${key}`;
    const report = await reportOf(kept, learner, { beganAt, at, work });
    let { sequence } = kept;
    if (kept.reportClosedAt === null) {
      await done(saveReport(by(14), kept.id, { sequence: ++sequence, report: halfOf(report) }));
      await done(closeReport(by(31), kept.id, { sequence: ++sequence, report }));
    }
    const whole = await withAnswers(kept.id, report, learner, work);
    await done(handIn(by(38), kept.id, { sequence: ++sequence, report: whole }), "already-handed-in");
  },
});

/** A learner takes a fresh piece that nobody has seen, and has not begun to write. */
export const unfinished = (signInName: string, section: Section, at: Date): Entry => ({
  at,
  write: async ({ specimens }) => {
    const person = await personOf(signInName);
    if (await begunAt(person.id, at)) return;
    await done(startPractice(callerAt(person, at), { section, piece: "any" }, specimens), "too-many-open");
  },
});

/** A learner finishes a round of a gauge drill; the later, the better. */
export const drillRound = (
  { signInName, skill }: DemoLearner,
  drill: Drill,
  { at, beganAt }: { readonly at: Date; readonly beganAt: Date },
): Entry => ({
  at,
  write: async () => {
    const person = await personOf(signInName);
    const kept = await listDrillRounds(person.id, drill, 100);
    if (kept.some(({ finishedAt }) => finishedAt.getTime() === at.getTime())) return;
    const random = demoStream(`${signInName}/${drill}/${Math.round(daysBetween(beganAt, at))}`);
    const learned = Math.min(1, daysBetween(beganAt, at) / LEARNING_DAYS);
    const asked = ROUND_LENGTH[drill];
    const chance = Math.min(0.97, 0.5 + 0.06 * skill.ability + 0.3 * learned);
    const right = Array.from({ length: asked }, () => random.chance(chance)).filter(Boolean).length;
    const medianError = Math.round(1000 * random.logNormal(0.14 - 0.07 * learned, 0.3)) / 1000;
    const seconds = Math.round(asked * random.uniform(18, 40) * (1.3 - 0.4 * learned));
    const gauges = [random.pick(DRILL_GAUGES[drill])];
    await done(keepDrillRound(callerAt(person, at), { drill, gauges, asked, right, medianError, seconds }));
  },
});
