"use client";
import { useId, useState } from "react";
import { CAUTION } from "@/lib/criteria";
import type { CriteriaChoice } from "./criteria-choice";

interface CriteriaFieldsProps extends CriteriaChoice {
  /** Look of the line that says what is chosen. */
  readonly dim: string;
  readonly problem?: string;
}

const BOOK_WORDS = {
  open: { name: "Open table", hint: "The limits lie beside the report." },
  closed: { name: "Closed book", hint: "You know them by heart; no table at the bench." },
} as const;

/** By which criteria the piece is sentenced, and whether their table is at hand. */
export function CriteriaFields({ groups, choice, dim, problem }: CriteriaFieldsProps) {
  const id = useId();
  const [criteriaId, setCriteriaId] = useState(choice.criteriaId);
  const [book, setBook] = useState(choice.book);
  const chosen = groups.flatMap(({ sets }) => sets).find((set) => set.id === criteriaId);
  return (
    <details className="mt-4" open={problem !== undefined || undefined}>
      <summary className={`min-h-6 cursor-pointer rounded text-sm ${dim}`}>
        Sentenced by {chosen?.name} ({chosen?.edition}), {BOOK_WORDS[book].name.toLowerCase()}. Change
      </summary>
      <div className="mt-3 max-w-lg rounded bg-sheet p-4 text-ink">
        <label htmlFor={id} className="block font-medium text-sm">
          Acceptance criteria
        </label>
        <select
          id={id}
          name="criteriaId"
          value={criteriaId}
          onChange={(event) => setCriteriaId(event.target.value)}
          aria-invalid={problem ? true : undefined}
          className="mt-1 h-11 w-full rounded border border-ink-2 bg-white px-2"
        >
          {groups.map(({ title, sets }) => (
            <optgroup key={title} label={title}>
              {sets.map((set) => (
                <option key={set.id} value={set.id}>
                  {set.name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
        {problem && <p className="mt-1 font-medium text-missed text-sm">{problem}</p>}
        <fieldset className="mt-3">
          <legend className="font-medium text-sm">Table of the limits</legend>
          <div className="mt-1 grid gap-2 sm:grid-cols-2">
            {(["open", "closed"] as const).map((one) => (
              <label
                key={one}
                className="relative flex min-h-11 cursor-pointer flex-col justify-center rounded border border-line px-3 py-2 text-sm has-checked:border-ink has-checked:bg-ink has-checked:text-sheet has-focus-visible:outline-3 has-focus-visible:outline-lamp"
              >
                <input
                  type="radio"
                  name="book"
                  value={one}
                  checked={book === one}
                  onChange={() => setBook(one)}
                  className="sr-only"
                />
                <span className="font-medium">{BOOK_WORDS[one].name}</span>
                <span className="text-xs">{BOOK_WORDS[one].hint}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <p className="mt-3 text-ink-2 text-xs">{CAUTION}</p>
      </div>
    </details>
  );
}
