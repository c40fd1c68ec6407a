"use client";

import { type ReactNode, useEffect, useId, useRef } from "react";
import { Button } from "@/app/_ui/button";

interface DialogProps {
  readonly title: string;
  /** Where closing it leads, on its button. */
  readonly back?: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A question over the page; open as long as it is there. The focus goes back where it came from. */
export function Dialog({ title, back = "Back to the board", onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const cameFrom = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (cameFrom instanceof HTMLElement) cameFrom.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby={id}
      onClose={onClose}
      className="m-auto max-h-[90vh] w-full max-w-xl overflow-y-auto rounded-md border border-line bg-sheet p-6 text-left text-ink wrap-anywhere backdrop:bg-black/50"
    >
      <h3 id={id} className="font-semibold text-lg">
        {title}
      </h3>
      {children}
      <div className="mt-6 border-line border-t pt-4">
        <Button look="quiet" onClick={() => dialog.current?.close()}>
          {back}
        </Button>
      </div>
    </dialog>
  );
}
