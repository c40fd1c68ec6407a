import { z } from "zod";
import { type Report, reportSchema } from "@/lib/report";

/** A version of the report and its number. */
export interface NumberedReport {
  readonly sequence: number;
  readonly report: Report;
}

const numberedReportSchema = z.object({ sequence: z.number().int().min(0), report: reportSchema });

/** A version that the server has, and since when. */
export interface SavedReport extends NumberedReport {
  readonly savedAt: string | null;
}

export const savedReportSchema = numberedReportSchema.extend({ savedAt: z.string().nullable().default(null) });

/** Which window writes, and the newest version of the server that it has seen. */
export interface WritingWindow {
  readonly id: string;
  readonly base: number;
}

/** What a browser keeps and a window sends. */
export interface KeptReport extends NumberedReport {
  readonly window: WritingWindow;
  /** In a sitting, when it was written: by the server's clock, as far as the browser knows it. */
  readonly madeAt?: string;
}

const keptReportSchema = numberedReportSchema.extend({
  window: z.object({ id: z.string(), base: z.number().int().min(0) }),
  madeAt: z.iso.datetime().optional(),
});

/** An id for a window or a row; crypto.randomUUID is missing where a workshop's server has no TLS. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

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
