"use client";
import { useState } from "react";
import { z } from "zod";
import type { Report } from "@/lib/report";
import type { AskedQuestion } from "@/lib/results";
import { sendReport } from "../report/send-report";
import type { Autosave } from "../report/use-autosave";

const closedSchema = z.object({
  questions: z.array(
    z.object({ id: z.string(), stem: z.string(), options: z.tuple([z.string(), z.string(), z.string(), z.string()]) }),
  ),
});

/** Closes the report as it stands on the screen; `onClosed` is told what is asked next and the report as it was closed. */
export function useClosing(
  practiceId: string,
  report: Report,
  autosave: Autosave,
  onClosed: (questions: readonly AskedQuestion[], report: Report) => void,
) {
  const [isSending, setIsSending] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);

  const close = async () => {
    setIsSending(true);
    setProblem(null);
    // a clean piece is a report as well, and every report that is sent has a number
    if (autosave.saving.newest === 0) autosave.edited(report);
    const sent = autosave.asOfNow();
    const outcome = await sendReport(`/api/practice/${practiceId}/close-report`, "POST", sent);
    setIsSending(false);
    if (outcome.kind === "ok") {
      const { questions } = closedSchema.parse(outcome.answer);
      autosave.sent(sent.sequence, outcome.savedAt);
      return onClosed(questions, sent.report);
    }
    if (outcome.kind === "failed") {
      return setProblem(
        "No answer from the server, so the report is not closed yet. It is kept; try again in a moment.",
      );
    }
    autosave.refused(outcome);
    setProblem(
      outcome.newer && outcome.code === "stale-save"
        ? "Nothing was closed: another window has saved this report too. Go back and choose which of the two to use."
        : outcome.message,
    );
  };

  return { isSending, problem, close, forgetProblem: () => setProblem(null) };
}
