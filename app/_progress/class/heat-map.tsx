"use client";

import Link from "next/link";
import { useState } from "react";
import { FAMILY_NAMES } from "@/lib/bench";
import { FAMILIES, type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { FoundOf } from "@/lib/progress";
import { type SetAsPaper, SetRowAsPaper } from "./set-row-as-paper";
import { cellWords, lookOf, shadeOf } from "./shade";

/** One row, with as little as it takes: a class of 200 has 16,000 cells, and each of them goes to the browser twice. */
export interface HeatRow {
  readonly type: ImperfectionType;
  /** Everybody's together, and between which shares it lies; empty where not enough is known. */
  readonly found: number;
  readonly of: number;
  readonly range: string;
  readonly judged: number;
  readonly belowHalf: number;
  /** By learner, found of how many; null where there was none. */
  readonly cells: readonly (readonly [found: number, of: number] | null)[];
}

interface HeatMapProps {
  readonly classId: string;
  readonly learners: readonly { readonly id: string; readonly name: string }[];
  /** By learner in the same order. */
  readonly rows: readonly HeatRow[];
  readonly setAsPaper: SetAsPaper;
}

/** So many learners stand beside each other; of a larger class these are chosen, so that the page opens at once. */
const BESIDE = 50;

/** What each learner finds of each type, the most missed first: a number in every cell, and darker the more is missed. */
export function HeatMap({ classId, learners, rows, setAsPaper }: HeatMapProps) {
  const [family, setFamily] = useState("all");
  const isLarge = learners.length > BESIDE;
  const [from, setFrom] = useState<number | "all">(isLarge ? 0 : "all");
  const families = FAMILIES.filter((one) => rows.some(({ type }) => imperfection(type).family === one));
  const shown = rows.filter(({ type }) => family === "all" || imperfection(type).family === family);
  const [first, end] = from === "all" ? [0, learners.length] : [from, from + BESIDE];
  return (
    <>
      <div className="flex flex-wrap gap-x-6 gap-y-2">
        <label className="flex flex-wrap items-center gap-3">
          <span className="font-medium">Show</span>
          <select value={family} onChange={(event) => setFamily(event.target.value)} className={SELECT}>
            <option value="all">all imperfections</option>
            {families.map((one) => (
              <option key={one} value={one}>
                {FAMILY_NAMES[one].toLowerCase()}
              </option>
            ))}
          </select>
        </label>
        {isLarge && (
          <label className="flex flex-wrap items-center gap-3">
            <span className="font-medium">Learners</span>
            <select
              value={from}
              onChange={(event) => setFrom(event.target.value === "all" ? "all" : Number(event.target.value))}
              className={`${SELECT} max-w-full`}
            >
              {groupsOf(learners).map(({ start, words }) => (
                <option key={start} value={start}>
                  {words}
                </option>
              ))}
              <option value="all">all {learners.length}, which takes a moment</option>
            </select>
          </label>
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
      <section aria-label="Imperfections by learner" tabIndex={0} className="relative mt-3 max-h-[75vh] overflow-auto">
        <table className="border-separate border-spacing-0 text-sm [&_td]:h-11 [&_td]:border-line [&_td]:border-b [&_td]:px-1 [&_td]:text-center [&_td]:tabular-nums">
          <thead>
            <tr>
              <th scope="col" className={`${HEAD} left-0 z-20 min-w-56 border-r pr-3 text-left font-medium`}>
                Imperfection
              </th>
              <th scope="col" className={`${HEAD} px-2 font-medium`}>
                Class
              </th>
              <th scope="col" className={`${HEAD} border-r px-2 font-medium`}>
                Below half
              </th>
              {learners.slice(first, end).map(({ id, name }) => (
                <th key={id} scope="col" className={`${HEAD} px-1 font-normal`}>
                  <Link
                    href={`/desk/${id}/progress`}
                    prefetch={false}
                    className="inline-flex max-h-40 min-h-24 min-w-11 rotate-180 items-center overflow-hidden rounded text-action text-ellipsis underline underline-offset-4 [writing-mode:vertical-rl]"
                  >
                    {name}
                  </Link>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={row.type}>
                <RowHead classId={classId} row={row} setAsPaper={setAsPaper} />
                {learners.slice(first, end).map(({ id }, n) => {
                  const cell = foundIn(row.cells[first + n]);
                  return (
                    <td key={id} className={lookOf(shadeOf(cell))}>
                      {cellWords(cell)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

const SELECT = "min-h-11 rounded border border-ink-2 bg-sheet px-3";
const HEAD = "sticky top-0 z-10 border-ink-2 border-b bg-sheet pb-2 align-bottom";

const foundIn = (cell: HeatRow["cells"][number]): FoundOf | null => cell && { found: cell[0], total: cell[1] };

/** "1 to 50: Ada to Kim". */
const groupsOf = (learners: HeatMapProps["learners"]) =>
  Array.from({ length: Math.ceil(learners.length / BESIDE) }, (_, n) => {
    const [start, last] = [n * BESIDE, Math.min(learners.length, (n + 1) * BESIDE)];
    return { start, words: `${start + 1} to ${last}: ${learners[start].name} to ${learners[last - 1].name}` };
  });

interface RowHeadProps extends Pick<HeatMapProps, "classId" | "setAsPaper"> {
  readonly row: HeatRow;
}

/** The imperfection with what can be done about it, and how the class finds it. */
function RowHead({ classId, setAsPaper, row: { type, found, of, range, judged, belowHalf } }: RowHeadProps) {
  return (
    <>
      <th
        scope="row"
        className="sticky left-0 z-10 max-w-72 border-line border-r border-b bg-sheet py-1 pr-3 text-left font-normal"
      >
        {imperfection(type).name} <span className="whitespace-nowrap text-ink-2">{imperfection(type).number}</span>
        <div className="flex gap-x-3 whitespace-nowrap">
          <ShowPiece classId={classId} type={type} />
          <SetRowAsPaper classId={classId} type={type} set={setAsPaper} />
        </div>
      </th>
      <td className={lookOf(shadeOf({ found, total: of }))}>
        {cellWords({ found, total: of })}
        {range !== "" && <span className="block whitespace-nowrap text-xs">{range}</span>}
      </td>
      <td className="whitespace-nowrap border-r">{judged === 0 ? "" : `${belowHalf} of ${judged}`}</td>
    </>
  );
}

function ShowPiece({ classId, type }: { readonly classId: string; readonly type: ImperfectionType }) {
  return (
    <Link
      href={`/desk/classes/${classId}/progress/piece?type=${type}`}
      prefetch={false}
      aria-label={`A piece that shows it: ${imperfection(type).name}`}
      className="flex min-h-8 w-fit items-center rounded text-action underline underline-offset-4 pointer-coarse:min-h-11"
    >
      A piece that shows it
    </Link>
  );
}
