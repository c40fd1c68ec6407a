"use client";
import { useMemo } from "react";
import { useLitPictures, type WantedPicture } from "@/app/_bench";
import { truthHighlight } from "@/app/_marks/highlights";
import { extentWords } from "@/app/_marks/line-words";
import type { TruthView } from "@/app/_marks/sheet-view";
import { imperfection } from "@/lib/imperfections";
import type { PieceStrip as PlannedStrip, TableBlock } from "@/lib/printing";
import { extentOf, type JointKind, PIECES } from "@/lib/weld";
import { FindingsLines } from "./findings-lines";
import { PaperFrame } from "./paper-frame";
import { PieceStrip } from "./piece-strip";
import { PrintedBlocks } from "./printed-blocks";
import { waitsForPictures } from "./waits-for-pictures";

export interface PiecePaperProps {
  readonly id: string;
  readonly kind: JointKind;
  /** The joint in words. */
  readonly joint: string;
  /** What each page shows. */
  readonly pages: readonly (readonly PlannedStrip[])[];
  readonly back: { readonly href: string; readonly name: string };
  /** Null on a sheet without answers. */
  readonly answers: { readonly truths: readonly TruthView[]; readonly tables: readonly TableBlock[] } | null;
}

const PER_MM = 8;
/** Lines to write on beside the pictures of a page. */
const LINES = 14;

/** A piece at true scale on as many pages as it takes, to inspect on paper or, with answers, to talk about. */
export function PiecePaper({ id, kind, joint, pages, back, answers }: PiecePaperProps) {
  const wanted = useMemo(() => pages.map((strips) => strips.map(pictureOf)), [pages]);
  const all = useMemo(() => wanted.flat(), [wanted]);
  const sources = useMemo(
    () => PIECES[kind].faces.map((face) => ({ face, url: `/api/practice/${id}/surface/${face}` })),
    [id, kind],
  );
  const lit = useLitPictures(sources, all);
  const highlights = useMemo(() => (answers ? numberedOutlines(answers.truths) : []), [answers]);
  return (
    <PaperFrame
      title={answers ? "Piece with answers" : "Piece to inspect"}
      of={
        <>
          {joint}
          <br />
          Piece {id}. True scale: check the rule against a real one.
        </>
      }
      back={back}
      isFlat
      waitsFor={waitsForPictures(lit, all)}
    >
      {wanted.map((pictures) => (
        <section key={pictures[0].id} className="piece-page">
          <div className="space-y-[3mm]">
            {pictures.map((picture) => (
              <PieceStrip
                key={picture.id}
                picture={picture}
                address={lit.pictures[picture.id]}
                length={PIECES[kind].length}
                highlights={highlights}
              />
            ))}
          </div>
          <div className="min-w-0 flex-1">
            {kind === "fillet" && <FilletNote isTurned={pictures.length > 1} />}
            {answers ? (
              <OnThisPage pictures={pictures} truths={answers.truths} />
            ) : (
              <FindingsLines count={LINES} isNarrow={kind === "fillet"} />
            )}
          </div>
        </section>
      ))}
      {answers && (
        <section className="piece-page">
          <div className="min-w-0 flex-1">
            <PrintedBlocks blocks={answers.tables} />
          </div>
        </section>
      )}
    </PaperFrame>
  );
}

function pictureOf({ aspect, from, to }: PlannedStrip): WantedPicture {
  const { low, high } = extentOf(aspect);
  return { id: `${aspect} ${from}`, aspect, from, to, low, high, perMm: PER_MM };
}

/** Outlines under the numbers of the table; what runs along the whole weld would only hide the rest. */
const numberedOutlines = (truths: readonly TruthView[]) =>
  truths.flatMap((truth, index) =>
    imperfection(truth.type).family === "misalignment" ? [] : [truthHighlight(truth, String(index + 1))],
  );

interface OnThisPageProps {
  readonly pictures: readonly WantedPicture[];
  readonly truths: readonly TruthView[];
}

/** What lies on the strips of a page, by the numbers of the outlines. */
function OnThisPage({ pictures, truths }: OnThisPageProps) {
  const seen = truths.flatMap((truth, index) =>
    pictures.some(({ aspect, from, to }) => aspect === truth.face && truth.end >= from && truth.start <= to)
      ? [{ truth, number: index + 1 }]
      : [],
  );
  if (pictures.every(({ aspect }) => aspect === "base" || aspect === "standing"))
    return <p>The places are outlined on the weld face, and all of them stand in the table at the end.</p>;
  if (seen.length === 0) return <p>Nothing is to be recorded on this stretch.</p>;
  return (
    <table className="paper-table">
      <thead>
        <tr>
          <th scope="col" className="is-number">
            No.
          </th>
          <th scope="col">What it is</th>
          <th scope="col">Where</th>
        </tr>
      </thead>
      <tbody>
        {seen.map(({ truth, number }) => (
          <tr key={truth.id}>
            <td className="is-number">{number}</td>
            <td>
              {imperfection(truth.type).name}
              {truth.neutral && " (not recorded)"}
            </td>
            <td>{extentWords(truth.start, truth.end)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function FilletNote({ isTurned }: { readonly isTurned: boolean }) {
  return (
    <p className="pb-[2mm] text-[8pt]">
      {isTurned
        ? "Seen square on each plate: true scale along the weld and across this plate."
        : "Seen along the line between the plates: true scale along the weld; across it both plates lean away by 45 degrees."}
    </p>
  );
}
