"use client";
import { type Dispatch, useCallback, useEffect, useReducer, useRef, useState } from "react";
import { type DrawnExtent, startWriting, type Writing, type WritingEvent, write } from "@/lib/bench";
import { newId } from "../report/kept-report";
import { type Autosave, isLeftOut, latestReport, type ServerReport, useAutosave } from "../report/use-autosave";

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
}

/** The report being written and its way to the server. */
export function useWriting(practiceId: string, server: ServerReport): ReportWriting {
  const [isLate] = useState(() => isLeftOut(practiceId, server));
  const [start] = useState(() => latestReport(practiceId, server));
  const [writing, dispatch] = useReducer(write, start.report, (report) => startWriting(report, server.isClosed));
  const autosave = useAutosave(practiceId, server.sequence, start);
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

  return { writing, write: dispatch, autosave, add, takeOther, isLeftOut: isLate };
}
