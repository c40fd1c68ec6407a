"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { type LiveRun, type Told, timeByEvent, toldByAnswer, toldByEvent } from "./live-run";
import { contradicts, refined, type ServerTime, timeFrom } from "./server-time";

/** A section of a sitting as the page brought it along. */
export interface SatRun extends Told {
  readonly hasLens: boolean;
}

export interface SittingRun {
  readonly run: LiveRun;
  /** Whether this window writes; "asking" until the server has said so. */
  readonly window: "asking" | "writes" | "elsewhere";
  /** When the server was last heard of before the connection went; null while there is one. */
  readonly lostAt: Date | null;
  /** What is left now, ms. */
  left(): number;
  /** The server's time, as far as it is known here, ISO. */
  now(): string;
}

/** Nothing heard for so long, with a heartbeat every ten seconds, is no connection. */
const SILENT_MS = 25_000;
/** The server ends a live view now and then, and the browser connects again within this. */
const BROKEN_MS = 5_000;
const TRY_AGAIN_MS = 3_000;
const GIVE_UP_MS = 10_000;
const LOOK_MS = 1_000;
/** So often the server is asked for its time anew. */
const MEASURE_MS = 120_000;

/** Follows a section of a sitting and its clock, and makes this window the one that writes. Null outside sittings. */
export function useSittingRun(sat: SatRun | null, windowId: string): SittingRun | null {
  const [told, setTold] = useState<Told | null>(sat);
  const [hasTakenOver, setHasTakenOver] = useState(false);
  const [lostAt, setLostAt] = useState<Date | null>(null);
  const time = useRef<ServerTime | null>(null);
  const hasMeasured = useRef(false);
  const heardAt = useRef(0);
  const runId = sat?.run.runId ?? null;
  // what the page brought is a moment old; the first measure comes with taking over
  if (time.current === null && sat) time.current = timeFrom(performance.now(), performance.now(), sat.now);
  const serverNow = useCallback(() => performance.now() + (time.current?.offset ?? 0), []);

  /** What comes late never takes back what is known from later. */
  const hear = useCallback((next: Told) => {
    heardAt.current = performance.now();
    setLostAt(null);
    setTold((before) => (before && before.now > next.now ? before : next));
  }, []);

  const ask = useCallback(
    async (path: string, init?: RequestInit): Promise<Told | "refused" | null> => {
      const sentAt = performance.now();
      try {
        const response = await fetch(`/api/runs/${runId}${path}`, {
          cache: "no-store",
          signal: AbortSignal.timeout(GIVE_UP_MS),
          ...init,
        });
        const answeredAt = performance.now();
        if (response.status >= 500) return null;
        const next = toldByAnswer(await response.json());
        if (!next) return "refused";
        const measured = timeFrom(sentAt, answeredAt, next.now);
        // before the first answer there was only a guess
        time.current = refined(hasMeasured.current ? time.current : null, measured);
        hasMeasured.current = true;
        hear(next);
        return next;
      } catch {
        return null;
      }
    },
    [runId, hear],
  );
  const lose = useCallback(() => {
    setLostAt((before) => before ?? new Date(Date.now() - Math.max(0, performance.now() - heardAt.current)));
  }, []);

  // the newest window writes
  const isShut = told?.run.shut != null;
  useEffect(() => {
    if (runId === null || hasTakenOver || isShut) return;
    let isOver = false;
    let timer: ReturnType<typeof setTimeout>;
    const takeOver = async () => {
      const answer = await ask("/take-over", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ windowId }),
      });
      if (isOver) return;
      if (answer === null || answer === "refused") {
        timer = setTimeout(takeOver, TRY_AGAIN_MS);
        if (answer === "refused") void ask("");
        else lose();
        return;
      }
      setHasTakenOver(true);
    };
    void takeOver();
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [runId, hasTakenOver, isShut, windowId, ask, lose]);

  // what the server tells by itself
  useEffect(() => {
    if (runId === null) return;
    heardAt.current = performance.now();
    let source: EventSource | null = null;
    let lastLook = performance.now();
    let brokenAt: number | null = null;
    let listenedAt = 0;
    const listen = () => {
      source?.close();
      listenedAt = performance.now();
      source = new EventSource(`/api/runs/${runId}/live`);
      source.onopen = () => {
        brokenAt = null;
      };
      source.onerror = () => {
        brokenAt ??= performance.now();
      };
      source.addEventListener("run", (event: MessageEvent<string>) => {
        const next = toldByEvent(event.data);
        if (!next) return;
        check(next.now);
        hear(next);
      });
      source.addEventListener("time", (event: MessageEvent<string>) => {
        heardAt.current = performance.now();
        setLostAt(null);
        const now = timeByEvent(event.data);
        if (now !== null) check(now);
      });
    };
    const check = (now: number) => {
      if (time.current && contradicts(time.current, now, performance.now())) void ask("");
    };
    const measure = () => void ask("");
    const look = () => {
      const now = performance.now();
      const hasSlept = now - lastLook > 5 * LOOK_MS;
      lastLook = now;
      if (hasSlept) measure();
      const isBroken = brokenAt !== null && now - brokenAt > BROKEN_MS;
      if (!navigator.onLine || isBroken || now - heardAt.current > SILENT_MS) lose();
      const isClosed = source?.readyState === EventSource.CLOSED;
      if (isClosed && navigator.onLine && now - listenedAt > TRY_AGAIN_MS) listen();
    };
    const back = () => {
      listen();
      measure();
    };
    const seen = () => {
      if (document.visibilityState === "visible") measure();
    };
    listen();
    const looking = setInterval(look, LOOK_MS);
    const measuring = setInterval(measure, MEASURE_MS);
    window.addEventListener("online", back);
    window.addEventListener("offline", lose);
    window.addEventListener("pageshow", seen);
    document.addEventListener("visibilitychange", seen);
    return () => {
      source?.close();
      clearInterval(looking);
      clearInterval(measuring);
      window.removeEventListener("online", back);
      window.removeEventListener("offline", lose);
      window.removeEventListener("pageshow", seen);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [runId, ask, hear, lose]);

  const clock = told?.run.clock;
  const left = useCallback(() => {
    if (!clock) return 0;
    if (clock.deadline === null) return clock.remaining ?? 0;
    return Math.max(0, Date.parse(clock.deadline) - serverNow());
  }, [clock, serverNow]);
  const now = useCallback(() => new Date(serverNow()).toISOString(), [serverNow]);

  if (!told) return null;
  const isLive = told.run.liveWindowId === windowId;
  return { run: told.run, window: hasTakenOver ? (isLive ? "writes" : "elsewhere") : "asking", lostAt, left, now };
}
