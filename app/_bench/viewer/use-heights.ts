"use client";
import { useCallback } from "react";
import type { HeightAt } from "@/lib/bench";
import { heightsOfFace } from "@/lib/gauges";
import type { Aspect } from "@/lib/weld";
import type { SpecimenState } from "./specimen-link";
import { withGrids } from "./with-grids";

/** Heights of each aspect that is here. */
export function useHeights({ aspects }: SpecimenState): (aspect: Aspect) => HeightAt {
  return useCallback(
    (aspect: Aspect) => {
      const state = aspects[aspect];
      return state?.kind === "ready" ? heightsOfFace(withGrids(aspect, state.heights)).heightAt : null;
    },
    [aspects],
  );
}
