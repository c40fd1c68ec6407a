import { addTimeSchema, changeFactorSchema, type RunEvent, reopenSchema, voidSchema } from "@/lib/sittings";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { requireOwnSitting, requireRunOfClass } from "../permissions";
import { refuse } from "../refusal";
import { auditEntry } from "../sittings/audit-entry";
import { type Change, changeSitting, runStep, sittingStep } from "../sittings/change-sitting";
import { sectionsElsewhere } from "../sittings/closed-book";

/** Stops the clock of one learner's section. */
export const pauseRun = (caller: Caller, runId: string) => govern(caller, runId, { kind: "pause" });
/** Lets it go on. */
export const resumeRun = (caller: Caller, runId: string) => govern(caller, runId, { kind: "resume" });
/** Closes one section with its last save. */
export const closeRun = (caller: Caller, runId: string) => govern(caller, runId, { kind: "close" });

/** Gives one learner minutes on top in a section. */
export async function addTime(caller: Caller, runId: string, input: unknown) {
  const own = await requireRunOfClass(caller, runId);
  if (!own.ok) return own;
  const parsed = addTimeSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  return govern(caller, runId, { kind: "add-time", by: own.actor.id, ...parsed.data }, parsed.data);
}

/** Makes one section count for nothing. What was written stays. */
export async function voidRun(caller: Caller, runId: string, input: unknown) {
  const own = await requireRunOfClass(caller, runId);
  if (!own.ok) return own;
  const parsed = voidSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  return govern(caller, runId, { kind: "void", by: own.actor.id, ...parsed.data }, parsed.data);
}

/** Opens a closed section again with so many minutes from now; a closed sitting runs again for it alone. */
export async function reopenRun(caller: Caller, runId: string, input: unknown) {
  const own = await requireRunOfClass(caller, runId);
  if (!own.ok) return own;
  const parsed = reopenSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const now = caller.clock();
  const event = { kind: "re-open", runId, by: own.actor.id, ...parsed.data } as const;
  const changed = await changeSitting(own.sittingId, now, async (whole): Promise<Change> => {
    const step = sittingStep(whole, event, now);
    const run = whole.runs.find(({ id }) => id === runId);
    if (step.code || !run) return step;
    const { isOpen, opens } = await sectionsElsewhere(run.userId, own.sittingId, now);
    if (isOpen) return { next: whole, code: "learner-elsewhere" };
    return { ...step, opens, audit: auditEntry(own.actor, now, "re-open", { kind: "run", id: runId }, parsed.data) };
  });
  return changed.ok ? ({ ok: true } as const) : changed;
}

/** Changes the extra time of one learner, in every section of theirs that is open or still to come. */
export async function changeFactor(caller: Caller, sittingId: string, learnerId: string, input: unknown) {
  const own = await requireOwnSitting(caller, sittingId);
  if (!own.ok) return own;
  const parsed = changeFactorSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const now = caller.clock();
  const event = { kind: "change-factor", by: own.actor.id, ...parsed.data } as const;
  const changed = await changeSitting(sittingId, now, (whole): Change => {
    const runs = whole.runs.filter(({ userId }) => userId === learnerId);
    if (runs.length === 0) return { next: whole, code: "no-such-run" };
    const isToCome = runs.filter(({ state }) => ["waiting", "running", "paused"].includes(state));
    let next = whole;
    // all of them or none: whoever has the time has it in the whole paper
    for (const { id } of isToCome.length > 0 ? isToCome : runs) {
      const step = runStep(next, id, event, now);
      if (step.code) return { next: whole, code: step.code };
      next = step.next;
    }
    const subject = { kind: "sitting", id: sittingId } as const;
    const audit = auditEntry(own.actor, now, "change-factor", subject, { ...parsed.data, learnerId });
    return { next, concernsOthers: true, ...(next !== whole && { audit }) };
  });
  return changed.ok ? ({ ok: true } as const) : changed;
}

/** Takes a tutor's step of one run; one that changes nothing is accepted and leaves no entry. */
async function govern(
  caller: Caller,
  runId: string,
  event: RunEvent,
  details: NonNullable<Parameters<typeof auditEntry>[4]> = {},
) {
  const own = await requireRunOfClass(caller, runId);
  if (!own.ok) return own;
  const now = caller.clock();
  const changed = await changeSitting(own.sittingId, now, (whole) => {
    const step = runStep(whole, runId, event, now);
    const isChanged = !step.code && step.next !== whole;
    const audit = auditEntry(own.actor, now, event.kind, { kind: "run", id: runId }, details);
    return { ...step, ...(isChanged && { audit }) };
  });
  return changed.ok ? ({ ok: true } as const) : changed;
}
