"use client";
import { type Dispatch, useCallback, useEffect, useReducer, useRef, useState } from "react";
import { type DrawnExtent, startWriting, type Writing, type WritingEvent, write } from "@/lib/bench";
import { newId } from "../report/kept-report";
import {
  type Autosave,
  type Conflict,
  isLeftOut,
  latestReport,
  type ServerReport,
  type SittingWay,
  unsentHere,
  useAutosave,
} from "../report/use-autosave";
import { type SatRun, type SittingRun, useSittingRun } from "../sitting/use-sitting-run";

export interface ReportWriting {
  readonly writing: Writing;
  readonly write: Dispatch<WritingEvent>;
  readonly autosave: Autosave;
  /** Writes a new row and opens it. */
  readonly add: (extent: DrawnExtent) => void;
  /** Goes on from the other window's version; undo brings this one's back. */
  readonly takeOther: () => void;
  /** Whether something that was written here came too late, since the report was closed elsewhere. */
  readonly isLeftOut: boolean;
  /** The section of a sitting that is being written; null for practice. */
  readonly sitting: SittingRun | null;
}

/** Where writing starts: with a choice, if this browser kept what another window has overtaken since. */
function beginning(practiceId: string, server: ServerReport, savedAt: string | null) {
  const unsent = unsentHere(practiceId, server);
  if (!unsent) return { start: latestReport(practiceId, server), conflict: null };
  const { sequence, report } = server;
  const conflict: Conflict = { kind: "newer", version: { sequence, report, savedAt } };
  return { start: { ...unsent, window: { id: newId(), base: unsent.window.base } }, conflict };
}

/** Ends after which the server takes for a few seconds what was written before. */
const TAKEN_LATE: ReadonlySet<string> = new Set(["time-is-up", "closed-by-tutor"]);

function wayOf({ run, window, now }: SittingRun): SittingWay {
  const { shut, isPaused, clock, closedAt } = run;
  return {
    isHeld: window !== "writes" || (shut === null ? isPaused : !TAKEN_LATE.has(shut)),
    isShut: shut !== null,
    endsAt: shut === null ? clock.deadline : closedAt,
    now,
  };
}

/** The report being written and its way to the server. */
export function useWriting(
  practiceId: string,
  server: ServerReport,
  savedAt: string | null,
  sat: SatRun | null,
): ReportWriting {
  const [isLate] = useState(() => isLeftOut(practiceId, server));
  const [{ start, conflict }] = useState(() => beginning(practiceId, server, savedAt));
  const [writing, dispatch] = useReducer(write, start.report, (report) => startWriting(report, server.isClosed));
  const sitting = useSittingRun(sat, start.window.id);
  const way = sitting && wayOf(sitting);
  const autosave = useAutosave(practiceId, server.sequence, start, { way, conflict, savedAt });
  const known = useRef(start.report);
  const { edited } = autosave;

  useEffect(() => {
    if (known.current === writing.report) return;
    known.current = writing.report;
    edited(writing.report);
  }, [writing.report, edited]);

  const add = useCallback((extent: DrawnExtent) => dispatch({ kind: "add", id: newId(), extent }), []);
  const takeOther = () => {
    const report = autosave.takeNewer();
    if (!report) return;
    known.current = report;
    dispatch({ kind: "replace", report });
  };

  return { writing, write: dispatch, autosave, add, takeOther, isLeftOut: isLate, sitting };
}
