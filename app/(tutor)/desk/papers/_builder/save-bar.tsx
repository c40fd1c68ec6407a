"use client";

import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { NewerKept } from "@/app/_ui/newer-kept";
import { Notice } from "@/app/_ui/notice";
import type { Kept, Sent } from "./send-paper";

interface SaveBarProps {
  readonly kept: Kept | null;
  readonly sent: Sent | null;
  /** Whether a sitting uses the version that is kept, so that saving makes the next one. */
  readonly isUsed: boolean;
  readonly isUnsaved: boolean;
  readonly isSending: boolean;
  /** How many fields keep it from being saved, once that was tried. */
  readonly wrong: number;
  readonly isPreview: boolean;
  readonly onSave: (over: Kept | null) => void;
  readonly onPreview: () => void;
}

/** Saving, with what came of it; it stays at the lower edge of the window. */
export function SaveBar(props: SaveBarProps) {
  const { kept, sent, isSending, wrong, isPreview, onSave, onPreview } = props;
  return (
    <div className="sticky bottom-0 z-10 grid gap-3 rounded-md border border-line bg-sheet p-4 shadow-md">
      {wrong > 0 && (
        <Notice>
          {wrong === 1 ? "One thing has" : `${wrong} things have`} to be put right first, so nothing was saved. What you
          wrote stands as it is; look for what is marked.
        </Notice>
      )}
      {sent && !sent.ok && <Notice>{sent.message}</Notice>}
      {sent && !sent.ok && sent.newer !== null && kept && (
        <NewerKept
          href={`/desk/papers/${kept.id}`}
          at={sent.newer}
          look="Look at the newer one"
          inPlace="Save mine in its place"
          asOwn="Save mine as a paper of its own"
          onInPlace={() => onSave({ ...kept, seen: sent.newer as string })}
          onAsOwn={() => onSave(null)}
        />
      )}
      <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <Button onClick={() => onSave(kept)} disabled={isSending}>
          {isSending ? "Saving…" : "Save"}
        </Button>
        <Button look="quiet" aria-pressed={isPreview} onClick={onPreview}>
          {isPreview ? "Back to writing" : "Look at it as a learner"}
        </Button>
        <span className="text-sm" role="status">
          {statusOf(props)}
        </span>
        <Link
          href="/desk/papers"
          className="ml-auto inline-flex min-h-11 items-center text-action underline underline-offset-4"
        >
          Back to the papers
        </Link>
      </div>
    </div>
  );
}

function statusOf({ kept, sent, isUnsaved, isUsed }: SaveBarProps): string {
  const next =
    kept && isUsed
      ? ` Version ${kept.number} is in use and stays as it is; saving makes version ${kept.number + 1}.`
      : "";
  if (!kept) return "Not saved yet.";
  if (isUnsaved) return `Not saved yet.${next}`;
  return sent?.ok ? `Saved as version ${kept.number}.` : `Version ${kept.number}.${next}`;
}
