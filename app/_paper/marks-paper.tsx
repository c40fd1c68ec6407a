"use client";
import { type ReactNode, useMemo } from "react";
import { useLitPictures, type WantedPicture } from "@/app/_bench";
import { DimensionTable } from "@/app/_marks/dimension-table";
import { LineNote } from "@/app/_marks/line-note";
import { faceOfLine, placeOfLine } from "@/app/_marks/line-place";
import { truthTitle } from "@/app/_marks/line-words";
import { ReviewSummary } from "@/app/_marks/review-summary";
import { SectionVerdict } from "@/app/_marks/section-verdict";
import { sentenceStory, sentenceVerdict } from "@/app/_marks/sentence-words";
import type { SheetView } from "@/app/_marks/sheet-view";
import { summaryWords } from "@/app/_marks/summary-words";
import { FACE_NAMES, SECTION_NAMES, SECTION_WORDS } from "@/app/_ui/section-names";
import { CAUTION } from "@/lib/criteria";
import type { FactsBlock } from "@/lib/printing";
import { SENTENCE_NAMES } from "@/lib/report";
import {
  type AccountLine,
  marksInHundredths,
  type QuestionLine,
  type QuestionsResult,
  type SectionResult,
  type SentenceLine,
  type SentencesResult,
} from "@/lib/results";
import { type LineId, lineId } from "@/lib/review";
import { SURFACE_FACES } from "@/lib/weld";
import { MarkedLine } from "./marked-line";
import { PaperFrame } from "./paper-frame";
import { PrintedBlocks } from "./printed-blocks";
import { waitsForPictures } from "./waits-for-pictures";

interface MarksPaperProps {
  readonly sheet: SheetView;
  readonly learner: string;
  /** Who, what and when, over the verdict. */
  readonly facts: FactsBlock;
}

/** What a picture of a place shows, mm along and across. */
const SEEN = { along: 36, across: 24 } as const;
const PER_MM = 10;

