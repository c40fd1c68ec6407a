"use client";
import type { ReactNode } from "react";
import { FACE_NAMES, SECTION_NAMES } from "@/app/_ui/section-names";
import type { Call } from "@/lib/report";
import type { AccountLine, QuestionLine, SectionResult, SentenceLine } from "@/lib/results";
import { type LineId, lineId } from "@/lib/review";
import { SURFACE_FACES, type SurfaceFace } from "@/lib/weld";
import { DimensionTable } from "./dimension-table";
import { LineItem } from "./line-item";
import { type LineAct, LineNote } from "./line-note";
import { faceOfLine } from "./line-place";
import { marks } from "./line-words";
import { QuestionList } from "./question-list";
import type { ReviewView } from "./review-view";
import { SentenceList } from "./sentence-list";
import type { TruthView } from "./sheet-view";

interface SectionAccountProps {
  readonly result: SectionResult;
  readonly truths: readonly TruthView[];
  readonly calls: readonly Call[];
  readonly chosen: AccountLine | null;
  readonly chosenSentence: SentenceLine | null;
  readonly chosenQuestion: QuestionLine | null;
  isCovered(line: AccountLine): boolean;
  onChoose(line: AccountLine): void;
  onUncover(line: AccountLine): void;
  onChooseSentence(line: SentenceLine): void;
  onChooseQuestion(line: QuestionLine): void;
  readonly review: ReviewView | null;
  /** For tutors: what can be done to a line. */
  readonly lineAct?: LineAct;
}

/** The account of one section: its parts, their lines in plate order, and how all of them add up to its mark. */
export function SectionAccount(props: SectionAccountProps) {
  const { result, truths, calls, review, lineAct } = props;
  // nothing at all where there is nothing to say: the table of dimensions draws a row for what it gets
  const noteOf = (id: LineId) =>
    review?.lines[id] || lineAct?.(id) ? <LineNote id={id} review={review} act={lineAct} /> : null;
  const { indications, dimensions, sentences, questions } = result;
  const isCoveredTruth = (id: string | null) =>
    indications.lines.some((line) => id !== null && line.truthIds.includes(id) && props.isCovered(line));
  const groups = [...SURFACE_FACES, null]
    .map((face) => ({ face, lines: indications.lines.filter((line) => faceOfLine({ truths, calls }, line) === face) }))
    .filter(({ lines }) => lines.length > 0);
  return (
    <section aria-labelledby={`section-${result.section}`} className="rounded-md border border-line bg-sheet">
      <h2 id={`section-${result.section}`} className="break-after-avoid p-3 text-lg font-semibold">
        {SECTION_NAMES[result.section]}, line by line
      </h2>
      {groups.map(({ face, lines }) => (
        <FaceLines key={face ?? "whole"} {...props} face={face} lines={lines} noteOf={noteOf} />
      ))}
      <Sum name="All indications" part={indications} reviewed={review?.parts.indications} lift={review?.floor} />
      {dimensions && (
        <>
          <h3 className="break-after-avoid border-t border-line px-3 pt-4 pb-2 font-semibold">
            {dimensions.statements.length > 0 ? "Dimensions and statements" : "Dimensions"}
          </h3>
          <DimensionTable lines={dimensions.lines} statements={dimensions.statements} noteOf={noteOf} />
          <Sum
            name={dimensions.statements.length > 0 ? "All dimensions and statements" : "All dimensions"}
            part={dimensions}
            reviewed={review?.parts.dimensions}
          />
        </>
      )}
      {sentences && (
        <>
          <SentenceList
            section={result.section}
            part={sentences}
            truths={truths}
            chosen={props.chosenSentence}
            isCovered={isCoveredTruth}
            onChoose={props.onChooseSentence}
            noteOf={noteOf}
          />
          <Sum name="All sentences" part={sentences} reviewed={review?.parts.sentences} />
        </>
      )}
      {questions && (
        <>
          <QuestionList
            part={questions}
            chosen={props.chosenQuestion}
            onChoose={props.onChooseQuestion}
            noteOf={noteOf}
          />
          <Sum name="All questions" part={questions} reviewed={review?.parts.questions} />
        </>
      )}
      <p className="flex justify-between border-t-2 border-ink-2 px-3 py-2 font-semibold">
        <span>All lines together</span>
        <span>
          {marks(result.mark)} <span className="font-normal text-ink-2">shown as {result.shown.toFixed(1)}</span>
        </span>
      </p>
      {review && (
        <p className="flex justify-between border-line border-t px-3 py-2 font-semibold">
          <span>As reviewed</span>
          <span>
            {marks(review.reviewed.mark)}{" "}
            <span className="font-normal text-ink-2">shown as {review.reviewed.shown.toFixed(1)}</span>
          </span>
        </p>
      )}
    </section>
  );
}

interface FaceLinesProps extends SectionAccountProps {
  /** Null for what belongs to no face: a clean piece, and the lift to 0. */
  readonly face: SurfaceFace | null;
  readonly lines: readonly AccountLine[];
  noteOf(id: LineId): ReactNode;
}

function FaceLines({
  result,
  truths,
  calls,
  chosen,
  isCovered,
  onChoose,
  onUncover,
  face,
  lines,
  noteOf,
}: FaceLinesProps) {
  const heading = face && result.section === "plate" ? FACE_NAMES[face] : null;
  return (
    <>
      {heading && <h3 className="break-after-avoid border-t border-line px-3 pt-4 pb-2 font-semibold">{heading}</h3>}
      <ol>
        {lines.map((line, at) => (
          <LineItem
            // biome-ignore lint/suspicious/noArrayIndexKey: the account is a stored value and never changes its order
            key={at}
            line={line}
            truths={truths.filter((truth) => line.truthIds.includes(truth.id))}
            calls={calls.filter((call) => line.callIds.includes(call.id))}
            isChosen={line === chosen}
            isCovered={isCovered(line)}
            missNumber={lines.slice(0, at + 1).filter(({ kind }) => kind === "missed").length}
            onChoose={() => onChoose(line)}
            onUncover={() => onUncover(line)}
            note={noteOf(lineId("indications", result.indications.lines.indexOf(line)))}
          />
        ))}
      </ol>
    </>
  );
}

interface SumProps {
  readonly name: string;
  readonly part: { readonly worth: number; readonly earned: number };
  readonly reviewed?: { readonly earned: number };
  /** What lifts a sum as reviewed to 0, thousandths. */
  readonly lift?: number;
}

function Sum({ name, part, reviewed, lift = 0 }: SumProps) {
  return (
    <p className="flex justify-between border-t border-ink-2 px-3 py-2 font-medium">
      <span>{name}</span>
      <span>
        {marks(part.earned)} <span className="font-normal text-ink-2">of {marks(part.worth)}</span>
        {reviewed && reviewed.earned !== part.earned && (
          <span className="block text-right text-sm">
            as reviewed {marks(reviewed.earned)}
            {lift > 0 && `, lifted by ${marks(lift)} to no less than 0`}
          </span>
        )}
      </span>
    </p>
  );
}
