"use client";
import { useState } from "react";
import { beginRound, type Drill, type DrillAnswer, type DrillGauge, type Round, takeRound, toKeep } from "@/lib/drills";

/** Whether a finished round has reached the server. */
export type Keeping = "not-yet" | "sending" | "kept" | "failed";

export interface RoundHandling {
  /** Null until the gauges are chosen. */
  readonly round: Round | null;
  readonly keeping: Keeping;
  readonly begin: (gauges: readonly DrillGauge[]) => void;
  readonly answer: (answer: DrillAnswer) => void;
  readonly goOn: () => void;
  /** Back to choosing the gauges. */
  readonly chooseAgain: () => void;
  readonly keepAgain: () => void;
}

/** Rounds of a drill, one after the other; each draws from a stream of its own and is sent when it is done. */
export function useRound(drill: Drill, firstName: string): RoundHandling {
  const [round, setRound] = useState<Round | null>(null);
  const [taken, setTaken] = useState(0);
  const [keeping, setKeeping] = useState<Keeping>("not-yet");

  const keep = async (done: Round) => {
    setKeeping("sending");
    setKeeping((await sendRound(done)) ? "kept" : "failed");
  };
  return {
    round,
    keeping,
    begin: (gauges) => {
      setRound(beginRound(drill, `${firstName}/${taken}`, gauges, performance.now()));
      setTaken(taken + 1);
      setKeeping("not-yet");
    },
    answer: (answer) => round && setRound(takeRound(round, { kind: "answer", answer, at: performance.now() })),
    goOn: () => {
      if (!round) return;
      const next = takeRound(round, { kind: "go-on" });
      setRound(next);
      if (next.stage === "done" && round.stage !== "done") void keep(next);
    },
    chooseAgain: () => setRound(null),
    keepAgain: () => round && void keep(round),
  };
}

async function sendRound(round: Round): Promise<boolean> {
  try {
    const response = await fetch("/api/drills", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(toKeep(round)),
    });
    return response.ok;
  } catch {
    return false;
  }
}
