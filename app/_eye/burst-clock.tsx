"use client";
import { useEffect, useRef, useState } from "react";
import { BURST_SECONDS } from "@/lib/eye";

/** What ends the round may not reach the server at once: it is said again so often, ms. */
const AGAIN_MS = 3000;

/** The time of a burst as it runs out, from when its first picture is there. */
export function BurstClock({ isRunning, onOver }: { readonly isRunning: boolean; readonly onOver: () => void }) {
  const [left, setLeft] = useState(BURST_SECONDS);
  const over = useRef(onOver);
  over.current = onOver;
  useEffect(() => {
    if (!isRunning) return;
    const end = performance.now() + 1000 * BURST_SECONDS;
    let saidAt = Number.NEGATIVE_INFINITY;
    const timer = setInterval(() => {
      const seconds = Math.max(0, Math.ceil((end - performance.now()) / 1000));
      setLeft(seconds);
      if (seconds > 0 || performance.now() - saidAt < AGAIN_MS) return;
      saidAt = performance.now();
      over.current();
    }, 200);
    return () => clearInterval(timer);
  }, [isRunning]);
  return (
    <p className="flex items-center gap-2 tabular-nums">
      <span className="text-ink-2">Time left</span>
      <span className="inline-block h-2 w-32 overflow-hidden rounded-full bg-paper-2" aria-hidden="true">
        <span className="block h-full bg-action" style={{ width: `${(100 * left) / BURST_SECONDS}%` }} />
      </span>
      <span className="w-10 font-semibold">{left} s</span>
    </p>
  );
}
