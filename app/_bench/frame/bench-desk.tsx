"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { bounded, goalsOf, isUnsent, shareSeen, TRAYS, takenOver, type Writing, wholePlate, zoomed } from "@/lib/bench";
import { imperfection } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import type { AskedQuestion } from "@/lib/results";
import { describeJoint } from "@/lib/weld";
import { CriteriaDialog } from "../criteria/criteria-dialog";
import { EndsDialog } from "../ends/ends-dialog";
import { GaugePanel } from "../gauge/gauge-panel";
import { GaugeTray } from "../gauge/gauge-tray";
import { ThroughLine } from "../line/through-line";
import { ClosedClipboard } from "../questions/closed-clipboard";
import { HandInAnswers } from "../questions/hand-in-answers";
import { focusAnswer } from "../questions/question-panel";
import { ConflictNotice } from "../report/conflict-notice";
import { HandInDialog } from "../report/hand-in-dialog";
import { forgetKeptReport, keepReport } from "../report/kept-report";
import { ReportPanel } from "../report/report-panel";
import { SaveNote } from "../report/save-note";
import { SittingCover } from "../sitting/sitting-cover";
import { SittingStrip } from "../sitting/sitting-strip";
import { TimeLeft } from "../sitting/time-left";
import { useTimeTold } from "../sitting/use-time-told";
import { KeyHelp } from "./key-help";
import { PlateView } from "./plate-view";
import type { Practice } from "./practice";
import { ToolRail } from "./tool-rail";
import { useBench } from "./use-bench";
import { plateKeys, useKeyListKey, useUndoKeys } from "./use-bench-keys";
import { useClosing } from "./use-closing";
import { useHandIn } from "./use-hand-in";
import { useStable } from "./use-stable";

export interface BenchDeskProps {
  readonly practice: Practice;
  /** Where the marks are to be seen after handing in. */
  readonly marksUrl: string;
  /** Where "leave the bench" goes; everything is kept. */
  readonly leaveUrl: string;
  /** Whether the bench explains what a gauge reads when it is asked. */
  readonly mayAskReading: boolean;
}

/** A window in which the report would leave no room for the plate; bench.css lays it over the plate there. */
const LOW_SCREEN = "(max-width: 1199px) and (max-height: 599px)";

/** The open row, where a feeler measures its size. */
function openGapRow({ report: { calls }, openId }: Writing) {
  const index = calls.findIndex(({ id }) => id === openId);
  const call = calls[index];
  return call?.type && imperfection(call.type).size === "gap" ? { call, number: index + 1 } : null;
}

/** What the open row names. */
function openType({ report: { calls }, openId }: Writing) {
  const call = calls.find(({ id }) => id === openId);
  return call?.type ? { type: call.type, face: call.face } : null;
}

/** Where to go on answering, from 0: the first question without an answer, or the first one of all. */
function firstUnanswered(questions: readonly AskedQuestion[] | null, { report }: Writing): number {
  return Math.max(0, questions?.findIndex(({ id }) => report.answers[id] === undefined) ?? 0);
}

/** What the strip above the clipboard says on a tablet. */
function handleWords(isUp: boolean, questions: readonly AskedQuestion[] | null, { report }: Writing): string {
  if (isUp) return questions ? "Put the questions aside" : "Put the report aside";
  if (!questions) return `Report: ${report.calls.length} written`;
  const answered = questions.filter(({ id }) => report.answers[id] !== undefined).length;
  return `Questions: ${answered} of ${questions.length} answered`;
}

