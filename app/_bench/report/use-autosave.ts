"use client";
import { useCallback, useEffect, useReducer, useRef, useState } from "react";
import { isUnsent, type Saving, save, startSaving, waitBeforeSending } from "@/lib/bench";
import { type Report, reportSchema } from "@/lib/report";
import { type KeptReport, keepReport, type NumberedReport, newWindowId, readKeptReport } from "./kept-report";
import { sendReport } from "./send-report";

export interface Autosave {
  readonly saving: Saving;
  /** The version another window has saved, where that is why the server refused. */
  readonly newer: NumberedReport | null;
  /** What is written now, as it is to be sent. */
  latest(): KeptReport;
  /** Call it with every changed report. */
  edited(report: Report): void;
  /** Tries at once. */
  sendNow(): void;
  /** Goes on from the other window's version. */
  takeNewer(): Report | null;
  /** Handed in: nothing is sent any more. */
  close(): void;
  /** Goes on from what is here and lets it replace the other window's version. */
  keepThis(): void;
}

/** Refusals that no further edit in this window can mend. */
const LASTING: ReadonlySet<string> = new Set(["stale-save", "already-handed-in", "no-such-practice"]);

/** What to start writing from: the server's report, or a later one that this browser kept. */
export function latestReport(id: string, server: NumberedReport): KeptReport {
  const kept = readKeptReport(id);
  if (kept && kept.sequence > server.sequence) return kept;
  return { ...server, window: { id: newWindowId(), base: server.sequence } };
}

/** Keeps every edit in the browser at once and sends it to the server after a rest, again and again until it is there. */
export function useAutosave(id: string, server: number, start: KeptReport): Autosave {
  const [saving, tell] = useReducer(save, startSaving(server, start.sequence));
  const [newer, setNewer] = useState<NumberedReport | null>(null);
  const report = useRef(start.report);
  const sequence = useRef(start.sequence);
  const base = useRef(start.window.base);
  const windowId = start.window.id;

  const latest = useCallback(
    (): KeptReport => ({
      sequence: sequence.current,
      report: report.current,
      window: { id: windowId, base: base.current },
    }),
    [windowId],
  );

  const send = useCallback(async () => {
    tell({ kind: "sending" });
    const sent = latest();
    const outcome = await sendReport(`/api/practice/${id}/report`, "PUT", sent);
    switch (outcome.kind) {
      case "ok":
        base.current = Math.max(base.current, sent.sequence);
        return tell({ kind: "confirmed", sequence: sent.sequence, savedAt: outcome.savedAt });
      case "failed":
        return tell({ kind: "failed" });
      case "refused":
        setNewer(outcome.newer);
        return tell({ kind: "refused", reason: outcome.message, isLasting: LASTING.has(outcome.code) });
    }
  }, [id, latest]);

  const { newest } = saving;
  const wait = waitBeforeSending(saving);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each edit starts the rest anew
  useEffect(() => {
    if (wait === null) return;
    const timer = setTimeout(send, wait);
    return () => clearTimeout(timer);
  }, [wait, newest, send]);

  useEffect(() => {
    const warn = (event: BeforeUnloadEvent) => {
      if (isUnsent(saving) && !saving.refusal) event.preventDefault();
    };
    const retry = () => {
      if (waitBeforeSending(saving) !== null) void send();
    };
    window.addEventListener("beforeunload", warn);
    window.addEventListener("online", retry);
    return () => {
      window.removeEventListener("beforeunload", warn);
      window.removeEventListener("online", retry);
    };
  }, [saving, send]);

  const edited = useCallback(
    (next: Report) => {
      report.current = next;
      sequence.current += 1;
      keepReport(id, latest());
      tell({ kind: "edited", sequence: sequence.current });
    },
    [id, latest],
  );

  const goOnFrom = (version: number) => {
    setNewer(null);
    sequence.current = version;
    base.current = version;
    tell({ kind: "restarted", sequence: version });
  };

  return {
    saving,
    newer,
    latest,
    edited,
    sendNow: () => void send(),
    takeNewer: () => {
      const taken = newer && reportSchema.safeParse(newer.report);
      if (!newer || !taken?.success) return null;
      goOnFrom(newer.sequence);
      report.current = taken.data;
      keepReport(id, latest());
      return taken.data;
    },
    close: () => tell({ kind: "restarted", sequence: sequence.current }),
    keepThis: () => {
      if (!newer) return;
      goOnFrom(newer.sequence);
      edited(report.current);
    },
  };
}
