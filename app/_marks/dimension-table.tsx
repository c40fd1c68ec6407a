import { Fragment, type ReactNode } from "react";
import { type DimensionLine, inTenths, type StatementLine } from "@/lib/results";
import { type LineId, lineId } from "@/lib/review";
import { ANSWER_NAMES, DIMENSION_FACTS, nameAsked, STATEMENT_FACTS } from "@/lib/weld";
import { marks } from "./line-words";
import { statementStory } from "./statement-words";

interface DimensionTableProps {
  readonly lines: readonly DimensionLine[];
  readonly statements: readonly StatementLine[];
  /** What stands under a line; nothing where nobody said anything of it. */
  noteOf?(id: LineId): ReactNode;
}

/** What was measured, what is true and where, how far off, how far off was allowed, what it earned; then what was stated. */
export function DimensionTable({ lines, statements, noteOf }: DimensionTableProps) {
  return (
    <div className="overflow-x-auto px-3">
      <table className="w-full text-left text-sm [&_td]:align-top [&_th]:align-top">
        <thead className="text-xs text-ink-2">
          <tr>
            <th className="py-1 pr-2 font-medium">Dimension</th>
            <th className="py-1 pr-2 font-medium">You wrote</th>
            <th className="py-1 pr-2 font-medium">It is</th>
            <th className="py-1 pr-2 font-medium">Off by</th>
            <th className="py-1 text-right font-medium">Marks</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, n) => (
            <Fragment key={nameAsked(line)}>
              <DimensionRow line={line} />
              <NoteRow note={noteOf?.(lineId("dimensions", n))} />
            </Fragment>
          ))}
          {statements.map((line, n) => (
            <Fragment key={line.statement}>
              <StatementRow line={line} />
              <NoteRow note={noteOf?.(lineId("statements", n))} />
            </Fragment>
          ))}
        </tbody>
      </table>
      <p className="py-2 text-xs text-ink-2">
        A gauge that is set down by hand shows a tenth or three more or less than there is; what earns in full allows
        for it.
      </p>
    </div>
  );
}

function NoteRow({ note }: { readonly note: ReactNode }) {
  if (!note) return null;
  return (
    <tr>
      <td colSpan={5} className="pt-1">
        {note}
      </td>
    </tr>
  );
}

function DimensionRow({ line }: { readonly line: DimensionLine }) {
  const short = DIMENSION_FACTS[line.dimension].unit === "mm" ? " mm" : "°";
  const value = (number: number) => `${inTenths(number)}${short}`;
  const at = (place: number | null) => place !== null && <span className="text-ink-2"> at {Math.round(place)} mm</span>;
  return (
    <tr className="break-inside-avoid border-t border-line/70">
      <th scope="row" className="py-1 pr-2 font-normal">
        {nameAsked(line)}
      </th>
      <td className="py-1 pr-2">
        {line.written === null ? (
          <span className="text-ink-2">nothing</span>
        ) : (
          <>
            {value(line.written)}
            {at(line.writtenAt)}
          </>
        )}
        {line.actualThere !== null && (
          <span className="block text-xs text-ink-2">{value(line.actualThere)} would be right there</span>
        )}
      </td>
      <td className="py-1 pr-2">
        {value(line.actual)}
        {at(line.actualAt)}
      </td>
      <td className="py-1 pr-2">
        {line.error !== null && <span className="whitespace-nowrap">{value(line.error)}</span>}{" "}
        <span className="text-xs whitespace-nowrap text-ink-2">full to {value(line.tolerance)}</span>
      </td>
      <Marks line={line} />
    </tr>
  );
}

function StatementRow({ line }: { readonly line: StatementLine }) {
  return (
    <tr className="break-inside-avoid border-t border-line/70">
      <th scope="row" className="py-1 pr-2 font-normal">
        {STATEMENT_FACTS[line.statement].name}
      </th>
      <td className="py-1 pr-2">
        {line.written === null ? <span className="text-ink-2">nothing</span> : ANSWER_NAMES[line.written]}
      </td>
      <td className="py-1 pr-2" colSpan={2}>
        {line.right.map((answer) => ANSWER_NAMES[answer]).join(" or ")}
        <span className="block text-xs text-ink-2">{statementStory(line)}</span>
      </td>
      <Marks line={line} />
    </tr>
  );
}

function Marks({ line }: { readonly line: { readonly worth: number; readonly earned: number } }) {
  return (
    <td className="py-1 text-right whitespace-nowrap">
      {marks(line.earned)} <span className="text-ink-2">of {marks(line.worth)}</span>
    </td>
  );
}
