"use client";

import { useEffect, useId, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Sheet } from "@/app/_ui/sheet";
import type { Criteria, Problem } from "@/lib/criteria";
import { type Draft, type DraftRow, withNewRow, withRow, withRowsOf } from "./draft";
import { RowCard } from "./row-card";

interface RowListProps {
  readonly draft: Draft;
  /** The set that it builds on. */
  readonly base: Criteria | null;
  /** Key of the row that is open. */
  readonly open: number | null;
  readonly problems: readonly Problem[];
  readonly onOpen: (key: number | null) => void;
  readonly onChange: (draft: Draft) => void;
}

/** Own rows in their order, and what adds one. A row that is removed can be put back where it was. */
export function RowList({ draft, base, open, problems, onOpen, onChange }: RowListProps) {
  const [removed, setRemoved] = useState<{ readonly row: DraftRow; readonly at: number } | null>(null);
  const putBack = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (removed) putBack.current?.focus();
  }, [removed]);
  const [added, setAdded] = useState<number | null>(null);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    if (added !== null) list.current?.querySelector<HTMLElement>(`[data-row="${added}"] input`)?.focus();
  }, [added]);
  const add = (next: Draft) => {
    const { key } = next.rows[draft.rows.length];
    onChange(next);
    onOpen(key);
    setAdded(key);
  };
  const remove = (at: number) => {
    setRemoved({ row: draft.rows[at], at });
    onChange({ ...draft, rows: draft.rows.filter((_, n) => n !== at) });
  };
  const restore = () => {
    if (!removed) return;
    onChange({ ...draft, rows: draft.rows.toSpliced(removed.at, 0, removed.row) });
    setRemoved(null);
  };
  return (
    <Sheet title="Rows of your own">
      {draft.rows.length === 0 && (
        <p className="mt-2 text-ink-2">
          Each row says which imperfections it speaks of, where, and how large they may be. Add the first one.
        </p>
      )}
      <ol ref={list} className="mt-3 grid grid-cols-[minmax(0,1fr)] gap-3">
        {draft.rows.map((row, n) => (
          <RowCard
            key={row.key}
            row={row}
            number={n + 1}
            isOpen={row.key === open}
            problems={problems}
            onOpen={(isOpen) => onOpen(isOpen ? row.key : null)}
            onChange={(next) => onChange(withRow(draft, next))}
            onRemove={() => remove(n)}
          />
        ))}
      </ol>
      <div role="status">
        {removed && (
          <p className="mt-3 flex flex-wrap items-center gap-2 rounded border-found border-l-4 bg-paper-2 px-4 py-1 text-sm">
            Removed: {`${removed.row.clause} ${removed.row.name}`.trim()}.
            <button
              ref={putBack}
              type="button"
              onClick={restore}
              className="min-h-11 cursor-pointer px-2 font-semibold text-action underline"
            >
              Put it back
            </button>
          </p>
        )}
      </div>
      <div className="mt-4 flex flex-wrap items-end gap-4">
        <Button look="quiet" onClick={() => add(withNewRow(draft))}>
          Add a row
        </Button>
        {base && <TakeOver base={base} onTake={(rows) => add(withRowsOf(draft, rows))} />}
      </div>
      {draft.sections.length > 0 && (
        <p className="mt-3 text-ink-2 text-sm">
          The set also has {draft.sections.length === 1 ? "a rule" : `${draft.sections.length} rules`} about several
          imperfections in one cross section. They are kept as they came and cannot be changed here.
        </p>
      )}
    </Sheet>
  );
}

interface TakeOverProps {
  readonly base: Criteria;
  readonly onTake: (rows: Criteria["rows"]) => void;
}

/** Copies every row of a clause, since an own row on one thickness would leave the others without a limit. */
function TakeOver({ base, onTake }: TakeOverProps) {
  const id = useId();
  const judging = base.rows.filter(({ types }) => types.length > 0);
  const clauses = [...new Set(judging.map(({ clause }) => clause))];
  const [clause, setClause] = useState(clauses[0]);
  const namesOf = (one: string) =>
    [...new Set(judging.filter((row) => row.clause === one).map(({ name }) => name))].join(" / ");
  return (
    <div className="flex min-w-0 flex-1 flex-wrap items-end gap-2">
      <div className="min-w-0 flex-1">
        <label htmlFor={id} className="block font-medium text-sm">
          Or take rows over from {base.name}, to change them
        </label>
        <select
          id={id}
          value={clause}
          onChange={(event) => setClause(event.target.value)}
          className="mt-1 h-11 w-full min-w-0 cursor-pointer rounded border border-ink-2 bg-white px-2"
        >
          {clauses.map((one) => (
            <option key={one} value={one}>
              {one} {namesOf(one)}
            </option>
          ))}
        </select>
      </div>
      <Button look="quiet" onClick={() => onTake(judging.filter((row) => row.clause === clause))}>
        Take over
      </Button>
    </div>
  );
}
