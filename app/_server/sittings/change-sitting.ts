import type { Question } from "@/lib/questions";
import {
  type RunEvent,
  type RunRefusal,
  type SittingEvent,
  type SittingWithRuns,
  stepRun,
  stepSitting,
  whyShut,
} from "@/lib/sittings";
import type { AuditEntry } from "@/prisma/stores/audit";
import { type NewRun, type SittingChange, storeChange } from "@/prisma/stores/sitting-changes";
import { readSitting, type StoredSitting } from "@/prisma/stores/sittings";
import { type Refusal, type RefusalCode, refuse } from "../refusal";

/** What a step makes of a sitting, and what is written with it. */
export interface Change {
  readonly next: SittingWithRuns;
  /** Why it was refused; what the clock has closed is kept all the same. */
  readonly code?: RefusalCode;
  readonly audit?: AuditEntry;
  readonly newRuns?: readonly NewRun[];
  /** What is asked once a report is closed. */
  readonly questions?: readonly Question[];
  /** As with a start: what becomes of other runs depends on it. */
  readonly concernsOthers?: boolean;
  /** With a section that opens: what of its learner stood as open in other sittings. */
  readonly opens?: SittingChange["opens"];
}

type Changed = { readonly ok: true; readonly stored: StoredSitting; readonly next: SittingWithRuns };

/** A step is tried again when another one came in between; with a whole class handing in at once that takes a few tries. */
const TRIES = 60;

/**
 * Takes a step of a stored sitting. The clock comes first; `decide` sees the sitting as it is by then, and is asked again
 * when another step came in between. Only the report of `withReportOf` is filled in.
 */
export async function changeSitting(
  id: string,
  now: Date,
  decide: (whole: SittingWithRuns, stored: StoredSitting) => Change | Promise<Change>,
  withReportOf?: string,
): Promise<Changed | Refusal> {
  for (let tries = 0; tries < TRIES; tries++) {
    const stored = await readSitting(id, withReportOf);
    if (!stored) return refuse("no-such-sitting");
    const change = await decide(byClock(stored, now), stored);
    const { next, code, audit = null, newRuns = [], questions = [], concernsOthers = false, opens } = change;
    const isStored = await storeChange({
      before: stored,
      next,
      newRuns: code ? [] : newRuns,
      audit: code ? null : audit,
      questions,
      concernsOthers: concernsOthers && !code,
      ...(opens && !code && { opens }),
    });
    if (isStored) return code ? refuse(code) : { ok: true, stored, next };
    await new Promise((resolve) => setTimeout(resolve, 2 + Math.random() * 10 * Math.min(tries + 1, 5)));
  }
  throw new Error(`sitting ${id} was changed by others ${TRIES} times in a row`);
}

/** A stored sitting as the clock has it. */
export function byClock(stored: StoredSitting, now: Date): SittingWithRuns {
  const whole = { sitting: stored.sitting, runs: stored.runs.map(({ run }) => run) };
  return stepSitting(whole, { kind: "tick" }, now).next;
}

/** The step of a sitting as a change. */
export function sittingStep(whole: SittingWithRuns, event: SittingEvent, now: Date): Pick<Change, "next" | "code"> {
  const step = stepSitting(whole, event, now);
  return step.ok ? { next: step.next } : { next: step.next, code: step.code };
}

/** The step of one run as a change of its sitting. */
export function runStep(
  whole: SittingWithRuns,
  runId: string,
  event: RunEvent,
  now: Date,
): Pick<Change, "next" | "code"> {
  const run = whole.runs.find(({ id }) => id === runId);
  if (!run) return { next: whole, code: "no-such-run" };
  const step = stepRun(run, event, whole, now);
  const replaced =
    step.next === run ? whole : { ...whole, runs: whole.runs.map((one) => (one === run ? step.next : one)) };
  // less time for one may bring the end of the whole nearer
  const next = stepSitting(replaced, { kind: "tick" }, now).next;
  return step.ok ? { next } : { next, code: step.code };
}

/** Why a run that the clock or the tutor closed takes no late packet any more, whenever it came in: it is marked. */
export function whyMarked({ runs }: StoredSitting, runId: string): RunRefusal | null {
  const stored = runs.find(({ run }) => run.id === runId);
  return stored?.isMarked && stored.run.state === "expired" ? whyShut(stored.run) : null;
}
