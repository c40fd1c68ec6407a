import { z } from "zod";
import { addTimeSchema, type SittingEvent, voidSchema } from "@/lib/sittings";
import type { AuditEntry } from "@/prisma/stores/audit";
import { readSitting } from "@/prisma/stores/sittings";
import type { Actor, Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { problemsByField } from "../input-problem";
import { requireOwnSitting } from "../permissions";
import { refuse } from "../refusal";
import { auditEntry } from "../sittings/audit-entry";
import { changeSitting, runStep, sittingStep } from "../sittings/change-sitting";
import { markClosedRuns } from "../sittings/mark-closed-runs";
import { renewFailed } from "../sittings/renew-failed";

/** Lets learners come in; nothing starts yet. */
export const openSitting = (caller: Caller, id: string) => govern(caller, id, { kind: "open" });
/** From now on learners may start their sections. */
export const beginSitting = (caller: Caller, id: string) => govern(caller, id, { kind: "begin" });
/** Stops every clock. */
export const pauseSitting = (caller: Caller, id: string) => govern(caller, id, { kind: "pause" });
/** Lets the clocks go on. */
export const resumeSitting = (caller: Caller, id: string) => govern(caller, id, { kind: "resume" });
/** Closes every section with its last save. */
export const closeSitting = (caller: Caller, id: string) => govern(caller, id, { kind: "close" });

/** Shows learners their marks, for good. Everything is marked before. */
export async function releaseSitting(caller: Caller, id: string) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  await markClosedRuns(id, caller.clock());
  return govern(caller, id, { kind: "release" });
}

const planSchema = z.strictObject({
  plannedAt: z.iso.datetime({
    offset: true,
    error: "plannedAt: a day and a time with its zone, for example 2026-03-02T09:00:00Z",
  }),
});

/** Sets another time for a sitting that has not begun. */
export async function moveSitting(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const parsed = planSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { plannedAt } = parsed.data;
  return govern(caller, id, { kind: "plan", plannedAt: new Date(plannedAt) }, { plannedAt });
}

/** Makes the whole sitting count for nothing. What was written stays. */
export async function voidSitting(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const parsed = voidSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { reason } = parsed.data;
  return govern(caller, id, { kind: "void", by: own.actor.id, reason }, { reason });
}

/** Gives everybody minutes on top, in sections that are open or still to come. */
export async function addTimeToAll(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const parsed = addTimeSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const now = caller.clock();
  const event = { kind: "add-time", by: own.actor.id, ...parsed.data } as const;
  const changed = await changeSitting(id, now, (whole) => {
    const { state } = whole.sitting;
    if (state === "void") return { next: whole, code: "is-void" };
    if (state === "released") return { next: whole, code: "is-released" };
    if (state === "closed") return { next: whole, code: "is-closed" };
    const next = whole.runs.reduce((now_, { id }) => {
      const step = runStep(now_, id, event, now);
      return step.code ? now_ : step.next;
    }, whole);
    const audit = auditEntry(own.actor, now, "add-time", { kind: "sitting", id }, parsed.data);
    return { next, ...(next !== whole && { audit }) };
  });
  return changed.ok ? ({ ok: true } as const) : changed;
}

/** Orders other pieces for those that could not be made. */
export async function renewPieces(caller: Caller, id: string, specimens: SpecimenSource) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const { state } = stored.sitting;
  return { ok: true, renewed: await renewFailed(stored, stored.runs, specimens, state === "running") } as const;
}

/** Takes a tutor's step of a whole sitting; one that changes nothing is accepted and leaves no entry. */
async function govern(caller: Caller, id: string, event: SittingEvent, details: EntryDetails = {}) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const now = caller.clock();
  const changed = await changeSitting(id, now, (whole) => {
    const step = sittingStep(whole, event, now);
    const isChanged = !step.code && step.next !== whole;
    return { ...step, ...(isChanged && { audit: entryOf(own.actor, now, event, id, details) }) };
  });
  return changed.ok ? ({ ok: true } as const) : changed;
}

type EntryDetails = NonNullable<Parameters<typeof auditEntry>[4]>;

const entryOf = (actor: Actor, now: Date, { kind }: SittingEvent, id: string, details: EntryDetails): AuditEntry =>
  auditEntry(actor, now, kind === "plan" ? "move" : kind, { kind: "sitting", id }, details);
