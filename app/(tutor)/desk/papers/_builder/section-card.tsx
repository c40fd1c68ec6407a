"use client";

import { Fragment, useId } from "react";
import { PART_NAMES } from "@/app/_papers/paper-words";
import { SECTION_NAMES, SECTION_WORDS } from "@/app/_ui/section-names";
import type { CriteriaGroup } from "@/lib/criteria";
import { SECTION_PARTS } from "@/lib/results";
import { DRAWN, PIECE_CHOICES } from "@/lib/sittings";
import { POSITION_NAMES, PROCESS_NAMES } from "@/lib/weld";
import { BlueprintPanel } from "./blueprint-panel";
import { BLUEPRINT_NAMES } from "./blueprint-words";
import { ChoiceIn, CONTROL, NumberIn, SmallButton } from "./controls";
import type { SectionDraft } from "./draft";
import { ProblemLines, useField } from "./problems";
import { TypesLine } from "./types-line";

interface SectionCardProps {
  readonly draft: SectionDraft;
  /** Its number in the paper, from 0. */
  readonly at: number;
  readonly criteria: readonly CriteriaGroup[];
  readonly onChange: (draft: SectionDraft) => void;
  /** Absent where there is nothing before it, or no other section. */
  readonly onMoveUp?: () => void;
  readonly onTakeOut?: () => void;
}

const SENTENCE = "leading-[3.25rem]";

/** One section of a paper as it will be read, its numbers and choices open to change; its blueprint beside it. */
export function SectionCard({ draft, at, criteria, onChange, onMoveUp, onTakeOut }: SectionCardProps) {
  const id = useId();
  const { section } = draft;
  const name = SECTION_NAMES[section];
  const words = SECTION_WORDS[section];
  const field = (of: string) => `sections[${at}].${of}`;
  const change = (changes: Partial<SectionDraft>) => onChange({ ...draft, ...changes });
  return (
    <section
      aria-labelledby={id}
      data-section={section}
      className="grid min-w-0 gap-x-8 gap-y-6 rounded-md border border-line bg-sheet p-5 xl:grid-cols-[minmax(0,1fr)_30rem]"
    >
      <div className="min-w-0">
        <div className="flex flex-wrap items-center justify-between gap-2">
          <h2 id={id} className="font-semibold text-lg">
            {name}
          </h2>
          <div className="flex flex-wrap">
            {onMoveUp && <SmallButton label="Move up" name={`Move up: ${name}`} onClick={onMoveUp} />}
            {onTakeOut && <SmallButton label="Take out" name={`Take out: ${name}`} onClick={onTakeOut} />}
          </div>
        </div>
        <p className={SENTENCE}>
          You have{" "}
          <NumberIn
            field={field("minutes")}
            label={`Minutes for the ${words}`}
            value={draft.minutes}
            onChange={(minutes) => change({ minutes })}
          />{" "}
          minutes, and you need{" "}
          <NumberIn
            field={field("passMark")}
            label={`Pass mark of the ${words}`}
            value={draft.passMark}
            onChange={(passMark) => change({ passMark })}
          />{" "}
          of 100 marks to pass.
        </p>
        <ProblemLines of={{ [field("minutes")]: "Minutes", [field("passMark")]: "Pass mark" }} />
        <PieceSentence draft={draft} at={at} onChange={onChange} />
        <TypesLine draft={draft} onChange={(types) => change({ piece: { ...draft.piece, types } })} />
        <WeightsSentence draft={draft} at={at} onChange={onChange} />
        <CriteriaSentence draft={draft} at={at} groups={criteria} onChange={onChange} />
        <AidsSentence draft={draft} at={at} onChange={onChange} />
        <p className={SENTENCE}>
          After the report there are{" "}
          <NumberIn
            field={field("questionCount")}
            label={`Questions on the ${words}`}
            value={draft.questionCount}
            onChange={(questionCount) => change({ questionCount })}
          />{" "}
          questions on the piece, its criteria, its drawing and the trade.
        </p>
        <ProblemLines of={{ [field("questionCount")]: "Questions" }} />
      </div>
      <div className="min-w-0 border-line max-xl:border-t max-xl:pt-4 xl:border-l xl:pl-6">
        <BlueprintPanel draft={draft} />
      </div>
    </section>
  );
}

interface SentenceProps {
  readonly draft: SectionDraft;
  readonly at: number;
  readonly onChange: (draft: SectionDraft) => void;
}

