"use client";
import { useEffect, useState } from "react";
import { z } from "zod";
import { type EndViews, endViewsSchema } from "@/lib/weld";

export type EndsState =
  | { readonly kind: "loading" }
  | { readonly kind: "ready"; readonly ends: EndViews }
  | { readonly kind: "failed"; readonly again: () => void };

/** Both ends of a practice's fillet, as the server gives them. */
export function useEnds(practiceId: string): EndsState {
  const [ends, setEnds] = useState<EndViews | null>(null);
  const [hasFailed, setHasFailed] = useState(false);
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again with every attempt
  useEffect(() => {
    const leaving = new AbortController();
    setHasFailed(false);
    readEnds(practiceId, leaving.signal).then(setEnds, () => {
      if (!leaving.signal.aborted) setHasFailed(true);
    });
    return () => leaving.abort();
  }, [practiceId, attempt]);
  if (ends) return { kind: "ready", ends };
  return hasFailed ? { kind: "failed", again: () => setAttempt(attempt + 1) } : { kind: "loading" };
}

const answerSchema = z.object({ ends: endViewsSchema });

async function readEnds(practiceId: string, signal: AbortSignal): Promise<EndViews> {
  const response = await fetch(`/api/practice/${practiceId}/ends`, { signal });
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return answerSchema.parse(await response.json()).ends;
}
