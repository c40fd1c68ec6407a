"use client";
import { useCallback, useEffect, useState } from "react";
import type { AskedTask, EyeAnswer, EyeRoundView, ToldTask } from "@/lib/eye";

/** What is on the screen: a task that is asked or told, or how the round went. */
export interface EyeRoundHandling {
  readonly round: EyeRoundView;
  /** The task on the screen; null while there is none to show. */
  readonly task: AskedTask | null;
  /** Null before it is answered. */
  readonly told: ToldTask | null;
  readonly isSending: boolean;
  /** What went wrong with the last thing that was sent, and what to do. */
  readonly problem: string | null;
  readonly answer: (answer: EyeAnswer) => void;
  readonly goOn: () => void;
  /** Ends the round where it stands. */
  readonly finish: () => Promise<void>;
}

/** How often it is asked whether there is a piece to cut windows from, ms. */
const ASK_AGAIN_MS = 2000;

interface Shown {
  readonly task: AskedTask | null;
  readonly told: ToldTask | null;
}

/** A round with the server: it has the truth, so every answer goes there and comes back judged. */
export function useEyeRound(first: EyeRoundView): EyeRoundHandling {
  const [round, setRound] = useState(first);
  const [shown, setShown] = useState<Shown>({ task: first.tasks[0] ?? null, told: null });
  const [isSending, setIsSending] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { id, stage } = round;

  const take = useCallback((next: EyeRoundView) => {
    setRound(next);
    setShown({ task: next.tasks[0] ?? null, told: null });
  }, []);

  useEffect(() => {
    if (stage !== "waiting") return;
    const timer = setInterval(async () => {
      const got = await ask<{ round: EyeRoundView }>(`/api/eye/rounds/${id}`, "GET");
      if (got.ok && got.value.round.stage !== "waiting") take(got.value.round);
    }, ASK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [id, stage, take]);

  const send = async <Value>(path: string, body: object, taken: (value: Value) => void) => {
    if (isSending) return;
    setIsSending(true);
    setProblem(null);
    const got = await ask<Value>(path, "POST", body);
    setIsSending(false);
    if (got.ok) taken(got.value);
    else setProblem(got.message);
  };

  return {
    round,
    ...shown,
    isSending,
    problem,
    answer: (answer) => {
      const { task } = shown;
      if (!task || shown.told) return;
      void send<{ told: ToldTask; round: EyeRoundView }>(`/api/eye/tasks/${task.id}/answer`, answer, (value) => {
        // the time of a burst may have run out meanwhile
        setRound((now) => (now.stage === "done" ? { ...value.round, stage: "done", tasks: [] } : value.round));
        setShown((now) => (now.task ? { task, told: value.told } : now));
      });
    },
    goOn: () => take(round),
    finish: async () => {
      // beside an answer that is on its way
      const got = await ask<{ round: EyeRoundView }>(`/api/eye/rounds/${id}/finish`, "POST", {});
      if (got.ok) take(got.value.round);
      else setProblem(got.message);
    },
  };
}

type Got<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly message: string };

async function ask<Value>(path: string, method: "GET" | "POST", body?: object): Promise<Got<Value>> {
  try {
    const response = await fetch(path, {
      method,
      ...(body && { headers: { "content-type": "application/json" }, body: JSON.stringify(body) }),
    });
    const read = await response.json();
    return response.ok ? { ok: true, value: read } : { ok: false, message: read.message };
  } catch {
    return {
      ok: false,
      message: "The answer did not reach the server, and nothing of it is kept yet. It is still here: send it again.",
    };
  }
}
