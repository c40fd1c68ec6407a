import { clockOf, type SectionRun, type Sitting } from "@/lib/sittings";
import type { ClockView } from "../sitting-views";

/** The clock of a run. Says the same again and again until something changes it. */
export function clockView(run: SectionRun, sitting: Pick<Sitting, "pauses">, now: Date): ClockView {
  const { state, deadline, remaining } = clockOf(run, sitting, now);
  if (state === "going") return { state, deadline: deadline?.toISOString() ?? null, remaining: null };
  return { state, deadline: null, remaining };
}
