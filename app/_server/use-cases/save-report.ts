import { z } from "zod";
import { answerSave, type Practice } from "@/lib/practice";
import { REPORT_SCHEMAS, type Report } from "@/lib/report";
import { JOINT_OF } from "@/lib/results";
import type { JointKind } from "@/lib/weld";
import { readQuestions, saveReport as storeReport } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import { describeProblem, type InputProblem } from "../input-problem";
import { requireOwnPractice } from "../permissions";
import { refuse } from "../refusal";

const windowSchema = z.strictObject({ id: z.string().regex(/^[a-z0-9]{8,40}$/), base: z.number().int().min(0) });

const saveSchemaOf = (kind: JointKind) =>
  z.strictObject({
    sequence: z.number().int().min(0),
    report: REPORT_SCHEMAS[kind],
    window: windowSchema.optional(),
  });
/** What a report may say depends on the piece. */
const SAVE_SCHEMAS = { butt: saveSchemaOf("butt"), fillet: saveSchemaOf("fillet") };

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
 */
export async function saveReport(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const parsed = SAVE_SCHEMAS[JOINT_OF[own.practice.section]].safeParse(input);
  if (!parsed.success) return refuse("malformed-report", { problem: describeProblem(parsed.error) });
  const { sequence, report, window } = parsed.data;

  const problem = await strayAnswer(own.practice, report);
  if (problem) return refuse("malformed-report", { problem });

  const savedAt = caller.clock();
  const { reportClosedAt } = own.practice;
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
