import { closeReport } from "@/app/_server/use-cases/close-report";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import { addTime, voidRun } from "@/app/_server/use-cases/govern-run";
import {
  beginSitting,
  closeSitting,
  openSitting,
  pauseSitting,
  releaseSitting,
  voidSitting,
} from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startSection } from "@/app/_server/use-cases/start-section";
import type { Section } from "@/lib/results";
import type { Paper } from "@/lib/sittings";
import { holdSitting } from "@/prisma/stores/demo-history";
import { readPractice } from "@/prisma/stores/practices";
import { listSittingsOf, type StoredRun, type StoredSitting } from "@/prisma/stores/sittings";
import type { DemoClass, DemoLearner } from "../classes";
import { minutesAfter, workday } from "../days";
import type { DemoPaper } from "../papers";
import { callerAt, demoStream, done, type Entry, personOf, sourceOf, type Writing } from "../writing";
import { groupOf, paperIdOf } from "./enrol";
import { halfOf, reportOf, withAnswers } from "./inspected";

/** A sitting of the demo. */
export interface DemoSitting {
  readonly demoClass: DemoClass;
  readonly paper: DemoPaper;
  /** Names the pieces and the streams that it is drawn from. */
  readonly key: string;
  readonly who: "class" | "due";
  /** When it begins, and when it was planned. */
  readonly at: Date;
  readonly plannedOn: Date;
  /** When everybody began to learn. */
  readonly beganAt: Date;
  readonly ends:
    | { readonly how: "released" }
    | { readonly how: "closed" }
    /** Still to come: nothing happens in it. */
    | { readonly how: "planned" }
    /** So many minutes after it began, with whoever was quicker handed in. */
    | { readonly how: "paused"; readonly after: number }
    | { readonly how: "void"; readonly after: number; readonly reason: string };
  /** Sign-in names of those who did not come. */
  readonly absent?: readonly string[];
  /** Who lets the clock run out in the first section. */
  readonly slow?: readonly string[];
  readonly extra?: { readonly signInName: string; readonly minutes: number; readonly reason: string };
  readonly voided?: { readonly signInName: string; readonly section: Section; readonly reason: string };
}

const WINDOW = "demowindow01";

/** Plans a sitting and lets it be sat, moment by moment, by the clock of its day. */
export const sitting = (plan: DemoSitting): Entry => ({
  at: plan.at,
  write: async (writing) => {
    const group = await groupOf(plan.demoClass);
    const paperId = await paperIdOf(plan.paper);
    if (!group || !paperId) throw new Error(`no class or no paper for ${plan.key}`);
    const tutor = await personOf(plan.demoClass.tutors[0]);
    const find = async () =>
      (await listSittingsOf(group.id, paperId)).find((one) => one.sitting.plannedAt.getTime() === plan.at.getTime());
    if (!(await find())) {
      const { who } = plan;
      const source = plan.ends.how === "planned" ? writing.specimens : await madePieces(plan, writing);
      const input = { classId: group.id, paperId, plannedAt: plan.at.toISOString(), who };
      await done(planSitting(callerAt(tutor, plan.plannedOn), input, source), "nobody-expected");
    }
    const stored = await find();
    // everybody had passed
    if (!stored || plan.ends.how === "planned") return;
    await holdSitting(stored.sitting.id);
    for (const { at, act } of momentsOf(plan, stored, tutor.signInName)) await act(at);
    await holdSitting(null);
  },
});

async function madePieces({ key, paper }: DemoSitting, { piece }: Writing) {
  const butt = paper === "short" ? undefined : await piece(`${key}-plate`);
  const fillet = paper === "house" ? undefined : await piece(`${key}-fillet`);
  return sourceOf({ ...(butt && { butt }), ...(fillet && { fillet }) });
}

interface Moment {
  readonly at: Date;
  readonly act: (at: Date) => Promise<unknown>;
}

/** Everything that happens in a sitting, in the order of time; what has happened already is left out, or refused and passed over. */
function momentsOf(plan: DemoSitting, stored: StoredSitting, tutorName: string): readonly Moment[] {
  const { sitting: kept, runs } = stored;
  const { id, paper } = kept;
  const { ends, at: begin } = plan;
  const by = async (signInName: string, at: Date) => callerAt(await personOf(signInName), at);
  const tutor = (at: Date) => by(tutorName, at);
  const over = ["is-closed", "is-released", "is-void", "is-paused", "already-begun"];
  const all: Moment[] = [
    { at: minutesAfter(begin, -12), act: async (at) => done(openSitting(await tutor(at), id), ...over) },
    { at: begin, act: async (at) => done(beginSitting(await tutor(at), id), ...over) },
  ];
  for (const learner of plan.demoClass.learners) {
    if (plan.absent?.includes(learner.signInName)) continue;
    all.push(...momentsOfLearner(plan, stored, learner, by));
  }
  const runOf = (signInName: string, section: Section) => {
    const learner = plan.demoClass.learners.find((one) => one.signInName === signInName);
    return runs.find(({ run, learnerName }) => learnerName === learner?.name && run.section === section)?.run;
  };
  const { extra, voided } = plan;
  if (extra) {
    const act = async (at: Date) => {
      const run = runOf(extra.signInName, paper.sections[0].section);
      const { minutes, reason } = extra;
      if (!run || run.addedMinutes.length > 0) return;
      await done(addTime(await tutor(at), run.id, { minutes, reason }), ...over, ...SHUT);
    };
    all.push({ at: minutesAfter(begin, 16.5), act });
  }
  const last = minutesAfter(begin, longest(paper));
  const closing = ends.how === "paused" || ends.how === "void" ? minutesAfter(begin, ends.after) : last;
  const until = all.filter(({ at }) => at < closing);
  if (voided) {
    const act = async (at: Date) => {
      const run = runOf(voided.signInName, voided.section);
      if (run) await done(voidRun(await tutor(at), run.id, { reason: voided.reason }), ...over, "void");
    };
    until.push({ at: minutesAfter(closing, -1), act });
  }
  until.push({
    at: closing,
    act: async (at) => {
      if (ends.how === "void") return done(voidSitting(await tutor(at), id, { reason: ends.reason }), ...over);
      if (ends.how === "paused") return done(pauseSitting(await tutor(at), id), ...over);
      return done(closeSitting(await tutor(at), id), ...over);
    },
  });
  if (ends.how === "released") {
    until.push({
      at: minutesAfter(closing, 95),
      act: async (at) => done(releaseSitting(await tutor(at), id), ...over),
    });
  }
  return until.sort((a, b) => a.at.getTime() - b.at.getTime());
}

