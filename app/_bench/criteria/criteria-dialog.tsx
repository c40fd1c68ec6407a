"use client";
import { useEffect, useRef, useState } from "react";
import { CAUTION, type Criteria } from "@/lib/criteria";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { SurfaceFace } from "@/lib/weld";
import { FACE_NAMES } from "../report/call-words";
import type { BenchCriteria } from "./bench-criteria";
import { CriteriaTable } from "./criteria-table";

/** What the open row names, and where it lies. */
export interface AskedType {
  readonly type: ImperfectionType;
  readonly face: SurfaceFace;
}

export interface CriteriaDialogProps {
  readonly criteria: BenchCriteria;
  /** Null where no row is open, or it has no type yet. */
  readonly asked: AskedType | null;
  readonly onClose: () => void;
}

/** The criteria in force. It shows the limits as they are written, and never works one out. */
export function CriteriaDialog({ criteria, asked, onClose }: CriteriaDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  const { name, edition, table } = criteria;
  return (
    <dialog
      ref={dialog}
      aria-labelledby="criteria-title"
      onClose={onClose}
      className="m-auto max-h-[94dvh] w-[min(62rem,96vw)] overflow-y-auto rounded-lg bg-sheet px-5 pb-5 text-ink shadow-2xl backdrop:bg-[#000a]"
    >
      {/* the way out stays in sight */}
      <div className="sticky top-0 mb-3 flex flex-wrap items-center justify-between gap-3 border-line border-b bg-sheet py-3">
        <div>
          <h2 id="criteria-title" className="font-semibold text-xl">
            {name}
          </h2>
          <p className="text-ink-2 text-sm">{edition}</p>
        </div>
        <button
          type="button"
          className="h-11 rounded bg-action px-5 font-semibold text-sheet"
          onClick={() => dialog.current?.close()}
        >
          Back to the bench
        </button>
      </div>
      {table ? (
        <OpenTable table={table} asked={asked} />
      ) : (
        <p className="max-w-2xl">
          Closed book: you took this piece to be sentenced from memory, so the table of these criteria is not here. Your
          mark sheet will show the clause and the numbers for everything you found.
        </p>
      )}
      <p className="mt-3 text-ink-2 text-xs">{CAUTION}</p>
    </dialog>
  );
}

function OpenTable({ table, asked }: { readonly table: Criteria; readonly asked: AskedType | null }) {
  const [isAll, setIsAll] = useState(asked === null);
  const speaks = ({ types, faces }: { types: readonly ImperfectionType[]; faces: readonly SurfaceFace[] }) =>
    isAll || asked === null || (types.includes(asked.type) && faces.includes(asked.face));
  const rows = table.rows.filter(speaks);
  const sections = table.sections.filter(speaks);
  return (
    <>
      {asked && (
        <div className="mb-2 flex flex-wrap items-center justify-between gap-3">
          <p role="status">
            {isAll
              ? `All ${table.rows.length + table.sections.length} rows.`
              : `What it says of ${imperfection(asked.type).name.toLowerCase()} on the ${FACE_NAMES[asked.face].toLowerCase()}.`}
          </p>
          <button
            type="button"
            className="h-11 rounded border border-line px-4 text-sm hover:border-ink-2"
            onClick={() => setIsAll(!isAll)}
          >
            {isAll ? "Only the open row's type" : "Show all"}
          </button>
        </div>
      )}
      {rows.length + sections.length > 0 ? (
        <CriteriaTable rows={rows} sections={sections} />
      ) : (
        <p className="py-2 font-medium">No row speaks of it: these criteria give no limit for it here.</p>
      )}
      {table.notes !== "" && <p className="mt-3 text-sm">{table.notes}</p>}
    </>
  );
}
