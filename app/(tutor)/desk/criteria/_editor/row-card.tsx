"use client";

import { useId } from "react";
import { FACE_NAMES } from "@/app/(learner)/limits/limits-view";
import { EVIDENCE_NAMES, type Problem } from "@/lib/criteria";
import { SURFACE_FACES } from "@/lib/weld";
import { type DraftRow, isOfRow, withTypes } from "./draft";
import { SmallButton, TextLine, Tick } from "./fields";
import { LimitFields } from "./limit-fields";
import { useProblem } from "./problems";
import { RangeFields } from "./range-fields";
import { RowWords } from "./row-words";
import { SumFields } from "./sum-fields";
import { TypeChoice } from "./type-choice";

interface RowCardProps {
  readonly row: DraftRow;
  /** From 1. */
  readonly number: number;
  readonly isOpen: boolean;
  readonly problems: readonly Problem[];
  readonly onOpen: (isOpen: boolean) => void;
  readonly onChange: (row: DraftRow) => void;
  readonly onRemove: () => void;
}

/** One row: closed as it reads, open with every field, what it reads like always on top. */
export function RowCard({ row, number, isOpen, problems, onOpen, onChange, onRemove }: RowCardProps) {
  const id = useId();
  const count = problems.filter((problem) => isOfRow(problem, number)).length;
  const title = `${row.clause} ${row.name}`.trim() || "no name yet";
  return (
    <li className="rounded-md border border-line bg-sheet p-4" data-row={row.key}>
      <div className="flex flex-wrap items-start justify-between gap-x-4 gap-y-1">
        <h3 className="font-semibold wrap-anywhere">
          <span className="mr-2 font-normal text-ink-2">No. {number}</span>
          {title}
        </h3>
        <div className="-my-2 flex">
          <button
            type="button"
            aria-expanded={isOpen}
            aria-controls={`${id}-fields`}
            aria-label={`${isOpen ? "Close" : "Change"} row ${number}`}
            onClick={() => onOpen(!isOpen)}
            className="min-h-11 cursor-pointer rounded px-3 font-medium text-action text-sm underline underline-offset-4 hover:bg-paper-2"
          >
            {isOpen ? "Close" : "Change"}
          </button>
          <SmallButton label="Remove" name={`Remove row ${number}`} onClick={onRemove} />
        </div>
      </div>
      <RowWords row={row} />
      {!isOpen && count > 0 && (
        <p className="mt-1 font-medium text-missed text-sm">
          {count === 1 ? "One thing" : `${count} things`} to put right
        </p>
      )}
      <div id={`${id}-fields`} hidden={!isOpen}>
        {isOpen && <RowFields row={row} at={`rows ${number}`} onChange={onChange} />}
      </div>
    </li>
  );
}

interface RowFieldsProps {
  readonly row: DraftRow;
  readonly at: string;
  readonly onChange: (row: DraftRow) => void;
}

function RowFields({ row, at, onChange }: RowFieldsProps) {
  return (
    <div className="mt-3 grid grid-cols-[minmax(0,1fr)] gap-5 border-line border-t pt-3">
      <TypeChoice at={at} types={row.types} onChange={(types) => onChange(withTypes(row, types))} />
      <Faces row={row} at={at} onChange={onChange} />
      <fieldset className="min-w-0">
        <legend className="font-semibold text-sm">The limit on each by itself</legend>
        <div className="mt-1">
          <LimitFields at={`${at}, limit`} limit={row.limit} onChange={(limit) => onChange({ ...row, limit })} />
        </div>
      </fieldset>
      <RangeFields at={at} ranges={row.ranges} onChange={(ranges) => onChange({ ...row, ranges })} />
      <SumFields at={at} sums={row.sums} onChange={(sums) => onChange({ ...row, sums })} />
      <fieldset className="min-w-0">
        <legend className="font-semibold text-sm">Where it is written</legend>
        <div className="mt-1 grid gap-3 sm:grid-cols-[12rem_minmax(0,1fr)]">
          <TextLine
            fields={[`${at}, clause`]}
            label="Clause"
            value={row.clause}
            onChange={(clause) => onChange({ ...row, clause })}
          />
          <TextLine
            fields={[`${at}, name`]}
            label="Name of the row"
            value={row.name}
            onChange={(name) => onChange({ ...row, name })}
          />
        </div>
        <TextLine
          fields={[`${at}, notes`]}
          label="Notes"
          isLong
          value={row.notes}
          onChange={(notes) => onChange({ ...row, notes })}
        />
        <TextLine
          fields={[`${at}, alsoNeeds`]}
          label="Accepted only with"
          hint="What else must be known before anything is accepted. Empty where nothing must."
          value={row.alsoNeeds}
          onChange={(alsoNeeds) => onChange({ ...row, alsoNeeds })}
        />
        <p className="mt-2 text-ink-2 text-sm">How it was checked: {EVIDENCE_NAMES[row.evidence]}.</p>
      </fieldset>
    </div>
  );
}

function Faces({ row, at, onChange }: RowFieldsProps) {
  const { problem } = useProblem(`${at}, faces`);
  return (
    <fieldset className="min-w-0">
      <legend className="font-semibold text-sm">Faces</legend>
      <div className="flex flex-wrap gap-x-6">
        {SURFACE_FACES.map((face) => (
          <Tick
            key={face}
            label={FACE_NAMES[face]}
            isOn={row.faces.includes(face)}
            isInvalid={problem !== null}
            onChange={(isOn) =>
              onChange({
                ...row,
                faces: SURFACE_FACES.filter((one) => (one === face ? isOn : row.faces.includes(one))),
              })
            }
          />
        ))}
      </div>
      {problem && <p className="font-medium text-missed text-sm">{problem}</p>}
    </fieldset>
  );
}
