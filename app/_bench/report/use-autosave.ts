"use client";
import { useCallback, useEffect, useReducer, useRef, useState } from "react";
import { isUnsent, type Saving, save, startSaving, waitBeforeSending } from "@/lib/bench";
import { isSameButAnswers } from "@/lib/practice";
import type { Report } from "@/lib/report";
import {
  type KeptReport,
  keepReport,
  type NumberedReport,
  newId,
  readKeptReport,
  type SavedReport,
} from "./kept-report";
import { type SendOutcome, sendReport } from "./send-report";

/** What another window did that this one cannot write over unasked. */
export type Conflict =
  | { readonly kind: "newer"; readonly version: SavedReport }
  | { readonly kind: "report-closed" }
  | { readonly kind: "handed-in" };

export interface Autosave {
  readonly saving: Saving;
  readonly conflict: Conflict | null;
  /** What is written now, as it is to be sent. */
  latest(): KeptReport;
  /** The same, to go with a step that is taken now and ends the writing. */
  asOfNow(): KeptReport;
  /** Call it with every changed report. */
  edited(report: Report): void;
  /** Takes note of a version that came to the server on another way. */
  sent(sequence: number, savedAt: string): void;
  /** Takes note of a refusal that was met on another way to the server. */
  refused(outcome: Extract<SendOutcome, { kind: "refused" }>): void;
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
const LASTING: ReadonlySet<string> = new Set([
  "stale-save",
  "report-closed",
  "already-handed-in",
  "no-such-practice",
  "time-is-up",
  "closed-by-tutor",
  "handed-in",
  "void",
]);

/** Refusals that pass by themselves. */
const PASSING: ReadonlySet<string> = new Set(["paused", "sitting-paused", "other-window"]);

/** What a sitting says of the way to the server. */
export interface SittingWay {
  /** Nothing is taken now: the clock stands, another window writes, or the section is over for good. */
  readonly isHeld: boolean;
  /** The section is over; where the way is not held, what was written before is taken for a few seconds more. */
  readonly isShut: boolean;
  /** When writing ends or has ended, ISO; null while no clock goes. What was written later is never taken. */
  readonly endsAt: string | null;
  /** The server's time, ISO. */
  now(): string;
}

interface AutosaveOptions {
  readonly way?: SittingWay | null;
  /** What is to be chosen before anything is sent. */
  readonly conflict?: Conflict | null;
  /** When the server's version was saved. */
  readonly savedAt?: string | null;
}

/** A report of the server, and whether it is closed but for its answers. */
export type ServerReport = NumberedReport & {
  readonly isClosed: boolean;
  /** The window that saved it; null before the first save. */
  readonly savedBy: string | null;
};

function laterHere(id: string, server: NumberedReport): KeptReport | null {
  const kept = readKeptReport(id);
  return kept && kept.sequence > server.sequence ? kept : null;
}

/**
 * Whether this browser kept something later that can count no more: the report was closed elsewhere before it was sent. Its
 * answers alone would still count.
 */
export function isLeftOut(id: string, server: ServerReport): boolean {
  const kept = laterHere(id, server);
  return kept !== null && server.isClosed && !isSameButAnswers(kept.report, server.report);
}

/**
 * What to start writing from: the server's report, or a later one that this browser kept. It starts a window of its own, since
 * the one that kept it may still be open.
 */
export function latestReport(id: string, server: ServerReport): KeptReport {
  const { isClosed, savedBy, ...version } = server;
  const kept = laterHere(id, server);
  const window = (base: number) => ({ id: newId(), base });
  if (!kept || isLeftOut(id, server)) return { ...version, window: window(version.sequence) };
  const hasSeen = kept.window.id === savedBy;
  return { ...kept, window: window(hasSeen ? Math.max(kept.window.base, version.sequence) : kept.window.base) };
}

/**
 * What this browser kept and never sent, although another window has saved something newer since: both are there to choose
 * from. Null where there is nothing of the kind.
 */
export function unsentHere(id: string, server: ServerReport): KeptReport | null {
  const kept = readKeptReport(id);
  if (!kept || server.isClosed || kept.sequence > server.sequence || kept.window.base >= kept.sequence) return null;
  if (kept.window.id === server.savedBy) return null;
  return isSameButAnswers(kept.report, server.report) ? null : kept;
}

const isMadeBy = ({ madeAt }: KeptReport, end: string): boolean =>
  madeAt !== undefined && Date.parse(madeAt) <= Date.parse(end);

/**
 * Whether a save was refused only because a later step of this window was quicker than it: what the server has is known here
 * (up to `seen`), or was closed as it is `here`, answers since then apart. The next save can meet neither.
 */
function isOvertaken({ code, newer }: Extract<SendOutcome, { kind: "refused" }>, here: Report, seen: number): boolean {
  if (newer === null) return false;
  if (code === "stale-save") return newer.sequence <= seen;
  return code === "report-closed" && isSameButAnswers(newer.report, here);
}

function conflictOf({ code, newer }: Extract<SendOutcome, { kind: "refused" }>): Conflict | null {
  if (code === "already-handed-in") return { kind: "handed-in" };
  if (code === "report-closed") return { kind: "report-closed" };
  // every refusal of a sitting brings along what is kept; only this one is a choice between two versions
  return code === "stale-save" && newer ? { kind: "newer", version: newer } : null;
}

/** Keeps every edit in the browser at once and sends it to the server after a rest, again and again until it is there. */
export function useAutosave(
  id: string,
  server: number,
  start: KeptReport,
  { way = null, conflict: firstConflict = null, savedAt = null }: AutosaveOptions = {},
): Autosave {
  const [saving, tell] = useReducer(save, startSaving(server, start.sequence, savedAt));
  const [conflict, setConflict] = useState<Conflict | null>(firstConflict);
  const madeAt = useRef(start.madeAt);
  const report = useRef(start.report);
  const sequence = useRef(start.sequence);
  const base = useRef(start.window.base);
  const windowId = start.window.id;
  /** In a sitting, what was written here and is not known to be on the server, the oldest first. */
  const unsent = useRef<readonly KeptReport[]>(start.sequence > server ? [start] : []);

  const latest = useCallback(
    (): KeptReport => ({
      sequence: sequence.current,
      report: report.current,
      window: { id: windowId, base: base.current },
      ...(madeAt.current !== undefined && { madeAt: madeAt.current }),
    }),
    [windowId],
  );

  const sent = useCallback(
    (number: number, savedAt: string) => {
      base.current = Math.max(base.current, number);
      unsent.current = unsent.current.filter((version) => version.sequence > number);
      tell({ kind: "confirmed", sequence: number, savedAt });
      // so that whoever opens it next knows that nothing of it is missing
      if (sequence.current === number && sequence.current > 0) keepReport(id, latest());
    },
    [id, latest],
  );

  const refused = useCallback((outcome: Extract<SendOutcome, { kind: "refused" }>) => {
    if (PASSING.has(outcome.code)) return tell({ kind: "failed" });
    setConflict(conflictOf(outcome));
    tell({ kind: "refused", reason: outcome.message, isLasting: LASTING.has(outcome.code) });
  }, []);

  const endsAt = way?.endsAt ?? null;
  /** What was written in time comes first: were it sent with a later edit in it, all of it would be refused. */
  const nextToSend = useCallback((): KeptReport => {
    const newest = latest();
    const inTime = endsAt === null ? undefined : unsent.current.findLast((version) => isMadeBy(version, endsAt));
    return inTime ? { ...inTime, window: newest.window } : newest;
  }, [endsAt, latest]);

  const send = useCallback(async () => {
    tell({ kind: "sending" });
    const version = nextToSend();
    const outcome = await sendReport(`/api/practice/${id}/report`, "PUT", version);
    switch (outcome.kind) {
      case "ok":
        return sent(version.sequence, outcome.savedAt);
      case "failed":
        return tell({ kind: "failed" });
      case "refused":
        if (isOvertaken(outcome, report.current, base.current)) return tell({ kind: "overtaken" });
        return refused(outcome);
    }
  }, [id, nextToSend, sent, refused]);

  const { newest } = saving;
  const isHeld = way?.isHeld ?? false;
  const wait = isHeld || conflict !== null ? null : waitBeforeSending(saving);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each edit starts the rest anew
  useEffect(() => {
    if (wait === null) return;
    const timer = setTimeout(send, wait);
    return () => clearTimeout(timer);
  }, [wait, newest, send]);

  useEffect(() => {
    const warn = (event: BeforeUnloadEvent) => {
      // what cannot be sent now is kept here, and waiting for it would be of no use
      if (isUnsent(saving) && !saving.refusal && !isHeld) event.preventDefault();
    };
    const retry = () => {
      if (wait !== null) void send();
    };
    window.addEventListener("beforeunload", warn);
    window.addEventListener("online", retry);
    return () => {
      window.removeEventListener("beforeunload", warn);
      window.removeEventListener("online", retry);
    };
  }, [saving, send, wait, isHeld]);

  const isShut = way?.isShut ?? false;
  const isStopped = isHeld || isShut;
  const wasStopped = useRef(isStopped);
  useEffect(() => {
    if (wasStopped.current && !isStopped && conflict === null) tell({ kind: "way-is-free" });
    wasStopped.current = isStopped;
  }, [isStopped, conflict]);

  // neither a rest nor a wait after failures may outlast the seconds that are left; the server's refusal ends it
  const areLastSeconds = isShut && !isHeld;
  const wereLastSeconds = useRef(areLastSeconds);
  useEffect(() => {
    if (areLastSeconds && !wereLastSeconds.current && isUnsent(saving) && conflict === null) {
      tell({ kind: "way-is-free" });
      void send();
    }
    wereLastSeconds.current = areLastSeconds;
  }, [areLastSeconds, saving, conflict, send]);

  const stamp = way?.now;
  const edited = useCallback(
    (next: Report) => {
      report.current = next;
      sequence.current += 1;
      madeAt.current = stamp?.();
      const version = latest();
      if (stamp) unsent.current = [...unsent.current, version];
      keepReport(id, version);
      tell({ kind: "edited", sequence: sequence.current });
    },
    [id, latest, stamp],
  );

  const goOnFrom = (version: number) => {
    setConflict(null);
    sequence.current = version;
    base.current = version;
    unsent.current = [];
    tell({ kind: "restarted", sequence: version });
  };

  const newer = conflict?.kind === "newer" ? conflict.version : null;
  return {
    saving,
    conflict,
    latest,
    asOfNow: () => ({ ...latest(), ...(stamp && { madeAt: stamp() }) }),
    edited,
    sent,
    refused,
    sendNow: () => void send(),
    takeNewer: () => {
      if (!newer) return null;
      goOnFrom(newer.sequence);
      report.current = newer.report;
      keepReport(id, latest());
      return newer.report;
    },
    close: () => tell({ kind: "restarted", sequence: sequence.current }),
    keepThis: () => {
      if (!newer) return;
      goOnFrom(newer.sequence);
      edited(report.current);
    },
  };
}