function PieceSentence({ draft, at, onChange }: SentenceProps) {
  const { section, piece } = draft;
  const words = SECTION_WORDS[section];
  const { processes, positions, blueprints } = PIECE_CHOICES[section];
  const [least, most] = blueprints[piece.blueprint].thickness;
  const change = (changes: Partial<SectionDraft["piece"]>) => onChange({ ...draft, piece: { ...piece, ...changes } });
  const field = (of: string) => `sections[${at}].piece.${of}`;
  const thicknesses = Array.from({ length: most - least + 1 }, (_, n) => least + n);
  // one that no longer fits another blueprint stays to be seen, with what is wrong about it
  const outside = piece.thickness !== DRAWN && !thicknesses.includes(piece.thickness) ? [piece.thickness] : [];
  return (
    <>
      <p className={SENTENCE}>
        On the bench lies {section === "plate" ? "a butt-welded plate" : "a fillet-welded T-joint"}, made{" "}
        <ChoiceIn
          field={field("blueprint")}
          label={`Blueprint of the ${words}`}
          value={piece.blueprint}
          choices={Object.keys(blueprints).map((one) => [one, BLUEPRINT_NAMES[section][one]])}
          onChange={(blueprint) => change({ blueprint })}
        />
        . Process{" "}
        <ChoiceIn
          field={field("process")}
          label={`Process of the ${words}`}
          value={piece.process}
          choices={[[DRAWN, "as it comes"], ...processes.map((one) => [one, `${one}, ${PROCESS_NAMES[one]}`] as const)]}
          onChange={(process) => change({ process })}
        />
        , position{" "}
        <ChoiceIn
          field={field("position")}
          label={`Position of the ${words}`}
          value={piece.position}
          choices={[
            [DRAWN, "as it comes"],
            ...positions.map((one) => [one, `${one}, ${POSITION_NAMES[one]}`] as const),
          ]}
          onChange={(position) => change({ position })}
        />
        , {section === "plate" ? "thickness" : "thickness of the base plate"}{" "}
        <ChoiceIn
          field={field("thickness")}
          label={`Thickness of the ${words}`}
          value={String(piece.thickness)}
          choices={[
            [DRAWN, "as it comes"],
            ...[...outside, ...thicknesses].map((mm) => [String(mm), `${mm} mm`] as const),
          ]}
          onChange={(thickness) => change({ thickness: thickness === DRAWN ? DRAWN : Number(thickness) })}
        />
        .
      </p>
      <ProblemLines
        of={{
          [field("blueprint")]: "Blueprint",
          [field("process")]: "Process",
          [field("position")]: "Position",
          [field("thickness")]: "Thickness",
        }}
      />
    </>
  );
}

function WeightsSentence({ draft, at, onChange }: SentenceProps) {
  const { section, weights } = draft;
  const field = (of: string) => `sections[${at}].weights${of}`;
  const values = SECTION_PARTS.map((part) => Number(weights[part].replace(",", ".")));
  const sum = values.reduce((total, value) => total + value, 0);
  const shares =
    sum > 0 && values.every((value) => value >= 0) ? values.map((value) => Math.round((100 * value) / sum)) : null;
  return (
    <>
      <p className={SENTENCE}>
        The marks are shared out:{" "}
        {SECTION_PARTS.map((part, n) => (
          <Fragment key={part}>
            <span className="whitespace-nowrap">
              <NumberIn
                field={field(`.${part}`)}
                label={`Weight of ${PART_NAMES[part]}, ${SECTION_WORDS[section]}`}
                value={weights[part]}
                onChange={(weight) => onChange({ ...draft, weights: { ...weights, [part]: weight } })}
              />{" "}
              parts for {PART_NAMES[part]}
              {shares && <span className="text-ink-2"> ({shares[n]} %)</span>}
              {n < SECTION_PARTS.length - 1 ? "," : "."}
            </span>{" "}
          </Fragment>
        ))}
      </p>
      <ProblemLines
        of={{
          [field("")]: "Weights",
          ...Object.fromEntries(SECTION_PARTS.map((part) => [field(`.${part}`), `Weight of ${PART_NAMES[part]}`])),
        }}
      />
    </>
  );
}

function CriteriaSentence({
  draft,
  at,
  groups,
  onChange,
}: SentenceProps & { readonly groups: readonly CriteriaGroup[] }) {
  const field = `sections[${at}].criteriaId`;
  const control = useField(field);
  return (
    <>
      <p className={SENTENCE}>
        You judge by{" "}
        <select
          {...control}
          aria-label={`Criteria for the ${SECTION_WORDS[draft.section]}`}
          value={draft.criteriaId}
          onChange={(event) => onChange({ ...draft, criteriaId: event.target.value })}
          className={`${CONTROL} field-sizing-content cursor-pointer`}
        >
          {groups.map(({ title, sets }) => (
            <optgroup key={title} label={title}>
              {sets.map(({ id, name, edition }) => (
                <option key={id} value={id}>
                  {name}, {edition}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
        .
      </p>
      <ProblemLines of={{ [field]: "Criteria" }} />
    </>
  );
}

function AidsSentence({ draft, at, onChange }: SentenceProps) {
  const { aids, section } = draft;
  const words = SECTION_WORDS[section];
  const field = (of: string) => `sections[${at}].aids.${of}`;
  const change = (changes: Partial<SectionDraft["aids"]>) => onChange({ ...draft, aids: { ...aids, ...changes } });
  return (
    <p className={SENTENCE}>
      The table of criteria{" "}
      <ChoiceIn
        field={field("criteriaTable")}
        label={`Table of criteria, ${words}`}
        value={aids.criteriaTable}
        choices={[
          ["open", "lies open at the bench"],
          ["closed", "stays closed"],
        ]}
        onChange={(criteriaTable) => change({ criteriaTable })}
      />
      ; you have{" "}
      <ChoiceIn
        field={field("lens")}
        label={`Lens, ${words}`}
        value={aids.lens ? "yes" : "no"}
        choices={[
          ["yes", "a lens"],
          ["no", "no lens"],
        ]}
        onChange={(lens) => change({ lens: lens === "yes" })}
      />
      ; “What does it read?”{" "}
      <ChoiceIn
        field={field("asksReading")}
        label={`What does it read, ${words}`}
        value={aids.asksReading ? "yes" : "no"}
        choices={[
          ["no", "explains no scale: you read the gauges yourself"],
          ["yes", "explains the scale of a gauge"],
        ]}
        onChange={(asks) => change({ asksReading: asks === "yes" })}
      />
      .
    </p>
  );
}
