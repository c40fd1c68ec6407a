"use client";
import { useEffect, useState } from "react";
import { useStable } from "../frame/use-stable";
import { shortLeft } from "./time-words";

const KEY = "toeline.hides-time";

const LOOK_MS = 250;

interface TimeLeftProps {
  /** What is left now, ms. */
  readonly readLeft: () => number;
  readonly isStanding: boolean;
  /** Says what is left. */
  readonly onTell: () => void;
}

/** The time left in the strip above the bench. It can be hidden; a press on it, or the key U, says it to the second. */
export function TimeLeft({ readLeft, isStanding, onTell }: TimeLeftProps) {
  const seconds = useSecondsLeft(readLeft);
  const [isHidden, setIsHidden] = useState(readHidden);
  const tell = useStable(onTell);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const isTyping =
        event.target instanceof Element && event.target.closest("input:not([type=radio]), textarea, select") !== null;
      if (event.key.toLowerCase() !== "u" || event.ctrlKey || event.metaKey || event.altKey || isTyping) return;
      event.preventDefault();
      tell();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [tell]);
  const hide = (next: boolean) => {
    setIsHidden(next);
    keepHidden(next);
  };
  return (
    <div className="flex shrink-0 items-center">
      {!isHidden && (
        <button
          type="button"
          title="What is left, to the second (U)"
          data-seconds-left={seconds}
          className="h-11 whitespace-nowrap rounded px-2 font-semibold text-bench-text hover:bg-bench-2"
          onClick={onTell}
        >
          {shortLeft(seconds * 1000)}
          {isStanding && " (stands)"}
        </button>
      )}
      <button
        type="button"
        className="h-11 whitespace-nowrap rounded px-2 text-bench-dim text-sm underline hover:bg-bench-2"
        onClick={() => hide(!isHidden)}
      >
        {isHidden ? "Show the time" : "Hide"}
        {!isHidden && <span className="sr-only"> the time</span>}
      </button>
    </div>
  );
}

/** Whole seconds that are left, looked at often enough to be right by one; drawn again only when they change. */
function useSecondsLeft(readLeft: () => number): number {
  const [seconds, setSeconds] = useState(() => Math.ceil(readLeft() / 1000));
  useEffect(() => {
    const look = () => setSeconds(Math.ceil(readLeft() / 1000));
    look();
    const timer = setInterval(look, LOOK_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [readLeft]);
  return seconds;
}

function readHidden(): boolean {
  try {
    return localStorage.getItem(KEY) === "yes";
  } catch {
    return false;
  }
}

function keepHidden(isHidden: boolean): void {
  try {
    localStorage.setItem(KEY, isHidden ? "yes" : "no");
  } catch {
    // it is as it was the next time
  }
}