/** The whole bench: plate, weld line, clipboard, and the strip above them. */
export function BenchDesk({ practice, marksUrl, leaveUrl, mayAskReading }: BenchDeskProps) {
  const bench = useBench(practice);
  const { looking, report } = bench;
  const { criteria } = practice;
  const { out } = bench.gauge;
  const { writing, autosave, sitting } = report;
  const plate = useRef<HTMLDivElement>(null);
  const clipboard = useRef<HTMLDivElement>(null);
  const [isAsking, setIsAsking] = useState(false);
  const [areKeysShown, setAreKeysShown] = useState(false);
  const [areEndsShown, setAreEndsShown] = useState(false);
  const [areCriteriaShown, setAreCriteriaShown] = useState(false);
  const showCriteria = useCallback(() => setAreCriteriaShown(true), []);
  const [isSheetUp, setIsSheetUp] = useState(() => !window.matchMedia(LOW_SCREEN).matches);
  const handing = useHandIn(practice.id, writing.report, autosave, marksUrl, bench.sendTrail);
  const [questions, setQuestions] = useState<readonly AskedQuestion[] | null>(practice.questions);
  const [questionAt, setQuestionAt] = useState(() => firstUnanswered(practice.questions, writing));
  const [isNoteOpen, setIsNoteOpen] = useState(report.isLeftOut);
  const closing = useClosing(practice.id, writing.report, autosave, (asked, closed) => {
    report.write({ kind: "close", report: closed });
    setQuestions(asked);
    setIsAsking(false);
    setIsSheetUp(true);
  });
  const hasJustClosed = questions !== practice.questions;
  useEffect(() => {
    if (hasJustClosed) focusAnswer(clipboard.current);
  }, [hasJustClosed]);
  const time = useTimeTold(sitting);
  const isHeld = sitting !== null && (sitting.window === "elsewhere" || sitting.run.isPaused);
  const isOffline = sitting !== null && sitting.lostAt !== null;
  const isAllSaved = !isUnsent(autosave.saving) && autosave.conflict === null;
  const isBeingSent =
    !isAllSaved && sitting?.window === "writes" && autosave.saving.refusal === null && autosave.conflict === null;
  const sendLast = useStable(() => {
    if (isUnsent(autosave.saving)) autosave.sendNow();
  });
  // what was written in time is taken for a few seconds more
  useEffect(() => {
    if (time.isUp) sendLast();
  }, [time.isUp, sendLast]);
  useUndoKeys(bench);
  useKeyListKey(() => setAreKeysShown(true));

  // the choice between two versions is asked on the clipboard
  const hasConflict = autosave.conflict !== null;
  useEffect(() => {
    if (hasConflict) setIsSheetUp(true);
  }, [hasConflict]);

  const focusReport = () => {
    setIsSheetUp(true);
    if (questions) return void requestAnimationFrame(() => focusAnswer(clipboard.current));
    const row = writing.openId ? `[data-row="${writing.openId}"]` : "button";
    requestAnimationFrame(() => clipboard.current?.querySelector<HTMLElement>(row)?.focus());
  };
  const focusGauge = () => document.querySelector<HTMLElement>(":is([data-slide], [data-reading-slip] input)")?.focus();
  const onKeyDown = plateKeys(bench, {
    focusReport,
    focusGauge,
    showKeys: () => setAreKeysShown(true),
    showCriteria,
    showEnds: () => setAreEndsShown(practice.joint.kind === "fillet"),
  });
  const zoomInMiddle = (factor: number) =>
    looking.changeView((view) => zoomed(view, factor, { left: view.width / 2, top: view.height / 2 }));
  const lookAt = useStable((x: number) => looking.changeView((view) => bounded({ ...view, x })));
  const choose = useStable((call: Call) => {
    report.write({ kind: "open", id: call.id });
    bench.showCall(call);
  });
  const openRow = (number: number) => {
    setIsAsking(false);
    choose(writing.report.calls[number - 1]);
  };

  const paper = (
    <ReportPanel
      joint={practice.joint}
      writing={writing}
      criteria={criteria}
      write={report.write}
      onShow={bench.showCall}
      onAdd={bench.addPoint}
      onCriteria={showCriteria}
    />
  );

  return (
    <main id="main" className="bench-frame bg-bench text-bench-text" data-sheet={isSheetUp ? "up" : "down"}>
      <h1 className="sr-only">Inspection bench</h1>
      <header className="relative [grid-area:top]">
        <div className="flex min-h-[52px] items-center gap-4 border-bench-line border-b px-3">
          <a href={leaveUrl} className="flex h-11 shrink-0 items-center rounded px-2 text-bench-dim text-sm underline">
            {sitting ? "To the sitting" : "Leave the bench"}
          </a>
          <p className="hidden min-w-0 flex-1 text-sm leading-tight md:block">
            {describeJoint(practice.joint)}. Pass mark: {practice.passMark} %
          </p>
          <div className="ml-auto" />
          {sitting && <TimeLeft readLeft={sitting.left} isStanding={sitting.run.isPaused} onTell={time.tell} />}
          <SaveNote autosave={autosave} isHeld={isHeld || isOffline} />
          <button
            type="button"
            className="h-11 shrink-0 rounded bg-paper px-4 font-semibold text-ink hover:bg-sheet"
            onClick={() => {
              handing.forgetProblem();
              closing.forgetProblem();
              setIsAsking(true);
            }}
          >
            Hand in
          </button>
        </div>
        {sitting && <SittingStrip lostAt={sitting.lostAt} said={time.said} />}
      </header>

      <div className="plate-area flex min-h-0 min-w-0 [grid-area:plate]">
        <ToolRail
          kind={practice.joint.kind}
          tool={bench.tool}
          isLensHeld={bench.lensAt !== null}
          hasLens={bench.hasLens}
          mayMark={!writing.isClosed}
          onTool={bench.setTool}
          onLens={bench.toggleLens}
          onTurn={bench.turnOn}
          onEnds={() => setAreEndsShown(true)}
          onZoom={zoomInMiddle}
          onWhole={() => looking.changeView(wholePlate)}
          onKeys={() => setAreKeysShown(true)}
        />
        <div className="measuring-area flex min-h-0 min-w-0 flex-1">
          <div className="min-h-0 min-w-0 flex-1">
            <PlateView bench={bench} ref={plate} onKeyDown={onKeyDown} />
          </div>
          {out && (
            <GaugePanel
              gauge={bench.gauge}
              out={out}
              mayAskReading={mayAskReading}
              goals={
                writing.isClosed
                  ? null
                  : goalsOf(out.placement, out.aspect, practice.joint, writing.report, writing.openId)
              }
              onTake={(goal, reading) => {
                for (const event of takenOver(goal, reading, out.placement.x)) report.write(event);
              }}
              onEscape={() => plate.current?.focus()}
            />
          )}
          {bench.tool === "gauge" && (
            <GaugeTray
              kinds={TRAYS[looking.aspect]}
              out={out?.placement.kind ?? null}
              onTake={bench.takeGauge}
              onPutAway={() => bench.gauge.send({ kind: "put-away" })}
            />
          )}
        </div>
      </div>

      <div className="min-w-0 [grid-area:line]">
        <ThroughLine
          view={looking.view}
          aspect={looking.aspect}
          calls={writing.report.calls}
          openId={writing.openId}
          coverage={bench.coverage}
          onLookAt={lookAt}
          onChoose={choose}
        />
      </div>

      {/* biome-ignore lint/a11y/noStaticElementInteractions: Escape from any field of the report leads back to the plate */}
      <div
        ref={clipboard}
        className="clipboard flex min-h-0 min-w-0 flex-col bg-paper [grid-area:report]"
        onKeyDown={(event) => {
          if (event.key === "Escape") plate.current?.focus();
        }}
      >
        <button
          type="button"
          aria-expanded={isSheetUp}
          className="sheet-handle h-11 shrink-0 border-line border-b bg-paper-2 text-ink text-sm"
          onClick={() => setIsSheetUp(!isSheetUp)}
        >
          {handleWords(isSheetUp, questions, writing)}
        </button>
        {autosave.conflict && (
          <div className="sheet-notice">
            <ConflictNotice
              conflict={autosave.conflict}
              here={writing.report}
              isClosed={writing.isClosed}
              marksUrl={marksUrl}
              onTakeOther={report.takeOther}
              onKeepThis={autosave.keepThis}
              onTakeClosed={() => {
                forgetKeptReport(practice.id);
                autosave.close();
                window.location.reload();
              }}
            />
          </div>
        )}
        {isNoteOpen && (
          <div role="alert" className="sheet-notice space-y-2 border-lamp border-b-4 bg-sheet p-3 text-ink text-sm">
            <p>
              <b>This report was closed in another window or browser.</b> It is kept as it was there. What was written
              here and not saved before is not part of it.
            </p>
            <button
              type="button"
              className="min-h-11 rounded border border-action px-3 text-action hover:bg-action hover:text-sheet"
              onClick={() => {
                forgetKeptReport(practice.id);
                setIsNoteOpen(false);
              }}
            >
              Go on with the closed report
            </button>
          </div>
        )}
        <div className="sheet-body min-h-0 flex-1">
          {questions ? (
            <ClosedClipboard
              questions={questions}
              answers={writing.report.answers}
              at={questionAt}
              write={report.write}
              onGoTo={setQuestionAt}
              report={paper}
            />
          ) : (
            paper
          )}
        </div>
      </div>

      {isAsking && questions && (
        <HandInAnswers
          questions={questions}
          answers={writing.report.answers}
          isSending={handing.isSending}
          problem={handing.problem}
          onHandIn={handing.handIn}
          onClose={() => setIsAsking(false)}
          onGoToQuestion={(number) => {
            setIsAsking(false);
            setIsSheetUp(true);
            setQuestionAt(number - 1);
          }}
        />
      )}
      {isAsking && !questions && (
        <HandInDialog
          kind={practice.joint.kind}
          report={writing.report}
          isSentenced={criteria !== null}
          seen={(face) => shareSeen(bench.coverage, face)}
          questionCount={practice.questionCount}
          isSending={handing.isSending || closing.isSending}
          problem={handing.problem ?? closing.problem}
          onHandIn={handing.handIn}
          onCloseReport={closing.close}
          onClose={() => setIsAsking(false)}
          onGoToRow={openRow}
        />
      )}
      {areEndsShown && (
        <EndsDialog
          practiceId={practice.id}
          mayAskReading={mayAskReading}
          gapRow={writing.isClosed ? null : openGapRow(writing)}
          onTake={(id, value) => {
            report.write({ kind: "change", id, field: "size", value });
            report.write({ kind: "leave-field" });
          }}
          onAdd={
            writing.isClosed
              ? null
              : (start) => {
                  setAreEndsShown(false);
                  report.add({ face: "fillet", start, end: null, across: 0 });
                }
          }
          onClose={() => setAreEndsShown(false)}
        />
      )}
      {criteria && areCriteriaShown && (
        <CriteriaDialog criteria={criteria} asked={openType(writing)} onClose={() => setAreCriteriaShown(false)} />
      )}
      {areKeysShown && (
        <KeyHelp
          kind={practice.joint.kind}
          hasLens={bench.hasLens}
          isTimed={sitting !== null}
          onClose={() => setAreKeysShown(false)}
        />
      )}
      {sitting && (
        <SittingCover
          run={sitting.run}
          isElsewhere={sitting.window === "elsewhere"}
          left={time.isUp ? 0 : sitting.left()}
          isOffline={isOffline}
          isAllSaved={isAllSaved}
          isBeingSent={isBeingSent}
          savedAt={autosave.saving.savedAt ?? sitting.run.savedAt}
          sittingUrl={leaveUrl}
          onGoOnHere={() => {
            if (!isAllSaved) keepReport(practice.id, autosave.latest());
            window.location.reload();
          }}
        />
      )}
    </main>
  );
}
