"use client";

import type { RefObject } from "react";
import { useTypeSearch } from "@/app/_ui/use-type-search";
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
  const { text, offered, chosen, list, listId, fieldProps, optionProps } = useTypeSearch({
    offeredFor: (typed) => findTypes(faces, typed).filter((type) => !without.includes(type)),
    onPick,
  });
  return (
    <div className="relative max-w-xl">
      <input
        {...fieldProps}
        ref={input}
        aria-label={label}
        aria-invalid={isInvalid || undefined}
        aria-describedby={describedBy}
        placeholder="Add one: name, number of ISO 6520-1 or family"
        value={text ?? ""}
        className="h-11 w-full rounded border border-ink-2 bg-white px-3 aria-invalid:border-2 aria-invalid:border-missed"
      />
      {text !== null && (
        <div
          ref={list}
          id={listId}
          role="listbox"
          aria-label={label}
          className="absolute z-30 mt-1 max-h-72 w-full overflow-y-auto rounded border border-ink-2 bg-white shadow-md"
        >
          {offered.length === 0 && (
            <p className="px-3 py-2.5 text-ink-2 text-sm">Nothing more on such a piece is called that.</p>
          )}
          {offered.map((type) => (
            <div
              key={type}
              {...optionProps(type)}
              className={`flex min-h-11 cursor-pointer items-center justify-between gap-3 px-3 py-1.5 ${type === chosen ? "bg-action text-white" : "hover:bg-paper-2"}`}
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
