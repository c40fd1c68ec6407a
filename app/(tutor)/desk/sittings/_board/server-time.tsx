"use client";

import { createContext, type ReactNode, useContext, useEffect, useState } from "react";
import type { Clock } from "./board";

interface Ticking {
  /** The server's time when the page was made, ms: what is shown until the browser ticks. */
  readonly first: number;
  /** The server's clock less this machine's, ms. */
  readonly offset: number;
}

const ServerTime = createContext<Ticking>({ first: 0, offset: 0 });

/** Lets everything inside tick by the server's clock. */
export function ServerTimeProvider({ first, offset, children }: Ticking & { readonly children: ReactNode }) {
  return <ServerTime value={{ first, offset }}>{children}</ServerTime>;
}

const TICK_MS = 250;

/** The server's time, ms, as far as this browser knows. */
function useServerTime(): number {
  const { first, offset } = useContext(ServerTime);
  const [now, setNow] = useState(first);
  useEffect(() => {
    const tick = () => setNow(Date.now() + offset);
    tick();
    const timer = setInterval(tick, TICK_MS);
    return () => clearInterval(timer);
  }, [offset]);
  return now;
}

/** What is left on a clock, ticking, and whether it goes. */
export function TimeLeft({ clock }: { readonly clock: Clock }) {
  if (clock.state === "going" && clock.deadline) return <Ticker deadline={clock.deadline} />;
  if (clock.state === "stopped" || clock.remaining === null) return <span className="text-ink-2">–</span>;
  return (
    <>
      <span className="tabular-nums">{spell(clock.remaining)}</span>
      <span className="block text-ink-2 text-sm">{clock.state === "standing" ? "stands" : "to come"}</span>
    </>
  );
}

/** Less than this is pointed out, in words. */
const SOON_MS = 5 * 60_000;

function Ticker({ deadline }: { readonly deadline: Date }) {
  const left = Math.max(0, deadline.getTime() - useServerTime());
  return (
    <>
      <span role="timer" className={`tabular-nums ${left < SOON_MS ? "font-semibold" : ""}`}>
        {spell(left)}
      </span>
      <span className="block text-ink-2 text-sm">
        {left === 0 ? "time is up" : left < SOON_MS ? "nearly over" : "goes"}
      </span>
    </>
  );
}

/** "1:02:03", "2:03": begun seconds count whole, so that 0:00 is the end. */
function spell(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const two = (n: number) => String(n).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}
