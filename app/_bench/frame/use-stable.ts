"use client";
import { useCallback, useRef } from "react";

/** The same function for ever, which does what the newest one does: memoized children need not be drawn again for it. */
export function useStable<Arguments extends unknown[], Result>(
  act: (...given: Arguments) => Result,
): (...given: Arguments) => Result {
  const newest = useRef(act);
  newest.current = act;
  return useCallback((...given: Arguments) => newest.current(...given), []);
}
