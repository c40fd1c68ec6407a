import { z } from "zod";
import { type Report, reportSchema } from "@/lib/report";

/** A version of the report and its number. */
export interface KeptReport {
  readonly sequence: number;
  readonly report: Report;
}

export const keptReportSchema = z.object({ sequence: z.number().int().min(0), report: reportSchema });

const keyOf = (id: string) => `toeline.report.${id}`;

/** What this browser kept of a practice, or null. Storage may be switched off or hold something else. */
export function readKeptReport(id: string): KeptReport | null {
  try {
    const parsed = keptReportSchema.safeParse(JSON.parse(localStorage.getItem(keyOf(id)) ?? "null"));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** Keeps a version in the browser; where storage is full or switched off the server's copy has to do. */
export function keepReport(id: string, kept: KeptReport): void {
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(kept));
  } catch {
    // nothing to be done about a full or forbidden storage
  }
}

/** Handed in: nothing is to be sent any more. */
export function forgetKeptReport(id: string): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // storage is switched off, so nothing was kept
  }
}
