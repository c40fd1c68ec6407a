"use client";
import { useEffect, useId, useRef } from "react";
import { type CoverFacts, coverKind, coverWords } from "./cover-words";

interface SittingCoverProps extends CoverFacts {
  /** The page of the sitting. */
  readonly sittingUrl: string;
  readonly onGoOnHere: () => void;
}

/** Covers the bench while the section takes nothing from this window, and says why, what is kept and what to do. */
export function SittingCover({ sittingUrl, onGoOnHere, ...facts }: SittingCoverProps) {
  const kind = coverKind(facts);
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  const isCovered = kind !== null;
  const raise = () => {
    if (!dialog.current?.open) dialog.current?.showModal();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever there is something to cover
  useEffect(() => {
    if (!isCovered) return;
    // whatever was asked lies under it
    for (const open of document.querySelectorAll<HTMLDialogElement>("dialog[open]")) {
      if (open !== dialog.current) open.close();
    }
    raise();
  }, [isCovered]);
  if (kind === null) return null;
  const { title, sentences } = coverWords(kind, facts);
  const isOver = kind !== "paused" && kind !== "elsewhere";
  return (
    <dialog
      ref={dialog}
      data-cover={kind}
      aria-labelledby={titleId}
      // it goes when its reason goes, and not before
      onCancel={(event) => event.preventDefault()}
      onClose={raise}
      className="m-auto w-[min(36rem,92vw)] rounded-lg border-lamp border-t-8 bg-sheet p-0 text-ink shadow-2xl backdrop:bg-bench"
    >
      <div className="max-h-[80vh] space-y-3 overflow-y-auto p-6" role="status">
        <h2 id={titleId} className="font-semibold text-xl">
          {title}
        </h2>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <div className="flex flex-wrap gap-3 px-6 pb-6">
        {kind === "elsewhere" && (
          <button
            type="button"
            className="min-h-11 rounded bg-action px-5 font-semibold text-sheet hover:bg-action-2"
            onClick={onGoOnHere}
          >
            Go on in this window
          </button>
        )}
        <a
          href={sittingUrl}
          className={`inline-flex min-h-11 items-center rounded px-5 ${
            isOver
              ? "bg-action font-semibold text-sheet hover:bg-action-2"
              : "border border-action text-action hover:bg-action hover:text-sheet"
          }`}
        >
          To the sitting
        </a>
      </div>
    </dialog>
  );
}
