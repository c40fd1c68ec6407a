"use client";
import { type ReactNode, useEffect, useId, useRef } from "react";

interface AskDialogProps {
  readonly title: string;
  readonly children: ReactNode;
  readonly problem: string | null;
  /** The way back. */
  readonly backWords: string;
  /** The step that cannot be taken back, and its words while it is under way. */
  readonly doWords: string;
  readonly doingWords: string;
  readonly isSending: boolean;
  readonly onDo: () => void;
  readonly onClose: () => void;
  /** Below the buttons. */
  readonly footer?: ReactNode;
}

/** Asks once before a step that cannot be taken back. */
export function AskDialog(props: AskDialogProps) {
  const { title, children, problem, backWords, doWords, doingWords, isSending, onDo, onClose, footer } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby={titleId}
      onClose={onClose}
      className="m-auto w-[min(38rem,92vw)] rounded-lg bg-sheet p-0 text-ink shadow-2xl backdrop:bg-[#000a]"
    >
      <div className="max-h-[80vh] space-y-4 overflow-y-auto p-5">
        <h2 id={titleId} className="font-semibold text-xl">
          {title}
        </h2>
        {children}
        {problem && (
          <p role="alert" className="text-missed">
            {problem}
          </p>
        )}
        <div className="flex flex-wrap justify-end gap-3 pt-1">
          <button
            type="button"
            className="h-11 rounded border border-line px-4"
            onClick={() => dialog.current?.close()}
          >
            {backWords}
          </button>
          <button
            type="button"
            className="min-h-11 rounded bg-action px-5 font-semibold text-sheet hover:bg-action-2 disabled:opacity-60"
            disabled={isSending}
            onClick={onDo}
          >
            {isSending ? doingWords : doWords}
          </button>
        </div>
        {footer}
      </div>
    </dialog>
  );
}