/** Refusals that say that a section takes nothing any more. */
const SHUT = ["time-is-up", "closed-by-tutor", "handed-in", "void", "not-started", "no-such-run"];

/** Longer than anybody has for the whole paper, minutes. */
const longest = ({ sections, breakMinutes }: Paper): number =>
  sections.reduce((sum, { minutes }) => sum + 1.5 * minutes, 0) + breakMinutes * (sections.length - 1) + 25;

type By = (signInName: string, at: Date) => Promise<ReturnType<typeof callerAt>>;

function momentsOfLearner(
  plan: DemoSitting,
  { sitting: { id, paper }, runs }: StoredSitting,
  learner: DemoLearner,
  by: By,
): Moment[] {
  const { signInName, factor, name } = learner;
  const random = demoStream(`${signInName}/${plan.key}/times`);
  const own = runs.filter(({ learnerName }) => learnerName === name);
  if (own.length === 0) return [];
  const nobody = sourceOf({});
  const moments: Moment[] = [
    {
      at: minutesAfter(plan.at, -random.uniform(1, 10)),
      act: async (at) => done(enterSitting(await by(signInName, at), id, nobody), "not-expected"),
    },
  ];
  let start = random.uniform(0.5, 4);
  for (const { section, minutes } of paper.sections) {
    const run = own.find((one) => one.run.section === section);
    if (!run) continue;
    const isSlow = plan.slow?.includes(signInName) && section === paper.sections[0].section;
    const takes = minutes * factor * random.uniform(0.62, 0.93);
    moments.push(...momentsOfRun(plan, run, learner, { start, takes, isSlow: isSlow ?? false }, by));
    start += (isSlow ? minutes * factor : takes) + paper.breakMinutes * random.uniform(0.3, 1) + 1;
  }
  return moments;
}

interface Pace {
  /** Minutes after the beginning. */
  readonly start: number;
  readonly takes: number;
  /** Saves, and never hands in. */
  readonly isSlow: boolean;
}

function momentsOfRun(
  plan: DemoSitting,
  { run, practiceId }: StoredRun,
  learner: DemoLearner,
  { start, takes, isSlow }: Pace,
  by: By,
): Moment[] {
  if (run.closedAt !== null) return [];
  const { signInName } = learner;
  const work = `${plan.key}/${run.section}`;
  const after = (share: number) => minutesAfter(plan.at, start + share * takes);
  /** What goes with every version: its number, the window and when it was made. */
  const version = (sequence: number, at: Date) => ({
    sequence,
    window: { id: WINDOW, base: sequence - 1 },
    madeAt: at.toISOString(),
  });
  const written = async () => {
    const practice = await readPractice(practiceId);
    if (!practice) throw new Error(`the practice of ${work} is gone`);
    return { practice, report: await reportOf(practice, learner, { beganAt: plan.beganAt, at: plan.at, work }) };
  };
  const gone = ["is-closed", "is-void", ...SHUT];
  const moments: Moment[] = [
    {
      at: after(0),
      act: async (at) => done(startSection(await by(signInName, at), run.id, { windowId: WINDOW }), ...gone),
    },
    {
      at: after(0.45),
      act: async (at) => {
        const { practice, report } = await written();
        if (practice.sequence > 0) return;
        const save = { ...version(1, at), report: halfOf(report) };
        await done(saveReport(await by(signInName, at), practiceId, save), ...gone);
      },
    },
  ];
  if (isSlow) return moments;
  return [
    ...moments,
    {
      at: after(0.85),
      act: async (at) => {
        const { practice, report } = await written();
        if (practice.reportClosedAt !== null) return;
        const last = { ...version(practice.sequence + 1, at), report };
        await done(closeReport(await by(signInName, at), practiceId, last), ...gone);
      },
    },
    {
      at: after(1),
      act: async (at) => {
        const { practice, report } = await written();
        const whole = await withAnswers(practiceId, report, learner, work);
        const last = { ...version(practice.sequence + 1, at), report: whole };
        await done(handIn(await by(signInName, at), practiceId, last), ...gone);
      },
    },
  ];
}

/** When a sitting is planned: some working days ahead. */
export const plannedOn = (openedAt: Date, before: number): Date => workday(openedAt, before + 3, "13:10");
