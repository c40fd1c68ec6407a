"use client";
import { useEffect, useState } from "react";
import { type Coverage, withLook } from "@/lib/bench";
import type { Looking } from "../viewer/use-looking";
import { keepCoverage, readKeptCoverage } from "./kept-coverage";

/** A look counts as one after so long, ms. */
const LOOK_MS = 350;

/** Remembers which stretches were in sight long enough and closely enough, over reloads too. */
export function useCoverage(practiceId: string, { view, turningTo }: Looking): Coverage {
  const [coverage, setCoverage] = useState(() => readKeptCoverage(practiceId));
  useEffect(() => {
    if (!view || turningTo) return;
    const timer = setTimeout(() => {
      const next = withLook(coverage, view);
      if (next === coverage) return;
      setCoverage(next);
      keepCoverage(practiceId, next);
    }, LOOK_MS);
    return () => clearTimeout(timer);
  }, [practiceId, coverage, view, turningTo]);
  return coverage;
}
