import { type KeptReport, type SavedReport, savedReportSchema } from "./kept-report";

export type SendOutcome =
  | { readonly kind: "ok"; readonly savedAt: string; readonly answer: unknown }
  /** No answer, or the server is in trouble: worth another try. */
  | { readonly kind: "failed" }
  | {
      readonly kind: "refused";
      readonly code: string;
      readonly message: string;
      readonly newer: SavedReport | null;
    };

/** A request that hangs for so long in a broken network is given up, so that it is tried again. */
const GIVE_UP_MS = 15_000;

/** Sends a version of the report and tells what came of it; it never throws. */
export async function sendReport(url: string, method: "PUT" | "POST", body: KeptReport): Promise<SendOutcome> {
  try {
    const response = await fetch(url, {
      method,
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(GIVE_UP_MS),
    });
    if (response.status >= 500 || response.status === 429) return { kind: "failed" };
    const answer: unknown = await response.json();
    if (response.ok) return { kind: "ok", savedAt: textIn(answer, "savedAt") ?? new Date().toISOString(), answer };
    const newer = savedReportSchema.safeParse(answer);
    return {
      kind: "refused",
      code: textIn(answer, "code") ?? "",
      message: textIn(answer, "message") ?? `The server refused it (${response.status}). It is kept in this browser.`,
      newer: newer.success ? newer.data : null,
    };
  } catch {
    return { kind: "failed" };
  }
}

function textIn(answer: unknown, key: string): string | null {
  if (typeof answer !== "object" || answer === null || !(key in answer)) return null;
  const value = (answer as Record<string, unknown>)[key];
  return typeof value === "string" ? value : null;
}
