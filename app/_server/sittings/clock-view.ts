import { clockOf, type SectionRun, type Sitting } from "@/lib/sittings";

/** A clock as it is sent to a browser, which goes on by itself from the deadline and what it knows of the server's time. */
export interface ClockView {
  readonly state: "not-started" | "going" | "standing" | "stopped";
  /** While it goes: when it ends, ISO. */
  readonly deadline: string | null;
  /** While it does not go: what is left, ms. */
  readonly remaining: number | null;
}

/** The clock of a run. Says the same again and again until something changes it. */
export function clockView(run: SectionRun, sitting: Pick<Sitting, "pauses">, now: Date): ClockView {
  const { state, deadline, remaining } = clockOf(run, sitting, now);
  if (state === "going") return { state, deadline: deadline?.toISOString() ?? null, remaining: null };
  return { state, deadline: null, remaining };
}
