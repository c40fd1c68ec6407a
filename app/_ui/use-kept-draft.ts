import { useEffect, useState } from "react";

interface KeptDraft<Draft> {
  readonly draft: Draft;
  /** Time of the version that it was written on; null for something new. */
  readonly seen: string | null;
}

/**
 * Keeps what is not stored yet in this window under `key`, so that leaving the page or loading it again loses nothing; null
 * once there is nothing to keep. What was left behind by an earlier visit comes back as `left` until it is dropped. A key
 * names the shape of what it keeps by a number, which goes up when that shape changes.
 */
export function useKeptDraft<Draft>(key: string, unstored: Draft | null, seen: string | null) {
  const [left, setLeft] = useState<KeptDraft<Draft> | null>(null);
  useEffect(() => {
    const text = sessionStorage.getItem(key);
    if (text !== null) setLeft(JSON.parse(text) as KeptDraft<Draft>);
  }, [key]);
  useEffect(() => {
    if (unstored) sessionStorage.setItem(key, JSON.stringify({ draft: unstored, seen } satisfies KeptDraft<Draft>));
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
