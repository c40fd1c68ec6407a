"use client";

import { useId, useRef } from "react";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { type AskedTypes, FACES_OF, PIECE_CHOICES } from "@/lib/sittings";
import type { SectionDraft } from "./draft";
import { FindType } from "./find-type";

interface TypesLineProps {
  readonly draft: SectionDraft;
  readonly onChange: (types: AskedTypes | undefined) => void;
}

/** Which imperfections a section's piece must have: those named, each to be taken off, and the catalogue to search for more. */
export function TypesLine({ draft: { section, piece }, onChange }: TypesLineProps) {
  const id = useId();
  const search = useRef<HTMLInputElement>(null);
  const { includes, among } = piece.types ?? NOTHING_ASKED;
  const most = PIECE_CHOICES[section].blueprints[piece.blueprint].indications;
  const isOver = includes.length > most;
  const change = (types: readonly ImperfectionType[]) =>
    onChange(types.length > 0 || among !== "any" ? { includes: types, among } : undefined);
  const takeOff = (type: ImperfectionType) => {
    change(includes.filter((one) => one !== type));
    // the button that was pressed is gone
    search.current?.focus();
  };
  return (
    <fieldset className="my-2 min-w-0" data-types={section}>
      <legend className="font-medium">
        Imperfections that must be on it<span className="sr-only">, {SECTION_WORDS[section]}</span>
      </legend>
      {includes.length > 0 && (
        <ul aria-label="Must be on it" className="mt-1.5 flex flex-wrap gap-2">
          {includes.map((type) => (
            <li key={type}>
              <Chip type={type} onTakeOff={() => takeOff(type)} />
            </li>
          ))}
        </ul>
      )}
      <div className="mt-1.5">
        <FindType
          input={search}
          label={`Imperfection that must be on the ${SECTION_WORDS[section]}`}
          faces={FACES_OF[section]}
          without={includes}
          isInvalid={isOver}
          describedBy={`${id}-note`}
          onPick={(type) => change([...includes, type])}
        />
      </div>
      <p id={`${id}-note`} className={`mt-1 text-sm ${isOver ? "font-medium text-missed" : "text-ink-2"}`}>
        {isOver ? tooMany(most) : note(includes.length, most)}
      </p>
    </fieldset>
  );
}

const NOTHING_ASKED: AskedTypes = { includes: [], among: "any" };

const tooMany = (most: number): string =>
  most === 0
    ? "Nothing is to be found on a clean piece: take these off, or choose another blueprint."
    : `This blueprint has at most ${most} indications: take some off, or choose another blueprint.`;

function note(count: number, most: number): string {
  if (most === 0) return "A clean piece has none: choose another blueprint to name some.";
  if (count === most) return "That is as many as this blueprint has indications.";
  return count === 0
    ? "Name some, or leave it empty for whatever comes. The front page says nothing of it."
    : "Each comes at least once; the rest is whatever comes. The front page says nothing of it.";
}

function Chip({ type, onTakeOff }: { readonly type: ImperfectionType; readonly onTakeOff: () => void }) {
  return (
    <button
      type="button"
      onClick={onTakeOff}
      className="flex min-h-11 cursor-pointer items-center gap-2 rounded border border-ink-2 bg-paper-2 px-3 text-left text-sm hover:bg-paper"
    >
      <span>
        {imperfection(type).name} <span className="whitespace-nowrap text-ink-2">{imperfection(type).number}</span>
        <span className="sr-only">, take off</span>
      </span>
      <svg viewBox="0 0 12 12" className="size-3 shrink-0" aria-hidden="true">
        <path d="M2.5 2.5 9.5 9.5M9.5 2.5 2.5 9.5" fill="none" stroke="currentColor" strokeWidth="2" />
      </svg>
    </button>
  );
}
