import { useEffect, useState } from "react";
import type { Draft } from "./draft";

interface KeptDraft {
  readonly draft: Draft;
  /** Time of the version that it was written on; null for a new set. */
  readonly seen: string | null;
}

/**
 * Keeps what is not stored yet in this window, so that leaving the page or loading it again loses nothing; null once there is
 * nothing to keep. What was left behind by an earlier visit comes back as `left` until it is dropped.
 */
export function useKeptDraft(name: string, unstored: Draft | null, seen: string | null) {
  // the number goes up when a draft is no longer as it was, so that an older one is never taken for it
  const key = `toeline-criteria-1-${name}`;
  const [left, setLeft] = useState<KeptDraft | null>(null);
  useEffect(() => {
    const text = sessionStorage.getItem(key);
    if (text !== null) setLeft(JSON.parse(text) as KeptDraft);
  }, [key]);
  useEffect(() => {
    if (unstored) sessionStorage.setItem(key, JSON.stringify({ draft: unstored, seen } satisfies KeptDraft));
  }, [key, unstored, seen]);
  // a closed window keeps nothing: the browser asks first
  const isUnstored = unstored !== null;
  useEffect(() => {
    if (!isUnstored) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [isUnstored]);
  const drop = () => {
    sessionStorage.removeItem(key);
    setLeft(null);
  };
  return { left, drop };
}
