"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { changedTime, exactLeft, passedMark } from "./time-words";
import type { SittingRun } from "./use-sitting-run";

const LOOK_MS = 250;
/** How long something about the time stays in sight. */
const SHOWN_MS = 12_000;

interface TimeTold {
  /** Whether the time is over, by the browser's own reckoning. */
  readonly isUp: boolean;
  /** What is being said about the time, and shown for a while; empty when nothing is. */
  readonly said: string;
  /** Says what is left. */
  readonly tell: () => void;
}

/** Watches the clock of a section: says 10, 5 and 1 minutes, time that was given or taken, and what is left when asked. */
export function useTimeTold(sitting: SittingRun | null): TimeTold {
  const readLeft = sitting?.left;
  const isGoing = sitting?.run.clock.state === "going";
  const allowed = sitting?.run.allowed ?? null;
  const isShut = sitting?.run.shut != null;
  const [isUp, setIsUp] = useState(false);
  const [said, setSaid] = useState("");
  const before = useRef<number | null>(null);
  const hiding = useRef<ReturnType<typeof setTimeout>>(undefined);

  const say = useCallback((text: string) => {
    setSaid(text);
    clearTimeout(hiding.current);
    hiding.current = setTimeout(() => setSaid(""), SHOWN_MS);
  }, []);
  useEffect(() => () => clearTimeout(hiding.current), []);

  useEffect(() => {
    if (!readLeft) return;
    const look = () => {
      const now = readLeft();
      const mark = isGoing && before.current !== null ? passedMark(before.current, now) : null;
      if (mark) say(mark);
      before.current = now;
      setIsUp(isGoing && now <= 0);
    };
    look();
    const timer = setInterval(look, LOOK_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [readLeft, isGoing, say]);

  const known = useRef({ allowed, isShut });
  useEffect(() => {
    const earlier = known.current;
    known.current = { allowed, isShut };
    if (!readLeft || isShut) return;
    const text = earlier.isShut
      ? `Your tutor opened the section again. You have ${exactLeft(readLeft())} left.`
      : changedTime(earlier.allowed, allowed, readLeft());
    if (text) say(text);
  }, [allowed, isShut, readLeft, say]);

  const tell = useCallback(() => {
    if (!readLeft) return;
    const words = `${exactLeft(readLeft())} left.`;
    // the same once more is said again
    setSaid("");
    setTimeout(() => say(isGoing ? words : `The clock stands: ${words}`));
  }, [readLeft, isGoing, say]);

  return { isUp, said, tell };
}
