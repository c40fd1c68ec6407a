"use client";

import {
  type HTMLAttributes,
  type InputHTMLAttributes,
  type KeyboardEvent,
  type RefObject,
  useEffect,
  useId,
  useRef,
  useState,
} from "react";
import type { ImperfectionType } from "@/lib/imperfections";

interface TypeSearchOrder {
  /** What is offered for a text, in the order of the list; all for an empty one. */
  readonly offeredFor: (text: string) => readonly ImperfectionType[];
  /** The one that the list opens at, if it is offered. */
  readonly openAt?: ImperfectionType | null;
  readonly onPick: (type: ImperfectionType) => void;
}

export interface TypeSearch {
  /** What is typed; null while the list is closed. */
  readonly text: string | null;
  readonly offered: readonly ImperfectionType[];
  /** The one that Enter picks. */
  readonly chosen: ImperfectionType | undefined;
  readonly list: RefObject<HTMLDivElement | null>;
  readonly listId: string;
  /** For the field, beside its name and what it shows while the list is closed. */
  readonly fieldProps: InputHTMLAttributes<HTMLInputElement>;
  /** For one of the list. */
  readonly optionProps: (type: ImperfectionType) => HTMLAttributes<HTMLDivElement> & { readonly id: string };
}

/**
 * A field that searches the catalogue: typing opens the list at its best, arrows go through it round and round, Enter picks, Escape
 * closes it and nothing else. The field has the focus all the while.
 */
export function useTypeSearch({ offeredFor, openAt = null, onPick }: TypeSearchOrder): TypeSearch {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const [text, setText] = useState<string | null>(null);
  const [at, setAt] = useState(0);
  const isOpen = text !== null;
  const offered = offeredFor(text ?? "");
  const chosen = offered[at];
  const optionId = (type: ImperfectionType) => `${id}-${type}`;

  useEffect(() => {
    if (isOpen) list.current?.querySelector("[aria-selected=true]")?.scrollIntoView({ block: "nearest" });
  });

  const open = () => {
    setText("");
    setAt(openAt ? Math.max(0, offeredFor("").indexOf(openAt)) : 0);
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
        if (isOpen && chosen) pick(chosen);
        return;
      case "Escape":
        // what lies around the field may close with it as well
        if (isOpen) event.stopPropagation();
        return setText(null);
    }
  };
  return {
    text,
    offered,
    chosen,
    list,
    listId: `${id}-list`,
    fieldProps: {
      role: "combobox",
      "aria-expanded": isOpen,
      "aria-controls": `${id}-list`,
      "aria-autocomplete": "list",
      "aria-activedescendant": isOpen && chosen ? optionId(chosen) : undefined,
      autoComplete: "off",
      spellCheck: false,
      onChange: (event) => {
        setText(event.target.value);
        setAt(0);
      },
      onClick: () => !isOpen && open(),
      onBlur: () => setText(null),
      onKeyDown,
    },
    optionProps: (type) => ({
      id: optionId(type),
      role: "option",
      tabIndex: -1,
      "aria-selected": type === chosen,
      // the field keeps the focus; a touch may be the begin of scrolling, so that it picks with the click
      onMouseDown: (event) => event.preventDefault(),
      onClick: () => pick(type),
    }),
  };
}
