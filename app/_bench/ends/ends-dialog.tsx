"use client";
import { useEffect, useRef, useState } from "react";
import { FEELER_LEAVES, type LeafFit, tryLeaf } from "@/lib/gauges";
import type { Call } from "@/lib/report";
import { type EndViews, FILLET_LENGTH, feeledGap } from "@/lib/weld";
import { EndPicture } from "./end-picture";
import { useEnds } from "./use-ends";

type End = keyof EndViews;
const ENDS: readonly End[] = ["datum", "farEnd"];
const END_NAMES: Readonly<Record<End, string>> = { datum: "Datum end", farEnd: "Far end" };
const END_PLACES: Readonly<Record<End, number>> = { datum: 0, farEnd: FILLET_LENGTH };

/** What a leaf says of the gap, for whoever asks. */
const FIT_WORDS: Readonly<Record<LeafFit, string>> = {
  "does-not-go": "It does not go in: the gap is narrower.",
  fits: "It goes in and has no play: one leaf more would not go.",
  loose: "It goes in with play: the gap is wider.",
};

export interface EndsDialogProps {
  readonly practiceId: string;
  readonly mayAskReading: boolean;
  /** The open row, where its size is a gap. */
  readonly gapRow: { readonly call: Call; readonly number: number } | null;
  readonly onTake: (id: string, gap: number) => void;
  /** Writes a new row at an end of the weld, x mm from the datum; null where no more is written. */
  readonly onAdd: ((x: number) => void) | null;
  readonly onClose: () => void;
}

/** Both ends of the joint, and the feeler set for the gap under the standing plate. */
export function EndsDialog(props: EndsDialogProps) {
  const { practiceId, mayAskReading, gapRow, onTake, onAdd, onClose } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const state = useEnds(practiceId);
  const [end, setEnd] = useState<End>("datum");
  const [at, setAt] = useState<number | null>(null);
  const [isAsked, setIsAsked] = useState(false);
  const [taken, setTaken] = useState("");
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);

  const leaf = at === null ? null : FEELER_LEAVES[at];
  const fit = state.kind === "ready" && leaf !== null ? tryLeaf(feeledGap(state.ends[end]), leaf) : null;
  const change = (next: { end?: End; at?: number | null }) => {
    if (next.end) setEnd(next.end);
    if (next.at !== undefined) setAt(next.at);
    setIsAsked(false);
    setTaken("");
  };
  const step = (by: number) =>
    change({ at: Math.max(0, Math.min(FEELER_LEAVES.length - 1, at === null ? 4 : at + by)) });
  const button = "h-11 rounded border border-line bg-sheet px-3 text-sm hover:border-ink-2 disabled:opacity-45";

  return (
    <dialog
      ref={dialog}
      aria-labelledby="ends-title"
      onClose={onClose}
      className="m-auto max-h-[94dvh] w-[min(58rem,96vw)] overflow-y-auto rounded-lg bg-paper px-5 pb-5 text-ink shadow-2xl backdrop:bg-[#000a]"
    >
      <div className="flex flex-wrap items-center justify-between gap-3 py-3">
        <h2 id="ends-title" className="font-semibold text-xl">
          The ends of the joint
        </h2>
        <button
          type="button"
          className="h-11 rounded bg-action px-5 font-semibold text-sheet"
          onClick={() => dialog.current?.close()}
        >
          Back to the bench
        </button>
      </div>
      {state.kind === "loading" && <p role="status">The piece is being turned on end...</p>}
      {state.kind === "failed" && (
        <p role="alert">
          The ends did not come from the server.{" "}
          <button type="button" className="min-h-11 px-2 text-action underline" onClick={state.again}>
            Ask for them again
          </button>
        </p>
      )}
      {state.kind === "ready" && (
        <>
          <div className="grid gap-4 sm:grid-cols-2" role="radiogroup" aria-label="Which end the feeler is tried at">
            {ENDS.map((one) => (
              <label
                key={one}
                className="cursor-pointer rounded border-2 border-line p-2 has-checked:border-ink has-focus-visible:outline-3 has-focus-visible:outline-lamp"
              >
                <span className="mb-1 flex items-center gap-2 font-medium text-sm">
                  <input
                    type="radio"
                    name="end"
                    aria-label={END_NAMES[one]}
                    checked={end === one}
                    onChange={() => change({ end: one })}
                  />
                  {END_NAMES[one]}
                </span>
                <EndPicture
                  end={state.ends[one]}
                  isMirrored={one === "farEnd"}
                  leaf={leaf !== null && fit !== null && one === end ? { thickness: leaf, fit } : null}
                  label={`${END_NAMES[one]} of the joint: base plate, standing plate and the end of the weld`}
                />
              </label>
            ))}
          </div>
          <div className="mt-4 flex flex-wrap items-center gap-2" data-feeler="">
            <p className="mr-2 font-medium text-sm">Feeler, from the side that is not welded</p>
            <button type="button" className={button} onClick={() => step(-1)} disabled={at === 0}>
              Thinner
            </button>
            <output className="min-w-24 text-center font-semibold tabular-nums" aria-live="polite">
              {leaf === null ? "no leaf out" : `${leaf.toFixed(1)} mm`}
            </output>
            <button type="button" className={button} onClick={() => step(1)} disabled={at === FEELER_LEAVES.length - 1}>
              {leaf === null ? "Take a leaf" : "Thicker"}
            </button>
            {mayAskReading && fit && (
              <button type="button" className={button} aria-expanded={isAsked} onClick={() => setIsAsked(!isAsked)}>
                How does it fit?
              </button>
            )}
            {leaf !== null && gapRow && (
              <button
                type="button"
                className={`${button} border-action text-action`}
                onClick={() => {
                  onTake(gapRow.call.id, leaf);
                  setTaken(`Written into No. ${gapRow.number}: ${leaf.toFixed(1)} mm.`);
                }}
              >
                Take {leaf.toFixed(1)} into No. {gapRow.number}, gap
              </button>
            )}
            {onAdd && (
              <button type="button" className={button} onClick={() => onAdd(END_PLACES[end])}>
                Add a row at this end
              </button>
            )}
          </div>
          <p role="status" className="mt-2 min-h-6 text-sm">
            {taken || (isAsked && fit ? FIT_WORDS[fit] : "")}
          </p>
          <p className="text-ink-2 text-sm">
            The thickest leaf that still goes under the plate is the gap. The far end is seen from its own side, so its
            weld lies to the left.
          </p>
        </>
      )}
    </dialog>
  );
}
