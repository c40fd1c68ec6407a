"use client";

import { useId, useState } from "react";
import { byFamily, FAMILY_NAMES, findTypes } from "@/lib/bench";
import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "@/lib/imperfections";
import { SURFACE_FACES } from "@/lib/weld";
import { Tick } from "./fields";
import { useProblem } from "./problems";

interface TypeChoiceProps {
  /** Row in the schema: "rows 1". */
  readonly at: string;
  readonly types: readonly ImperfectionType[];
  readonly onChange: (types: readonly ImperfectionType[]) => void;
}

/** Which imperfections a row speaks of: those chosen on top, each to be taken off, and the catalogue to search below. */
export function TypeChoice({ at, types, onChange }: TypeChoiceProps) {
  const id = useId();
  const [text, setText] = useState("");
  const { problem } = useProblem(`${at}, types`);
  const wanted = new Set(SURFACE_FACES.flatMap((face) => findTypes(face, text)));
  const found = IMPERFECTION_TYPES.filter((type) => wanted.has(type));
  const toggle = (type: ImperfectionType) =>
    onChange(types.includes(type) ? types.filter((one) => one !== type) : [...types, type]);
  return (
    <fieldset className="min-w-0">
      <legend className="font-semibold text-sm">Imperfections</legend>
      {types.length > 0 && (
        <ul className="mt-1 flex flex-wrap gap-2" aria-label="Chosen imperfections">
          {types.map((type) => (
            <li key={type}>
              <button
                type="button"
                onClick={() => toggle(type)}
                className="flex min-h-11 cursor-pointer items-center gap-2 rounded border border-ink-2 bg-paper-2 px-3 text-left text-sm hover:bg-paper"
              >
                <span>
                  {imperfection(type).number} {imperfection(type).name}
                  <span className="sr-only">, take off</span>
                </span>
                <svg viewBox="0 0 12 12" className="size-3 shrink-0" aria-hidden="true">
                  <path d="M2.5 2.5 9.5 9.5M9.5 2.5 2.5 9.5" fill="none" stroke="currentColor" strokeWidth="2" />
                </svg>
              </button>
            </li>
          ))}
        </ul>
      )}
      <label htmlFor={id} className="mt-2 block font-medium text-sm">
        Search the catalogue
      </label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        placeholder="Name, number of ISO 6520-1 or family"
        value={text}
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-note` : undefined}
        onChange={(event) => setText(event.target.value)}
        className="mt-1 h-11 w-full rounded border border-ink-2 bg-white px-3 aria-invalid:border-2 aria-invalid:border-missed"
      />
      {problem && (
        <p id={`${id}-note`} className="mt-1 font-medium text-missed text-sm">
          {problem}
        </p>
      )}
      <section
        aria-label="Catalogue"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keyboard
        tabIndex={0}
        className="mt-2 h-56 overflow-y-auto rounded border border-line bg-white px-3 py-1"
      >
        {found.length === 0 && <p className="py-2 text-ink-2 text-sm">Nothing in the catalogue is called that.</p>}
        {byFamily(found).map(({ family, types: members }) => (
          <fieldset key={family}>
            <legend className="pt-2 font-semibold text-ink-2 text-xs">{FAMILY_NAMES[family]}</legend>
            <div className="grid gap-x-4 sm:grid-cols-2">
              {members.map((type) => (
                <Tick
                  key={type}
                  label={imperfection(type).name}
                  note={imperfection(type).number}
                  isOn={types.includes(type)}
                  onChange={() => toggle(type)}
                />
              ))}
            </div>
          </fieldset>
        ))}
      </section>
    </fieldset>
  );
}
