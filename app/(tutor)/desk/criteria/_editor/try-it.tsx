"use client";

import { useMemo, useState } from "react";
import type { FieldName } from "@/app/(learner)/limits/field-facts";
import { FACE_NAMES, fieldsAsked, START_NUMBERS, subjectOf } from "@/app/(learner)/limits/limits-view";
import { stretchesText } from "@/app/(learner)/limits/limits-words";
import { OutcomeSign } from "@/app/(learner)/limits/outcome-sign";
import { ValueField } from "@/app/(learner)/limits/value-field";
import { askedOf, COMPARED_WELD, type Criteria, compare, findingText } from "@/lib/criteria";
import { type ImperfectionType, imperfection, typesOn } from "@/lib/imperfections";
import { SURFACE_FACES, type SurfaceFace } from "@/lib/weld";
import type { DraftRow } from "./draft";
import { Choice as ChoiceField } from "./fields";

interface TryItProps {
  /** As far as it is right, with what it builds on. */
  readonly criteria: Criteria;
  /** Numbers of the rows that are not right yet. */
  readonly leftOut: readonly number[];
  /** The row that is being written: what it speaks of is tried. */
  readonly row: DraftRow | undefined;
}

interface Choice {
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  /** Key of the row that was open. */
  readonly row: number | null;
}

/** One imperfection, and the sentence on it by the set as it stands. */
export function TryIt({ criteria, leftOut, row }: TryItProps) {
  const [choice, setChoice] = useState<Choice | null>(null);
  const [numbers, setNumbers] = useState(START_NUMBERS);
  const first = row?.types[0];
  // another row is tried with what it speaks of
  const chosen = choice && (row === undefined || choice.row === row.key) ? choice : null;
  const choose = (next: Omit<Choice, "row">) => setChoice({ ...next, row: row?.key ?? null });
  const face: SurfaceFace =
    chosen?.face ?? row?.faces.find((one) => first === undefined || typesOn(one).includes(first)) ?? "cap";
  const offered = typesOn(face);
  const wanted = chosen?.type ?? first ?? "continuous-undercut";
  const type = offered.includes(wanted) ? wanted : offered[0];
  const asked = useMemo(() => askedOf([criteria], type, face), [criteria, type, face]);
  const comparison = useMemo(
    () => compare([criteria], subjectOf({ face, type, numbers }, asked)),
    [criteria, face, type, numbers, asked],
  );
  const [{ sentence, stretches }] = comparison.sets;
  const set = (name: FieldName, value: number) => setNumbers((now) => ({ ...now, [name]: value }));
  return (
    <div className="mt-3 grid gap-3" data-try>
      <ChoiceField
        label="Weld"
        value={face}
        choices={SURFACE_FACES.map((one) => [one, FACE_NAMES[one]] as const)}
        onChange={(next) => choose({ face: next, type })}
      />
      <ChoiceField
        label="Imperfection"
        value={type}
        choices={offered.map((one) => [one, `${imperfection(one).number} ${imperfection(one).name}`] as const)}
        onChange={(next) => choose({ face, type: next })}
      />
      {fieldsAsked(asked).map((name) => (
        <ValueField key={name} name={name} value={numbers[name]} onChange={(value) => set(name, value)} />
      ))}
      <div className="rounded border border-line bg-paper-2 p-3 text-sm wrap-anywhere" role="status">
        {leftOut.length > 0 && (
          <p className="mb-2 border-missed border-l-4 pl-2 font-medium">
            Without {leftOut.length === 1 ? "row" : "rows"} {leftOut.join(", ")}: something there has to be put right
            first.
          </p>
        )}
        <OutcomeSign outcome={sentence.outcome} />
        <p className="mt-1 font-medium">{stretchesText(stretches, comparison.axis)}</p>
        {sentence.findings.map((finding) => (
          <p key={`${finding.row}${finding.rule}`} className="mt-1">
            {findingText(finding)}
          </p>
        ))}
      </div>
      <p className="text-ink-2 text-sm">It lies alone in the middle of a weld of {COMPARED_WELD} mm.</p>
    </div>
  );
}
