import { z } from "zod";
import { answerSave, type Practice } from "@/lib/practice";
import { REPORT_SCHEMAS, type Report } from "@/lib/report";
import { JOINT_OF } from "@/lib/results";
import type { JointKind } from "@/lib/weld";
import { readQuestions, saveReport as storeReport } from "@/prisma/stores/report-saves";
import type { Caller } from "../caller";
import { describeProblem, type InputProblem } from "../input-problem";
import { requireOwnPractice } from "../permissions";
import { refuse } from "../refusal";
import { saveInRun } from "../sittings/save-in-run";

/** A window names itself, anew whenever it is opened. */
export const windowIdSchema = z.string().regex(/^[a-z0-9]{8,40}$/, "8 to 40 small letters and digits");
export const windowSchema = z.strictObject({ id: windowIdSchema, base: z.number().int().min(0) });

const saveSchemaOf = (kind: JointKind) =>
  z.strictObject({
    sequence: z.number().int().min(0),
    report: REPORT_SCHEMAS[kind],
    window: windowSchema.optional(),
    /** When it was written, by the server's clock as the browser knows it; a sitting asks. */
    madeAt: z.iso.datetime().optional(),
  });
/** What a report may say depends on the piece. */
export const SAVE_SCHEMAS = { butt: saveSchemaOf("butt"), fillet: saveSchemaOf("fillet") };

/** Only one window may write in a sitting, so a save says which one it is. */
export const WINDOW_MISSING = { path: "window", wanted: "the window that writes, in a sitting" };

/** When something was done; nobody's clock is believed to be ahead of the server's. */
export const madeAtOf = (text: string | undefined, now: Date): Date =>
  text === undefined ? now : new Date(Math.min(Date.parse(text), now.getTime()));

/** What is kept, for the window that does not know it. */
export const keptVersion = ({ sequence, report, savedAt }: Practice) => ({ sequence, report, savedAt });

/** An answer to what was never asked; null where there is none. */
async function strayAnswer({ id, reportClosedAt }: Practice, { answers }: Report): Promise<InputProblem | null> {
  const answered = Object.keys(answers);
  if (reportClosedAt === null || answered.length === 0) return null;
  const asked = (await readQuestions(id)).map((question) => question.id);
  const stray = answered.find((one) => !asked.includes(one));
  if (stray === undefined) return null;
  return { path: `report.answers.${stray}`, wanted: `one of the questions asked: ${asked.join(", ")}` };
}

/**
 * Keeps a version of the report. Versions are numbered by the window that writes them: a newer number is kept, the very
 * same save again is accepted once more; an older one, and one from a window that has not seen what another window saved
 * meanwhile, is refused together with the version that is kept. Once the report is closed only its answers may change.
 * In a sitting the clock and the one live window decide first.
 */
export async function saveReport(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const parsed = SAVE_SCHEMAS[JOINT_OF[own.practice.section]].safeParse(input);
  if (!parsed.success) return refuse("malformed-report", { problem: describeProblem(parsed.error) });
  const { sequence, report, window, madeAt } = parsed.data;

  const problem = await strayAnswer(own.practice, report);
  if (problem) return refuse("malformed-report", { problem });

  const savedAt = caller.clock();
  const { reportClosedAt, runId, userId } = own.practice;
  if (runId !== null) {
    if (!window) return refuse("malformed-report", { problem: WINDOW_MISSING });
    return saveInRun(runId, userId, { sequence, report, window, madeAt: madeAtOf(madeAt, savedAt) }, savedAt);
  }
  if (answerSave(own.practice, sequence, report, window) === "accept") {
    if (await storeReport(id, { sequence, report, savedAt, window, reportClosedAt }))
      return { ok: true, sequence, savedAt } as const;
  }
  // what is stored may have changed since it was read
  const now = await requireOwnPractice(caller, id);
  if (!now.ok) return now;
  switch (answerSave(now.practice, sequence, report, window)) {
    case "repeat":
      return { ok: true, sequence, savedAt: now.practice.savedAt ?? savedAt } as const;
    case "handed-in":
      return refuse("already-handed-in");
    case "report-open":
      return refuse("report-open");
    case "report-closed":
      return refuse("report-closed", keptVersion(now.practice));
    default:
      return refuse("stale-save", keptVersion(now.practice));
  }
}