/** The whole mark sheet on paper: every line with its arithmetic, nothing covered, and a picture of each place. */
export function MarksPaper({ sheet, learner, facts }: MarksPaperProps) {
  const wanted = useMemo(() => placesOf(sheet), [sheet]);
  const sources = useMemo(
    () =>
      [...new Set(wanted.map(({ aspect }) => aspect))].flatMap((aspect) =>
        aspect === "base" || aspect === "standing"
          ? []
          : [{ face: aspect, url: `/api/practice/${sheet.id}/surface/${aspect}` }],
      ),
    [wanted, sheet.id],
  );
  const lit = useLitPictures(sources, wanted);
  return (
    <PaperFrame
      title="Mark sheet"
      of={`${learner}, ${sheet.sections.map(({ section }) => SECTION_WORDS[section]).join(" and ")}`}
      back={{ href: `/practice/${sheet.id}/marks`, name: "Back to the mark sheet" }}
      waitsFor={waitsForPictures(lit, wanted)}
    >
      <PrintedBlocks blocks={[facts]} />
      <div className="mt-4 grid gap-4">
        {sheet.sections.map((result) => (
          <div key={result.section} className="break-inside-avoid">
            <SectionVerdict result={result} review={sheet.review} />
          </div>
        ))}
      </div>
      <ul className="mt-3">
        {summaryWords(sheet).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {sheet.review && <ReviewSummary review={sheet.review} />}
      {sheet.sections.map((result) => (
        <SectionOnPaper key={result.section} sheet={sheet} result={result} pictures={lit.pictures} wanted={wanted} />
      ))}
    </PaperFrame>
  );
}

/** One picture for each line that speaks of a place where something was called or should have been. */
function placesOf(sheet: SheetView): readonly WantedPicture[] {
  return sheet.sections.flatMap(({ section, indications }) =>
    indications.lines.flatMap((line, index) => {
      const place = placeOfLine(sheet, line);
      // what was rightly left alone needs no second look
      if (!place || line.kind === "neutral-left") return [];
      const { x, y, face } = place;
      return {
        id: `${section} ${index}`,
        aspect: face,
        from: x - SEEN.along / 2,
        to: x + SEEN.along / 2,
        low: y - SEEN.across / 2,
        high: y + SEEN.across / 2,
        perMm: PER_MM,
      };
    }),
  );
}

interface SectionOnPaperProps {
  readonly sheet: SheetView;
  readonly result: SectionResult;
  readonly pictures: Readonly<Record<string, string>>;
  readonly wanted: readonly WantedPicture[];
}

function SectionOnPaper({ sheet, result, pictures, wanted }: SectionOnPaperProps) {
  const { section, indications, dimensions, sentences, questions } = result;
  const groups = [...SURFACE_FACES, null]
    .map((face) => ({ face, lines: indications.lines.filter((line) => faceOfLine(sheet, line) === face) }))
    .filter(({ lines }) => lines.length > 0);
  const { review } = sheet;
  const noteOf = (id: LineId) => (review?.lines[id] ? <LineNote id={id} review={review} /> : null);
  const idOf = (line: AccountLine) => `${section} ${indications.lines.indexOf(line)}`;
  return (
    <section>
      <h2>{SECTION_NAMES[section]}, line by line</h2>
      {groups.map(({ face, lines }) => (
        <section key={face ?? "whole"}>
          <h3 className="mt-2">{face ? FACE_NAMES[face] : "The piece as a whole"}</h3>
          {lines.map((line) => (
            <div key={idOf(line)}>
              <MarkedLine
                sheet={sheet}
                line={line}
                picture={wanted.find(({ id }) => id === idOf(line)) ?? null}
                address={pictures[idOf(line)]}
              />
              {noteOf(lineId("indications", indications.lines.indexOf(line)))}
            </div>
          ))}
        </section>
      ))}
      <Sum name="All indications" part={indications} />
      {dimensions && (
        <section>
          <h2>{dimensions.statements.length > 0 ? "Dimensions and statements" : "Dimensions"}</h2>
          <div className="[&>div]:px-0">
            <DimensionTable lines={dimensions.lines} statements={dimensions.statements} noteOf={noteOf} />
          </div>
          <Sum name="All of them" part={dimensions} />
        </section>
      )}
      {sentences && <Sentences sheet={sheet} part={sentences} noteOf={noteOf} />}
      {questions && <Questions part={questions} noteOf={noteOf} />}
      <p className="mt-2 flex justify-between border-t-2 border-black py-2 font-semibold">
        <span>All lines together</span>
        <span>
          {marksInHundredths(result.mark)} shown as {result.shown.toFixed(1)}
        </span>
      </p>
      {sheet.review && (
        <p className="flex justify-between border-t border-black py-2 font-semibold">
          <span>As reviewed</span>
          <span>
            {marksInHundredths(sheet.review.reviewed.mark)} shown as {sheet.review.reviewed.shown.toFixed(1)}
          </span>
        </p>
      )}
    </section>
  );
}

function Sum({
  name,
  part,
}: {
  readonly name: string;
  readonly part: { readonly earned: number; readonly worth: number };
}) {
  return (
    <p className="flex break-before-avoid justify-between border-t border-black py-1 font-semibold">
      <span>{name}</span>
      <span>
        {marksInHundredths(part.earned)} of {marksInHundredths(part.worth)}
      </span>
    </p>
  );
}

interface SentencesProps {
  readonly sheet: SheetView;
  readonly part: SentencesResult;
  noteOf(id: LineId): ReactNode;
}

function Sentences({ sheet, part, noteOf }: SentencesProps) {
  const titleOf = (line: SentenceLine) => {
    const truth = sheet.truths.find(({ id }) => id === line.truthId);
    return truth ? truthTitle([truth]) : "An imperfection";
  };
  const whole = sheet.kind === "fillet" ? "The weld as a whole" : "The plate as a whole";
  return (
    <section>
      <h2>Sentences</h2>
      <p className="pb-1">
        By {part.criteria.name} ({part.criteria.edition}).
      </p>
      {[...part.lines, part.piece].map((line, at) => {
        const isPiece = line === part.piece;
        return (
          <div key={isPiece ? "piece" : line.truthId} className="paper-entry">
            <Heading title={isPiece ? whole : titleOf(line)} line={line} />
            <p>{capital(sentenceVerdict(line, isPiece))}.</p>
            <p>{sentenceStory(line, isPiece)}</p>
            <dl className="paper-facts">
              <dt>You wrote</dt>
              <dd>{line.written ? SENTENCE_NAMES[line.written] : "nothing"}</dd>
              <dt>From your report</dt>
              <dd>
                {line.fromWritten?.text ??
                  (line.callIds.length === 0 ? "nothing: it is not in it" : "nothing: it has no name")}
              </dd>
              <dt>From what is there</dt>
              <dd>{line.fromTruth.text}</dd>
            </dl>
            {noteOf(lineId("sentences", at))}
          </div>
        );
      })}
      <p className="text-[8pt]">{CAUTION}</p>
      <Sum name="All sentences" part={part} />
    </section>
  );
}

interface QuestionsProps {
  readonly part: QuestionsResult;
  noteOf(id: LineId): ReactNode;
}

function Questions({ part, noteOf }: QuestionsProps) {
  return (
    <section>
      <h2>Questions</h2>
      {part.lines.map((line, index) => (
        <div key={line.question} className="paper-entry">
          <Heading title={`${index + 1}. ${line.stem}`} line={line} />
          <dl className="paper-facts">
            <dt>You chose</dt>
            <dd>{line.written === null ? "nothing" : optionWords(line, line.written)}</dd>
            <dt>Right is</dt>
            <dd>{optionWords(line, line.key)}</dd>
            <dt>Why</dt>
            <dd>{line.explanation}</dd>
          </dl>
          {noteOf(lineId("questions", index))}
        </div>
      ))}
      <p className="text-[8pt]">{CAUTION}</p>
      <Sum name="All questions" part={part} />
    </section>
  );
}

function Heading({
  title,
  line,
}: {
  readonly title: string;
  readonly line: { readonly earned: number; readonly worth: number };
}) {
  return (
    <p className="flex justify-between gap-4 font-semibold">
      <span>{title}</span>
      <span className="whitespace-nowrap">
        {marksInHundredths(line.earned)} of {marksInHundredths(line.worth)}
      </span>
    </p>
  );
}

const optionWords = ({ options }: QuestionLine, option: number) => `${"ABCD"[option]}: ${options[option]}`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
