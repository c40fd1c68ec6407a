"use client";

import { useEffect, useState } from "react";

const MINUTE = 60_000;

interface SectionTimeProps {
  /** What is left on the server's clock as the page was drawn, ms. */
  readonly left: number;
  readonly isGoing: boolean;
}

/** What is left of a section that is on the bench, in whole minutes; the bench has it to the second. */
export function SectionTime({ left, isGoing }: SectionTimeProps) {
  const [now, setNow] = useState(left);
  useEffect(() => {
    setNow(left);
    if (!isGoing) return;
    const since = performance.now();
    const timer = setInterval(() => setNow(Math.max(0, left - (performance.now() - since))), 1000);
    return () => clearInterval(timer);
  }, [left, isGoing]);
  const minutes = Math.ceil(now / MINUTE);
  return (
    <>
      {minutes} {minutes === 1 ? "minute" : "minutes"} left
    </>
  );
}
