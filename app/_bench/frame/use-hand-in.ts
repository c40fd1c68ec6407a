"use client";
import { useState } from "react";
import type { Report } from "@/lib/report";
import { forgetKeptReport } from "../report/kept-report";
import { sendReport } from "../report/send-report";
import type { Autosave } from "../report/use-autosave";
import { forgetKeptCoverage } from "./kept-coverage";

/** It was handed in already: for practice, and in a sitting. */
const HANDED_IN: ReadonlySet<string> = new Set(["already-handed-in", "handed-in"]);

/** Handing in waits no longer for where somebody looked, ms. */
const TRAIL_PATIENCE_MS = 1000;

/** Hands in the report as it stands on the screen, then goes where the marks are. `sendTrail` sends what is not taken later. */
export function useHandIn(
  practiceId: string,
  report: Report,
  autosave: Autosave,
  marksUrl: string,
  sendTrail: () => Promise<void>,
) {
  const [isSending, setIsSending] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);

  const handIn = async () => {
    setIsSending(true);
    // a clean plate is a report as well, and every report that is sent has a number
    if (autosave.saving.newest === 0) autosave.edited(report);
    setProblem(null);
    // as it is now: the clock of a sitting does not wait for the trail
    const last = autosave.asOfNow();
    await Promise.race([sendTrail(), new Promise((resolve) => setTimeout(resolve, TRAIL_PATIENCE_MS))]);
    const outcome = await sendReport(`/api/practice/${practiceId}/hand-in`, "POST", last);
    if (outcome.kind === "ok" || (outcome.kind === "refused" && HANDED_IN.has(outcome.code))) {
      forgetKeptReport(practiceId);
      forgetKeptCoverage(practiceId);
      autosave.close();
      window.location.assign(marksUrl);
      return;
    }
    setIsSending(false);
    if (outcome.kind === "failed") {
      return setProblem(
        "No answer from the server, so nothing was handed in. Your report is kept; try again in a moment.",
      );
    }
    autosave.refused(outcome);
    setProblem(
      outcome.newer && outcome.code === "stale-save"
        ? "Nothing was handed in: another window has saved this report too. Go back and choose which of the two to use."
        : outcome.message,
    );
  };

  return { isSending, problem, handIn, forgetProblem: () => setProblem(null) };
}
