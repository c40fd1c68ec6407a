"use client";
import { useCallback, useMemo, useRef, useState } from "react";
import { type FaceHeights, SpecimenView, type SpecimenViewHandle } from "@/app/_bench";
import { imperfection } from "@/lib/imperfections";
import type { AccountLine, QuestionLine, SentenceLine } from "@/lib/results";
import { lineId } from "@/lib/review";
import { PIECES, type SurfaceFace } from "@/lib/weld";
import { callHighlight, clutterHighlight, questionHighlight, truthHighlight } from "./highlights";
import type { LineAct } from "./line-note";
import { middleOfQuestion, placeOfLine, placeOfTruth } from "./line-place";
import { vagueStretch } from "./line-words";
import { PlaceProfile } from "./place-profile";
import { SectionAccount } from "./section-account";
import type { SheetView } from "./sheet-view";
import { SIGNS } from "./sign";
import { LooksAtMisses } from "./trail/miss-looks";
import { WhereYouLooked } from "./trail/where-you-looked";

/** The account beside the plate: choosing a line goes to its place under the torch and cuts the weld there. */
export function MarkSheet({ sheet, lineAct }: { readonly sheet: SheetView; readonly lineAct?: LineAct }) {
  const [chosen, setChosen] = useState<AccountLine | null>(null);
  const [chosenSentence, setChosenSentence] = useState<SentenceLine | null>(null);
  const [chosenQuestion, setChosenQuestion] = useState<QuestionLine | null>(null);
  const [uncovered, setUncovered] = useState<ReadonlySet<AccountLine>>(new Set());
  const [heights, setHeights] = useState<Partial<Record<SurfaceFace, FaceHeights>>>({});
  const view = useRef<SpecimenViewHandle>(null);
  const sources = useMemo(
    () => PIECES[sheet.kind].faces.map((face) => ({ face, url: `/api/practice/${sheet.id}/surface/${face}` })),
    [sheet.id, sheet.kind],
  );
  const onHeights = useCallback((face: SurfaceFace, found: FaceHeights | null) => {
    if (found) setHeights((known) => (known[face] === found ? known : { ...known, [face]: found }));
  }, []);

  const allLines = useMemo(() => sheet.sections.flatMap(({ indications }) => indications.lines), [sheet]);
  // a tutor looks for nothing, and what was overruled is told anyway
  const isTutor = lineAct !== undefined;
  const told = useMemo(() => {
    const isOverruled = (line: AccountLine) =>
      sheet.sections.some(
        ({ indications }) => sheet.review?.lines[lineId("indications", indications.lines.indexOf(line))]?.act,
      );
    return new Set(allLines.filter((line) => isTutor || uncovered.has(line) || isOverruled(line)));
  }, [sheet, allLines, isTutor, uncovered]);
  const isCovered = (line: AccountLine) => line.kind === "missed" && !told.has(line);
  const misses = allLines.filter((line) => line.kind === "missed");
  const place =
    placeOfLine(sheet, chosen) ?? placeOfTruth(sheet, chosenSentence?.truthId) ?? middleOfQuestion(chosenQuestion);
  const shownTruthId = chosen?.truthIds[0] ?? chosenSentence?.truthId ?? null;
  const isCoveredTruth = (id: string | null | undefined) =>
    misses.some((line) => line.truthIds.some((one) => one === id) && isCovered(line));
  const isPlaceCovered = chosen ? isCovered(chosen) : isCoveredTruth(chosenSentence?.truthId);
  const truthOf = (line: AccountLine) =>
    sheet.truths.find(({ id }) => id === line.truthIds[0]) ?? { start: 0, face: PIECES[sheet.kind].faces[0] };

  const choose = (line: AccountLine) => {
    setChosenSentence(null);
    setChosenQuestion(null);
    if (line === chosen) return setChosen(null);
    setChosen(line);
    const target = placeOfLine(sheet, line);
    if (!target) return;
    // a covered miss: to its face and its stretch of the weld, no nearer
    if (isCovered(line)) view.current?.focus(vagueStretch(truthOf(line)).middle, 0, target.face);
    else view.current?.focus(target.x, target.y, target.face);
  };
  const chooseSentence = (line: SentenceLine) => {
    setChosen(null);
    setChosenQuestion(null);
    if (line === chosenSentence) return setChosenSentence(null);
    setChosenSentence(line);
    const truth = sheet.truths.find(({ id }) => id === line.truthId);
    if (!truth) return;
    if (isCoveredTruth(truth.id)) view.current?.focus(vagueStretch(truth).middle, 0, truth.face);
    else view.current?.focus(truth.worst[0], truth.worst[1], truth.face);
  };
  const chooseQuestion = (line: QuestionLine) => {
    setChosen(null);
    setChosenSentence(null);
    setChosenQuestion(line === chosenQuestion ? null : line);
    const target = line === chosenQuestion ? null : middleOfQuestion(line);
    if (target) view.current?.focus(target.x, target.y, target.face);
  };
  const uncover = (line: AccountLine) => {
    setUncovered(new Set([...uncovered, line]));
    const target = placeOfLine(sheet, line);
    if (target) view.current?.focus(target.x, target.y, target.face);
  };

  const highlights = useMemo(() => {
    const shown = allLines.filter((line) => line.kind !== "missed" || told.has(line));
    const asked = chosenQuestion?.place ? [questionHighlight(chosenQuestion.question, chosenQuestion.place)] : [];
    const ofLines = shown.flatMap((line) => {
      const { letter } = SIGNS[line.kind];
      const truths = sheet.truths.filter((truth) => line.truthIds.includes(truth.id));
      const calls = sheet.calls.filter((call) => line.callIds.includes(call.id));
      // what was rightly left alone, and what runs along the whole weld, would only hide the rest
      const isQuiet =
        line.kind === "neutral-left" || truths.some(({ type }) => imperfection(type).family === "misalignment");
      if (isQuiet && line !== chosen) return [];
      // clutter is outlined for the chosen line only: it is no answer to anything
      const clutter = sheet.clutter.filter(({ id }) => line === chosen && id === line.clutter?.id);
      return [
        ...truths.map((truth) => truthHighlight(truth, letter)),
        ...clutter.map((item) => clutterHighlight(item, letter)),
        ...calls.flatMap((call) => callHighlight(call, `No. ${sheet.calls.indexOf(call) + 1}`) ?? []),
      ];
    });
    return [...ofLines, ...asked];
  }, [sheet, allLines, told, chosen, chosenQuestion]);

  return (
    <div className="mt-6 grid items-start gap-5 lg:grid-cols-[minmax(25rem,5fr)_7fr] print:block">
      <div className="order-2 space-y-5 lg:order-1">
        <LooksAtMisses misses={misses} truths={sheet.truths} />
        {misses.length > 0 && !lineAct && (
          <button
            type="button"
            className="min-h-11 w-full cursor-pointer rounded border border-ink-2 bg-sheet px-4 font-medium hover:bg-paper-2 disabled:opacity-60 print:hidden"
            disabled={misses.every((line) => told.has(line))}
            onClick={() => setUncovered(new Set(misses))}
          >
            {misses.every((line) => told.has(line))
              ? "All misses are shown"
              : `Show all ${misses.length} misses at once`}
          </button>
        )}
        {sheet.sections.map((result) => (
          <SectionAccount
            key={result.section}
            result={result}
            truths={sheet.truths}
            calls={sheet.calls}
            chosen={chosen}
            chosenSentence={chosenSentence}
            chosenQuestion={chosenQuestion}
            isCovered={isCovered}
            onChoose={choose}
            onChooseSentence={chooseSentence}
            onChooseQuestion={chooseQuestion}
            onUncover={uncover}
            review={sheet.review}
            lineAct={lineAct}
          />
        ))}
      </div>
      <div className="sticky top-3 order-1 space-y-3 lg:order-2 print:hidden">
        <div className="h-[42vh] min-h-64 overflow-hidden rounded-md lg:h-[54vh]">
          <SpecimenView
            sources={sources}
            highlights={highlights}
            chosenId={
              shownTruthId ?? chosenQuestion?.question ?? (chosen?.callIds[0] ? `call ${chosen.callIds[0]}` : null)
            }
            onHeights={onHeights}
            handle={view}
          />
        </div>
        <p className="text-sm text-ink-2">
          Unbroken outline: what was there. Broken outline: what you called. F found, P partly right, M missed, N
          nothing there, Q what a question is about.
        </p>
        {place && !isPlaceCovered && (
          <PlaceProfile
            heights={heights[place.face] ?? null}
            truth={sheet.truths.find((truth) => truth.id === shownTruthId) ?? null}
            place={place}
          />
        )}
        <WhereYouLooked kind={sheet.kind} at={isPlaceCovered ? null : place} />
      </div>
    </div>
  );
}
