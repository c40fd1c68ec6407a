import { z } from "zod";
import { JOINT_OF, type Section } from "@/lib/results";
import { describeProblem } from "../input-problem";
import { type Refusal, refuse } from "../refusal";
import type { HandInOfRun } from "../sittings/hand-in-run";
import { madeAtOf, SAVE_SCHEMAS, WINDOW_MISSING, windowSchema } from "./save-report";

/** Goes by what was saved last. */
const withoutReport = z.strictObject({ window: windowSchema, madeAt: z.iso.datetime().optional() });

/** What comes with a hand-in, or with the closing of a report, in a sitting: the window, and the last version if it was not saved. */
export function readLastVersion(
  input: unknown,
  section: Section,
  now: Date,
): { readonly ok: true; readonly last: HandInOfRun } | Refusal {
  const hasReport = typeof input === "object" && input !== null && "report" in input;
  const schema = hasReport ? SAVE_SCHEMAS[JOINT_OF[section]] : withoutReport;
  const parsed = schema.safeParse(input);
  if (!parsed.success) return refuse("malformed-report", { problem: describeProblem(parsed.error) });
  const { window, madeAt, ...last } = parsed.data;
  if (!window) return refuse("malformed-report", { problem: WINDOW_MISSING });
  return { ok: true, last: { ...last, window, madeAt: madeAtOf(madeAt, now) } };
}
