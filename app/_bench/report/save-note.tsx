"use client";
import { isUnsent } from "@/lib/bench";
import type { Autosave } from "./use-autosave";

export interface SaveNoteProps {
  readonly autosave: Autosave;
  readonly onTakeNewer: () => void;
}

/** Saved or not, always in sight; what the server refused is said in words with what can be done. */
export function SaveNote({ autosave, onTakeNewer }: SaveNoteProps) {
  const { saving, newer } = autosave;
  const button = "min-h-9 rounded border border-lamp px-2 text-lamp";
  return (
    <div role="status" data-save={stateOf(autosave)} className="flex min-w-0 flex-wrap items-center gap-2 text-sm">
      {saving.refusal ? (
        <>
          <span className="max-w-xl text-lamp">Not saved: {saving.refusal.reason}</span>
          {newer ? (
            <>
              <button type="button" className={button} onClick={onTakeNewer}>
                Take the newer version
              </button>
              <button type="button" className={button} onClick={autosave.keepThis}>
                Keep this one
              </button>
            </>
          ) : (
            <button type="button" className={button} onClick={autosave.sendNow}>
              Try again
            </button>
          )}
        </>
      ) : saving.failures > 0 && isUnsent(saving) ? (
        <>
          <span className="text-lamp">Not saved: no answer from the server. Kept in this browser; trying again.</span>
          <button type="button" className={button} onClick={autosave.sendNow}>
            Try now
          </button>
        </>
      ) : (
        <span className="whitespace-nowrap text-bench-dim">{calmWords(autosave)}</span>
      )}
    </div>
  );
}

function stateOf({ saving }: Autosave): "saved" | "unsent" | "refused" {
  if (saving.refusal) return "refused";
  return isUnsent(saving) ? "unsent" : "saved";
}

function calmWords({ saving }: Autosave): string {
  if (isUnsent(saving)) return "Saving...";
  if (!saving.savedAt) return saving.newest > 0 ? "Saved" : "Nothing written yet";
  const at = new Date(saving.savedAt).toLocaleTimeString(undefined, { hour: "2-digit", minute: "2-digit" });
  return `Saved ${at}`;
}
