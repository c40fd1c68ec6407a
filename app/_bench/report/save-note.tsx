"use client";
import { isUnsent } from "@/lib/bench";
import { timeOf } from "./call-words";
import type { Autosave, Conflict } from "./use-autosave";

const CONFLICT_WORDS: Readonly<Record<Conflict["kind"], string>> = {
  newer: "Not saved: another window wrote too",
  "report-closed": "Closed from another window",
  "handed-in": "Handed in from another window",
};

interface SaveNoteProps {
  readonly autosave: Autosave;
  /** Nothing can be sent just now, and words elsewhere say why. */
  readonly isHeld?: boolean;
}

/** Saved or not, always in sight; what the server refused is said in words with what can be done. */
export function SaveNote({ autosave, isHeld = false }: SaveNoteProps) {
  return (
    <div role="status" data-save={stateOf(autosave)} className="flex shrink-0 flex-wrap items-center gap-2 text-sm">
      {isHeld && isUnsent(autosave.saving) ? (
        <span className="text-lamp">Not saved: kept in this browser</span>
      ) : (
        <NoteText autosave={autosave} />
      )}
    </div>
  );
}

function NoteText({ autosave }: { autosave: Autosave }) {
  const { saving, conflict } = autosave;
  const button = "min-h-9 rounded border border-lamp px-2 text-lamp";
  // the notice over the report says the rest
  if (conflict) {
    return <span className="text-lamp">{CONFLICT_WORDS[conflict.kind]}</span>;
  }
  if (saving.refusal) {
    return (
      <>
        <span className="max-w-xl text-lamp">Not saved: {saving.refusal.reason}</span>
        {!saving.refusal.isLasting && (
          <button type="button" className={button} onClick={autosave.sendNow}>
            Try again
          </button>
        )}
      </>
    );
  }
  if (saving.failures > 0 && isUnsent(saving)) {
    return (
      <>
        <span className="text-lamp">Not saved: no answer from the server. Kept in this browser; trying again.</span>
        <button type="button" className={button} onClick={autosave.sendNow}>
          Try now
        </button>
      </>
    );
  }
  return <span className="whitespace-nowrap text-bench-dim">{calmWords(autosave)}</span>;
}

function stateOf({ saving }: Autosave): "saved" | "unsent" | "refused" {
  if (saving.refusal) return "refused";
  return isUnsent(saving) ? "unsent" : "saved";
}

function calmWords({ saving }: Autosave): string {
  if (isUnsent(saving)) return "Saving...";
  if (!saving.savedAt) return saving.newest > 0 ? "Saved" : "Nothing written yet";
  return `Saved ${timeOf(saving.savedAt)}`;
}
