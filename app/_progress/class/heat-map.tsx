"use client";

import Link from "next/link";
import { useState } from "react";
import { FAMILY_NAMES } from "@/lib/bench";
import { FAMILIES, type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { MissedType } from "@/lib/progress";
import { rangeWords } from "./range-words";
import { type SetAsPaper, SetRowAsPaper } from "./set-row-as-paper";
import { cellWords, lookOf, shadeOf } from "./shade";

interface HeatMapProps {
  readonly classId: string;
  readonly learners: readonly { readonly id: string; readonly name: string }[];
  /** By learner in the same order. */
  readonly missed: readonly MissedType[];
  readonly setAsPaper: SetAsPaper;
}

/** What each learner finds of each type, the most missed first: a number in every cell, and darker the more is missed. */
export function HeatMap({ classId, learners, missed, setAsPaper }: HeatMapProps) {
  const [family, setFamily] = useState("all");
  const families = FAMILIES.filter((one) => missed.some(({ type }) => imperfection(type).family === one));
  const shown = missed.filter(({ type }) => family === "all" || imperfection(type).family === family);
  return (
    <>
      <label className="flex flex-wrap items-center gap-3">
        <span className="font-medium">Show</span>
        <select
          value={family}
          onChange={(event) => setFamily(event.target.value)}
          className="min-h-11 rounded border border-ink-2 bg-sheet px-3"
        >
          <option value="all">all imperfections</option>
          {families.map((one) => (
            <option key={one} value={one}>
              {FAMILY_NAMES[one].toLowerCase()}
            </option>
          ))}
        </select>
      </label>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
      <section aria-label="Imperfections by learner" tabIndex={0} className="relative mt-3 max-h-[75vh] overflow-auto">
        <table className="border-separate border-spacing-0 text-sm">
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
              {learners.map(({ id, name }) => (
                <th key={id} scope="col" className={`${HEAD} px-1 font-normal`}>
                  <Link
                    href={`/desk/${id}/progress`}
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
              <Row key={row.type} classId={classId} row={row} learners={learners} setAsPaper={setAsPaper} />
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

const HEAD = "sticky top-0 z-10 border-ink-2 border-b bg-sheet pb-2 align-bottom";

interface RowProps extends Pick<HeatMapProps, "classId" | "learners" | "setAsPaper"> {
  readonly row: MissedType;
}

function Row({ classId, learners, setAsPaper, row: { type, found, judged, belowHalf, byLearner } }: RowProps) {
  return (
    <tr>
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
      <Found cell={{ found: found.count, total: found.of }} range={rangeWords(found)} />
      <td className="whitespace-nowrap border-line border-r border-b px-2 text-center">
        {judged === 0 ? "" : `${belowHalf} of ${judged}`}
      </td>
      {byLearner.map((cell, n) => (
        <Found key={learners[n].id} cell={cell} />
      ))}
    </tr>
  );
}

interface FoundProps {
  readonly cell: MissedType["byLearner"][number];
  readonly range?: string;
}

function Found({ cell, range = "" }: FoundProps) {
  return (
    <td className={`h-11 border-line border-b px-1 text-center tabular-nums ${lookOf(shadeOf(cell))}`}>
      {cellWords(cell)}
      {range !== "" && <span className="block whitespace-nowrap text-xs">{range}</span>}
    </td>
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
