import { z } from "zod";
import { packedTrailSchema } from "@/lib/trail";

/** What one window of the bench has seen so far, as it is kept in the browser and sent. */
const windowTrailSchema = z.object({ windowId: z.string(), number: z.number().int().min(1), trail: packedTrailSchema });
export type WindowTrail = z.infer<typeof windowTrailSchema>;

/** Every window keeps its own, so that none writes over another's. */
const prefixOf = (practiceId: string) => `toeline.view-trail.${practiceId}.`;

/** What this browser kept of a practice and the server may not have. */
export function readKeptTrails(practiceId: string): readonly WindowTrail[] {
  try {
    return keysOf(practiceId).flatMap((key) => {
      const parsed = windowTrailSchema.safeParse(JSON.parse(localStorage.getItem(key) ?? "null"));
      return parsed.success ? [parsed.data] : [];
    });
  } catch {
    return [];
  }
}

export function keepTrail(practiceId: string, kept: WindowTrail): void {
  try {
    localStorage.setItem(prefixOf(practiceId) + kept.windowId, JSON.stringify(kept));
  } catch {
    // a full or forbidden storage: what was not sent yet is lost with the window
  }
}

/** The server has it, or takes nothing any more. */
export function forgetTrail(practiceId: string, windowId: string): void {
  try {
    localStorage.removeItem(prefixOf(practiceId) + windowId);
  } catch {
    // storage is switched off, so nothing was kept
  }
}

const keysOf = (practiceId: string): readonly string[] =>
  Object.keys(localStorage).filter((key) => key.startsWith(prefixOf(practiceId)));
