"use client";
import { createContext, type ReactNode, useContext, useMemo } from "react";
import { type PackedTrail, type Trail, unpackTrail } from "@/lib/trail";

const TrailContext = createContext<Trail | null>(null);

/** What the bench noted of where the learner looked, for the mark sheet inside; null where nothing was recorded. */
export function TrailOfPiece({
  trail,
  children,
}: {
  readonly trail: PackedTrail | null;
  readonly children: ReactNode;
}) {
  const unpacked = useMemo(() => trail && unpackTrail(trail), [trail]);
  return <TrailContext value={unpacked}>{children}</TrailContext>;
}

export const useTrail = (): Trail | null => useContext(TrailContext);
