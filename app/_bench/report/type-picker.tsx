"use client";
import { useId } from "react";
import { useTypeSearch } from "@/app/_ui/use-type-search";
import { byFamily, FAMILY_NAMES, findTypes } from "@/lib/bench";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { SurfaceFace } from "@/lib/weld";

export interface TypePickerProps {
  readonly face: SurfaceFace;
  readonly value: ImperfectionType | null;
  readonly onChange: (type: ImperfectionType | null) => void;
}

/** What it is: type two letters, or a number, or open the list by family. Only what occurs on the face is offered. */
export function TypePicker({ face, value, onChange }: TypePickerProps) {
  const id = useId();
  const groups = byFamily(findTypes(face, ""));
  const { text, offered, chosen, list, listId, fieldProps, optionProps } = useTypeSearch({
    // a search keeps its best-first order; the full list is by family
    offeredFor: (typed) => (typed ? findTypes(face, typed) : groups.flatMap(({ types }) => types)),
    openAt: value,
    onPick: onChange,
  });

  const option = (type: ImperfectionType) => {
    const { name, number } = imperfection(type);
    return (
      <div
        key={type}
        {...optionProps(type)}
        className={`flex min-h-11 cursor-pointer items-center justify-between gap-3 px-3 py-1.5 text-sm ${type === chosen ? "bg-action text-sheet" : "hover:bg-paper-2"}`}
      >
        <span>{name}</span>
        <span className="tabular-nums opacity-75">{number}</span>
      </div>
    );
  };

  return (
    <div>
      <label htmlFor={id} className="mb-1 block text-ink-2 text-xs">
        What it is
      </label>
      <input
        {...fieldProps}
        id={id}
        placeholder="Type two letters, or press down for the list"
        value={text ?? (value ? `${imperfection(value).name} (${imperfection(value).number})` : "")}
        onFocus={(event) => event.target.select()}
        className="h-11 w-full rounded border border-line bg-sheet px-2 text-sm"
      />
      {text !== null && (
        <div
          ref={list}
          id={listId}
          role="listbox"
          aria-label="What it is"
          className="mt-1 max-h-64 overflow-y-auto rounded border border-line bg-sheet shadow-md"
        >
          {offered.length === 0 && <p className="px-3 py-2 text-ink-2 text-sm">Nothing on this face is called that.</p>}
          {text
            ? offered.map(option)
            : groups.map(({ family, types }) => (
                // biome-ignore lint/a11y/useSemanticElements: a list box has no other element for its groups
                <div key={family} role="group" aria-label={FAMILY_NAMES[family]}>
                  <p className="bg-paper-2 px-3 py-1 font-semibold text-ink-2 text-xs">{FAMILY_NAMES[family]}</p>
                  {types.map(option)}
                </div>
              ))}
        </div>
      )}
    </div>
  );
}
