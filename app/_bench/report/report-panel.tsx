"use client";
import { type Dispatch, memo, useRef } from "react";
import type { Writing, WritingEvent } from "@/lib/bench";
import type { Call } from "@/lib/report";
import type { JointFacts } from "@/lib/weld";
import type { BenchCriteria } from "../criteria/bench-criteria";
import { DimensionList } from "./dimension-list";
import { PieceSentence } from "./piece-sentence";
import { ReportTable } from "./report-table";
import { StatementList } from "./statement-list";

export interface ReportPanelProps {
  readonly joint: JointFacts;
  readonly writing: Writing;
  /** By what is sentenced; null where nothing is. */
  readonly criteria: BenchCriteria | null;
  readonly write: Dispatch<WritingEvent>;
  readonly onShow: (call: Call) => void;
  readonly onAdd: () => void;
  readonly onCriteria: () => void;
}

/** The clipboard: the report, undo and redo, a row without drawing. */
export const ReportPanel = memo(function ReportPanel(props: ReportPanelProps) {
  const { joint, writing, criteria, write, onShow, onAdd, onCriteria } = props;
  const { isClosed } = writing;
  const button =
    "h-11 rounded border border-line bg-sheet px-2.5 text-sm hover:border-ink-2 disabled:cursor-default disabled:opacity-45";
  const panel = useRef<HTMLElement>(null);
  const remove = (call: Call) => {
    const { calls } = writing.report;
    const index = calls.indexOf(call);
    const next = calls[index + 1] ?? calls[index - 1];
    write({ kind: "remove", id: call.id });
    const target = next ? `[data-row="${next.id}"]` : "[data-add-row]";
    requestAnimationFrame(() => panel.current?.querySelector<HTMLElement>(target)?.focus());
  };
  return (
    <section ref={panel} aria-label="Report" className="flex h-full min-h-0 flex-col bg-paper text-ink" data-report="">
      <header className="flex flex-wrap items-center gap-2 border-line border-b px-3 py-2">
        <h2 className="mr-auto font-semibold leading-tight">
          Report{" "}
          <span className="block font-normal text-ink-2 text-xs">
            {writing.report.calls.length} {writing.report.calls.length === 1 ? "indication" : "indications"}
          </span>
        </h2>
        {criteria && (
          <button type="button" className={button} onClick={onCriteria}>
            Criteria
          </button>
        )}
        {!isClosed && (
          <>
            <button
              type="button"
              className={button}
              disabled={writing.past.length === 0}
              onClick={() => write({ kind: "undo" })}
            >
              Undo
            </button>
            <button
              type="button"
              className={button}
              disabled={writing.future.length === 0}
              onClick={() => write({ kind: "redo" })}
            >
              Redo
            </button>
          </>
        )}
      </header>
      <div className="relative min-h-0 flex-1 overflow-y-auto overscroll-contain">
        <ReportTable
          kind={joint.kind}
          writing={writing}
          isSentenced={criteria !== null}
          write={write}
          onShow={onShow}
          onRemove={remove}
        />
        {!isClosed && (
          <button
            type="button"
            data-add-row=""
            className="m-3 h-11 rounded border border-action border-dashed px-4 text-action text-sm hover:bg-paper-2"
            onClick={onAdd}
          >
            Add a row at the cursor
          </button>
        )}
        <fieldset disabled={isClosed} className="min-w-0">
          <legend className="sr-only">Dimensions, statements and the piece as a whole</legend>
          <DimensionList joint={joint} measures={writing.report.measures} write={write} />
          {joint.kind === "fillet" && (
            <StatementList size={joint.size} statements={writing.report.statements} write={write} />
          )}
          {criteria && (
            <PieceSentence
              kind={joint.kind}
              criteria={criteria.name}
              value={writing.report.pieceSentence}
              write={write}
            />
          )}
        </fieldset>
      </div>
    </section>
  );
});
