import { EMPTY_REPORT, type Report } from "@/lib/report";
import { defaultPaper, newRun, newSitting, type SectionRun, type Sitting } from "@/lib/sittings";

/** 2026-03-02, a Monday, at a time of day like "10:20" or "10:20:07", UTC. */
export const at = (time: string): Date => new Date(`2026-03-02T${time.length === 5 ? `${time}:00` : time}Z`);

export const tutor = { by: "tutor", reason: "the lamp went out" };

/** One pore, so many mm from the datum. */
export const reportAt = (start: number): Report => ({
  ...EMPTY_REPORT,
  calls: [{ id: "a", face: "cap", type: "surface-pore", start, end: null, across: 0, size: 1, sentence: null }],
});

/** Planned for 10:00; grace 10 s. */
export const sitting = (changes: Partial<Sitting> = {}): Sitting => ({
  ...newSitting({ id: "s", paper: defaultPaper(), plannedAt: at("10:00") }, 10),
  ...changes,
});

/** Of the learner kim, waiting for the plate. */
export const run = (changes: Partial<SectionRun> = {}): SectionRun => ({
  ...newRun({ id: "kim-plate", userId: "kim", section: "plate", minutes: 120, factor: 1, isBorderline: false }),
  ...changes,
});
