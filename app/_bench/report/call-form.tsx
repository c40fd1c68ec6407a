"use client";
import { type Dispatch, type FocusEvent, useEffect, useRef } from "react";
import type { WritingEvent } from "@/lib/bench";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import { type JointKind, PIECES } from "@/lib/weld";
import { FACE_NAMES, isPoint, SIZE_LABELS } from "./call-words";
import { NumberField } from "./number-field";
import { SentenceChoice } from "./sentence-choice";
import { TypePicker } from "./type-picker";

export interface CallFormProps {
  readonly kind: JointKind;
  readonly call: Call;
  readonly number: number;
  /** Whether it is only to be read. */
  readonly isClosed: boolean;
  /** Whether there are criteria to sentence it by. */
  readonly isSentenced: boolean;
  readonly write: Dispatch<WritingEvent>;
  readonly onShow: () => void;
  readonly onRemove: () => void;
}

/** One row of the report, open: its fields in the order they are read out. */
export function CallForm({ kind, call, number, isClosed, isSentenced, write, onShow, onRemove }: CallFormProps) {
  const { faces, length, halfWidth } = PIECES[kind];
  const form = useRef<HTMLFieldSetElement>(null);
  const sizeKind = call.type ? imperfection(call.type).size : null;
  const onLeave = () => write({ kind: "leave-field" });
  // between the two ends both may be under way: they are put in order when neither is written any more
  const onLeaveEnd = (event: FocusEvent) => {
    const isOtherEnd = event.relatedTarget instanceof Element && event.relatedTarget.closest("[data-end]") !== null;
    if (!isOtherEnd) onLeave();
  };

  // an indication just drawn needs its name next
  const { id, type } = call;
  const isUnnamed = type === null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the row is opened
  useEffect(() => {
    form.current?.scrollIntoView({ block: "nearest" });
    if (isUnnamed) form.current?.querySelector<HTMLInputElement>('[role="combobox"]')?.focus({ preventScroll: true });
  }, [id]);

  const name = (value: ImperfectionType | null) => {
    write({ kind: "change", id: call.id, field: "type", value });
    // a point that turns out to be a line has no end yet
    if (!value || imperfection(value).extent !== "line" || call.end !== null) return;
    requestAnimationFrame(() => form.current?.querySelector<HTMLInputElement>('[data-end="to"]')?.focus());
  };

  return (
    <fieldset ref={form} disabled={isClosed} className="space-y-2.5 border-lamp border-l-4 bg-sheet px-3 py-3">
      <legend className="sr-only">Indication {number}</legend>
      {faces.length > 1 && (
        <div className="flex gap-2" role="radiogroup" aria-label="Face">
          {faces.map((face) => (
            <label
              key={face}
              className="relative flex h-11 flex-1 cursor-pointer items-center justify-center rounded border border-line text-sm has-checked:border-ink has-checked:bg-ink has-checked:text-sheet has-focus-visible:outline-3 has-focus-visible:outline-lamp"
            >
              <input
                type="radio"
                name={`face-${call.id}`}
                checked={call.face === face}
                onChange={() => write({ kind: "change", id: call.id, field: "face", value: face })}
                className="sr-only"
              />
              {FACE_NAMES[face]}
            </label>
          ))}
        </div>
      )}
      <TypePicker face={call.face} value={call.type} onChange={name} />
      <div className="flex gap-2">
        <NumberField
          end="from"
          label={isPoint(call) ? "At, from the datum" : "From"}
          value={call.start}
          min={0}
          max={length}
          onChange={(value) => write({ kind: "change", id: call.id, field: "start", value })}
          onLeave={onLeaveEnd}
        />
        {!isPoint(call) && (
          <NumberField
            end="to"
            label="To"
            value={call.end}
            min={0}
            max={length}
            onChange={(value) => write({ kind: "change", id: call.id, field: "end", value })}
            onLeave={onLeaveEnd}
          />
        )}
        <NumberField
          label={kind === "butt" ? "Across (A +)" : "Across (base +)"}
          hint={kind === "fillet" ? "As seen into the corner" : undefined}
          value={call.across}
          min={-halfWidth}
          max={halfWidth}
          onChange={(value) => write({ kind: "change", id: call.id, field: "across", value })}
          onLeave={onLeave}
        />
      </div>
      {sizeKind && (
        <div className="flex items-end gap-2">
          <NumberField
            label={SIZE_LABELS[sizeKind]}
            value={call.size}
            min={0}
            max={50}
            onChange={(value) => write({ kind: "change", id: call.id, field: "size", value })}
            onLeave={onLeave}
          />
        </div>
      )}
      {isSentenced && (
        <SentenceChoice
          name={`sentence-${call.id}`}
          label={`Sentence on indication ${number}`}
          value={call.sentence}
          onChange={(value) => write({ kind: "change", id: call.id, field: "sentence", value })}
        />
      )}
      <div className="flex justify-between gap-2 pt-1">
        <button type="button" className="h-11 rounded px-3 text-action text-sm underline" onClick={onShow}>
          Show it on the {kind === "butt" ? "plate" : "weld"}
        </button>
        <button type="button" className="h-11 rounded px-3 text-missed text-sm underline" onClick={onRemove}>
          Delete this row
        </button>
      </div>
    </fieldset>
  );
}
