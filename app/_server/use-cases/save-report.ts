import { z } from "zod";
import { answerSave, type Practice } from "@/lib/practice";
import { REPORT_SCHEMAS } from "@/lib/report";
import { JOINT_OF } from "@/lib/results";
import type { JointKind } from "@/lib/weld";
import { saveReport as storeReport } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import { describeProblem } from "../input-problem";
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

/**
 * Keeps a version of the report. Versions are numbered by the window that writes them: a newer number is kept, the very
 * same save again is accepted once more; an older one, and one from a window that has not seen what another window saved
 * meanwhile, is refused together with the version that is kept.
 */
export async function saveReport(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const parsed = SAVE_SCHEMAS[JOINT_OF[own.practice.section]].safeParse(input);
  if (!parsed.success) return refuse("malformed-report", { problem: describeProblem(parsed.error) });
  const { sequence, report, window } = parsed.data;

  const savedAt = caller.clock();
  if (answerSave(own.practice, sequence, report, window) === "accept") {
    if (await storeReport(id, { sequence, report, savedAt, window })) return { ok: true, sequence, savedAt } as const;
  }
  // what is stored may have changed since it was read
  const now = await requireOwnPractice(caller, id);
  if (!now.ok) return now;
  switch (answerSave(now.practice, sequence, report, window)) {
    case "repeat":
      return { ok: true, sequence, savedAt: now.practice.savedAt ?? savedAt } as const;
    case "handed-in":
      return refuse("already-handed-in");
    default:
      return refuse("stale-save", keptVersion(now.practice));
  }
}
