import type { WindowTrail } from "./kept-trails";

/** A request that hangs is given up; the next one has everything of this one in it. */
const GIVE_UP_MS = 5_000;

/** Sends what a window has seen. "failed" is worth another try, "refused" is not; it never throws. */
export async function sendTrail(practiceId: string, kept: WindowTrail): Promise<"kept" | "failed" | "refused"> {
  try {
    const response = await fetch(`/api/practice/${practiceId}/view-trail`, {
      method: "PUT",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(kept),
      // also while the window is being closed
      keepalive: true,
      signal: AbortSignal.timeout(GIVE_UP_MS),
    });
    if (response.ok) return "kept";
    return response.status >= 500 || response.status === 429 || response.status === 401 ? "failed" : "refused";
  } catch {
    return "failed";
  }
}
