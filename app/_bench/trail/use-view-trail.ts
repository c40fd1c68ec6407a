"use client";
import { useCallback, useEffect, useRef } from "react";
import type { Look } from "@/lib/trail";
import { recordTrail, type TrailRecorder } from "./record-trail";

/**
 * Records where somebody looks while the bench is open; nothing is drawn anew for it. `look` is null while there is nothing to
 * look at. Gives back what sends the last of it.
 */
export function useViewTrail(practiceId: string, look: Look | null): () => Promise<void> {
  const newest = useRef(look);
  newest.current = look;
  const recorder = useRef<TrailRecorder | null>(null);
  useEffect(() => {
    const started = recordTrail(practiceId, () => newest.current);
    recorder.current = started;
    return () => started.stop();
  }, [practiceId]);
  return useCallback(async () => recorder.current?.send(), []);
}
