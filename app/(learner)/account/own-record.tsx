"use client";

import { type ReactNode, useActionState, useRef } from "react";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { changeErasureRequest } from "./actions";

interface OwnRecordProps {
  /** When they asked to be erased; null where they did not, undefined for a tutor, who cannot. */
  readonly askedAt: Date | null | undefined;
  readonly change: typeof changeErasureRequest;
  /** The files. */
  readonly children: ReactNode;
}

/** What is kept of whoever is signed in: to take along, and for learners to have erased. */
export function OwnRecord({ askedAt, change, children }: OwnRecordProps) {
  const [state, send] = useActionState(change, null);
  return (
    <Sheet title="Your record" className="mt-5">
      <p className="mt-2 text-ink-2">
        What this workshop keeps about you: reports, marks with their accounts, questions, sittings, drills, progress.
        Marks that are not released yet, and what is on a piece that you have not handed in, are left out; the file
        names all that is.
      </p>
      <div className="mt-3">{children}</div>
      {askedAt !== undefined && (
        <div className="mt-5 border-line border-t pt-4">
          {state && (
            <div className="mb-3">
              <Notice isGood={state.isGood}>{state.told}</Notice>
            </div>
          )}
          {askedAt ? (
            <form action={send}>
              <p>
                You asked to be erased on <LocalTime at={askedAt} />. Your tutor sees it and does it; until then
                everything works as before.
              </p>
              <div className="mt-3">
                <Button type="submit" look="quiet" name="to" value="keep">
                  Take that back
                </Button>
              </div>
            </form>
          ) : (
            <Ask send={send} />
          )}
        </div>
      )}
    </Sheet>
  );
}

function Ask({ send }: { readonly send: (form: FormData) => void }) {
  const question = useRef<HTMLDialogElement>(null);
  const ask = (form: FormData) => {
    question.current?.close();
    send(form);
  };
  return (
    <>
      <p className="text-ink-2">You can have it erased. It cannot be brought back, so save your record first.</p>
      <div className="mt-3">
        <Button look="quiet" onClick={() => question.current?.showModal()}>
          Ask to be erased
        </Button>
      </div>
      <dialog
        ref={question}
        aria-labelledby="ask-to-be-erased"
        className="m-auto w-full max-w-lg rounded-md border border-line bg-sheet p-6 text-ink backdrop:bg-black/50"
      >
        <h3 id="ask-to-be-erased" className="text-lg font-semibold">
          Ask your tutor to erase you?
        </h3>
        <p className="mt-2">
          Your account, reports, marks, drills and progress are erased for good. What you found and answered stays in
          sums that do not say who or when. Nothing happens until your tutor does it.
        </p>
        <form action={ask} className="mt-5 flex flex-wrap gap-3">
          <Button look="quiet" onClick={() => question.current?.close()}>
            Keep everything
          </Button>
          <Button type="submit" name="to" value="erase">
            Ask for it
          </Button>
        </form>
      </dialog>
    </>
  );
}
