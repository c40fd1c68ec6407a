"use client";

import { type KeyboardEvent, type RefObject, useEffect, useId, useRef, useState } from "react";
import { findTypes } from "@/lib/bench";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { SurfaceFace } from "@/lib/weld";

interface FindTypeProps {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly label: string;
  readonly faces: readonly SurfaceFace[];
  /** Not offered: they are named already. */
  readonly without: readonly ImperfectionType[];
  readonly isInvalid: boolean;
  /** Id of what is said of it. */
  readonly describedBy: string;
  readonly onPick: (type: ImperfectionType) => void;
}

/** Search in the catalogue by name, number or family; what is picked is told, and the field is empty for the next. */
export function FindType({ input, label, faces, without, isInvalid, describedBy, onPick }: FindTypeProps) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  /** What is typed; null while the list is closed. */
  const [text, setText] = useState<string | null>(null);
  const [at, setAt] = useState(0);
  const isOpen = text !== null;
  const offered = findTypes(faces, text ?? "").filter((type) => !without.includes(type));
  const optionId = (type: ImperfectionType) => `${id}-${type}`;

  useEffect(() => {
    if (isOpen) list.current?.querySelector("[aria-selected=true]")?.scrollIntoView({ block: "nearest" });
  });

  const open = () => {
    setText("");
    setAt(0);
  };
  const pick = (type: ImperfectionType) => {
    onPick(type);
    setText(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    switch (event.key) {
      case "ArrowDown":
      case "ArrowUp": {
        event.preventDefault();
        if (!isOpen) return open();
        const step = event.key === "ArrowDown" ? 1 : -1;
        return setAt((now) => (now + step + offered.length) % Math.max(1, offered.length));
      }
      case "Enter":
        event.preventDefault();
        if (isOpen && offered[at]) pick(offered[at]);
        return;
      case "Escape":
        return setText(null);
    }
  };
  return (
    <div className="relative max-w-xl">
      <input
        ref={input}
        role="combobox"
        aria-label={label}
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={isOpen && offered[at] ? optionId(offered[at]) : undefined}
        aria-invalid={isInvalid || undefined}
        aria-describedby={describedBy}
        autoComplete="off"
        spellCheck={false}
        placeholder="Add one: name, number of ISO 6520-1 or family"
        value={text ?? ""}
        onChange={(event) => {
          setText(event.target.value);
          setAt(0);
        }}
        onClick={() => !isOpen && open()}
        onBlur={() => setText(null)}
        onKeyDown={onKeyDown}
        className="h-11 w-full rounded border border-ink-2 bg-white px-3 aria-invalid:border-2 aria-invalid:border-missed"
      />
      {isOpen && (
        <div
          ref={list}
          id={`${id}-list`}
          role="listbox"
          aria-label={label}
          className="absolute z-30 mt-1 max-h-72 w-full overflow-y-auto rounded border border-ink-2 bg-white shadow-md"
        >
          {offered.length === 0 && (
            <p className="px-3 py-2.5 text-ink-2 text-sm">Nothing more on such a piece is called that.</p>
          )}
          {offered.map((type, n) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys go to the field, which has the focus all the while
            <div
              key={type}
              id={optionId(type)}
              role="option"
              tabIndex={-1}
              aria-selected={n === at}
              className={`flex min-h-11 cursor-pointer items-center justify-between gap-3 px-3 py-1.5 ${n === at ? "bg-action text-white" : "hover:bg-paper-2"}`}
              // the field keeps the focus; a touch may be the begin of scrolling, so that it picks with the click
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => pick(type)}
            >
              <span>{imperfection(type).name}</span>
              <span className="tabular-nums">{imperfection(type).number}</span>
            </div>
          ))}
        </div>
      )}
    </div>
  );
}
