"use client";
import { type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
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
  const list = useRef<HTMLDivElement>(null);
  const [text, setText] = useState<string | null>(null);
  const [chosen, setChosen] = useState(0);
  const isOpen = text !== null;
  const groups = byFamily(findTypes(face, text ?? ""));
  // a search keeps its best-first order; the full list is by family in any case
  const offered = text ? findTypes(face, text) : groups.flatMap(({ types }) => types);
  const optionId = (type: ImperfectionType) => `${id}-${type}`;

  useEffect(() => {
    const type = offered[chosen];
    if (isOpen && type) list.current?.querySelector(`[data-type="${type}"]`)?.scrollIntoView({ block: "nearest" });
  });

  const pick = (type: ImperfectionType) => {
    onChange(type);
    setText(null);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    switch (event.key) {
      case "ArrowDown":
      case "ArrowUp": {
        event.preventDefault();
        if (!isOpen) return open();
        const step = event.key === "ArrowDown" ? 1 : -1;
        return setChosen((now) => (now + step + offered.length) % Math.max(1, offered.length));
      }
      case "Enter":
        event.preventDefault();
        if (isOpen && offered[chosen]) pick(offered[chosen]);
        return;
      case "Escape":
        if (isOpen) event.stopPropagation();
        return setText(null);
    }
  };
  const open = () => {
    setText("");
    setChosen(Math.max(0, value ? groups.flatMap(({ types }) => types).indexOf(value) : 0));
  };

  const option = (type: ImperfectionType) => {
    const { name, number } = imperfection(type);
    const isChosen = offered[chosen] === type;
    return (
      <div
        key={type}
        id={optionId(type)}
        data-type={type}
        role="option"
        tabIndex={-1}
        aria-selected={isChosen}
        className={`flex min-h-11 cursor-pointer items-center justify-between gap-3 px-3 py-1.5 text-sm ${isChosen ? "bg-action text-sheet" : "hover:bg-paper-2"}`}
        onPointerDown={(event) => {
          event.preventDefault();
          pick(type);
        }}
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
        id={id}
        role="combobox"
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={isOpen && offered[chosen] ? optionId(offered[chosen]) : undefined}
        autoComplete="off"
        spellCheck={false}
        placeholder="Type two letters, or press down for the list"
        value={text ?? (value ? `${imperfection(value).name} (${imperfection(value).number})` : "")}
        onChange={(event) => {
          setText(event.target.value);
          setChosen(0);
        }}
        onFocus={(event) => event.target.select()}
        onClick={() => !isOpen && open()}
        onBlur={() => setText(null)}
        onKeyDown={onKeyDown}
        className="h-11 w-full rounded border border-line bg-sheet px-2 text-sm"
      />
      {isOpen && (
        <div
          ref={list}
          id={`${id}-list`}
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
