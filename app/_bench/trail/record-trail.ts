import { BEAT, IDLE_AFTER, type Look, NO_TRAIL, noteLook, packTrail } from "@/lib/trail";
import { newId } from "../report/kept-report";
import { forgetTrail, keepTrail, readKeptTrails, type WindowTrail } from "./kept-trails";
import { sendTrail } from "./send-trail";

const BEAT_MS = 1000 * BEAT;
/** More than this between two beats was no looking: the machine slept, or was busy with something else. */
const MOST_BEATS = 2;
const KEEP_MS = 2_000;
const SEND_MS = 20_000;
const SIGNS_OF_LIFE = ["pointermove", "pointerdown", "wheel", "keydown"] as const;

export interface TrailRecorder {
  /** Sends what is not sent yet; it settles in any case, within seconds. */
  send(): Promise<void>;
  stop(): void;
}

/**
 * Notes twice a second what `lookNow` says is in sight; null where there is nothing to look at. Time without any movement, in
 * another tab, at the report or before a dialog is not counted. What is noted is kept in the browser and sent now and then; if
 * that fails nobody is told, since no report depends on it.
 */
export function recordTrail(practiceId: string, lookNow: () => Look | null): TrailRecorder {
  const windowId = newId();
  let trail = NO_TRAIL;
  let newest: WindowTrail | null = null;
  let sent = 0;
  let isNoted = true;
  let beatAt = performance.now();
  let movedAt = beatAt;
  let isAtReport = false;
  let hadLook = false;
  let others = readKeptTrails(practiceId);

  const beat = () => {
    const now = performance.now();
    const beats = Math.floor((now - beatAt) / BEAT_MS);
    beatAt += beats * BEAT_MS;
    const look = lookNow();
    // a piece that comes on the bench is looked at, however long it was waited for
    if (look && !hadLook) movedAt = now - BEAT_MS;
    hadLook = look !== null;
    const isIdle = now - movedAt > 1000 * IDLE_AFTER;
    if (isIdle || isAtReport || document.hidden || document.querySelector("dialog[open]")) return;
    const next = look ? noteLook(trail, look, Math.min(beats, MOST_BEATS)) : trail;
    if (next === trail) return;
    trail = next;
    isNoted = false;
  };
  const keep = () => {
    if (isNoted) return;
    isNoted = true;
    newest = { windowId, number: (newest?.number ?? 0) + 1, trail: packTrail(trail) };
    keepTrail(practiceId, newest);
  };
  /** True where it needs no other try. */
  const deliver = async (kept: WindowTrail): Promise<boolean> => {
    if ((await sendTrail(practiceId, kept)) === "failed") return false;
    // what was noted meanwhile stays kept
    if (kept.windowId !== windowId || newest?.number === kept.number) forgetTrail(practiceId, kept.windowId);
    return true;
  };
  const send = async () => {
    keep();
    for (const other of others) if (await deliver(other)) others = others.filter((one) => one !== other);
    const own = newest;
    if (own && own.number > sent && (await deliver(own))) sent = Math.max(sent, own.number);
  };

  const onLife = (event: Event) => {
    movedAt = performance.now();
    isAtReport = event.target instanceof Element && event.target.closest(".clipboard") !== null;
  };
  const onHidden = () => {
    if (document.hidden) void send();
  };
  for (const sign of SIGNS_OF_LIFE) window.addEventListener(sign, onLife, { capture: true, passive: true });
  document.addEventListener("visibilitychange", onHidden);
  const timers = [setInterval(beat, BEAT_MS), setInterval(keep, KEEP_MS), setInterval(() => void send(), SEND_MS)];

  return {
    send,
    stop: () => {
      for (const timer of timers) clearInterval(timer);
      for (const sign of SIGNS_OF_LIFE) window.removeEventListener(sign, onLife, { capture: true });
      document.removeEventListener("visibilitychange", onHidden);
      void send();
    },
  };
}
