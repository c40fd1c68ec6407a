"use client";
import { useEffect, useId, useRef, useState } from "react";
import { Told } from "@/app/_drills/told";
import { Notice } from "@/app/_ui/notice";
import type { Torch } from "@/lib/bench";
import type { AskedTask, EyeAnswer, ToldTask } from "@/lib/eye";
import type { SpecimenLink } from "../_bench/viewer/specimen-link";
import { AnswerPanel } from "./answer-panel";
import { EndMarks, type Marks } from "./end-marks";
import { sentence, sideOf } from "./eye-words";
import { questionOf } from "./question-words";
import { toldWords } from "./told-words";
import { ThingOutlines } from "./window-marks";
import { WindowView } from "./window-view";

export interface TaskDeskProps {
  readonly task: AskedTask;
  readonly told: ToldTask | null;
  readonly isLast: boolean;
  readonly problem: string | null;
  readonly linkOf: (window: number) => SpecimenLink | null;
  readonly torch: Torch;
  readonly onTorch: (torch: Torch) => void;
  readonly onAnswer: (answer: EyeAnswer) => void;
  readonly onGoOn: () => void;
  readonly onPainted: () => void;
}

/** Marks lie so far inside the window at first, mm. */
const EDGE = 2;

/** One task: its windows under the torch, the question, and what is told of the answer. */
export function TaskDesk(props: TaskDeskProps) {
  const { task, told, torch, onTorch } = props;
  const { length } = task.windows[0];
  const [marks, setMarks] = useState<Marks>({ from: EDGE, to: length - EDGE });
  const questionId = useId();
  const question = useRef<HTMLHeadingElement>(null);
  const { asks, hint } = questionOf(task);
  const isWide = task.kind === "ends" || task.kind === "pair";
  const right = told?.right.kind === "ends" ? told.right : null;

  useEffect(() => {
    // what is answered by a field or by marks takes the focus itself
    if (task.kind === "size" || task.kind === "ends" || (task.kind === "name" && !task.options)) return;
    question.current?.focus({ preventScroll: true });
  }, [task]);

  return (
    <div className={isWide ? "eye-desk-wide" : "eye-desk"} data-task={task.id} data-kind={task.kind}>
      <div className={task.kind === "pair" ? "eye-pair" : "eye-single"}>
        {task.windows.map((window, n) => (
          <WindowView
            key={sideOf(n)}
            window={window}
            link={props.linkOf(n)}
            label={`${task.windows.length === 2 ? `${sentence(sideOf(n))} window` : "Window on the weld"}, under the torch`}
            torch={torch}
            onTorch={onTorch}
            isMarkedOn={task.kind === "ends"}
            scale={task.kind === "ends" ? "whole" : "ten"}
            onPainted={props.onPainted}
          >
            {(view) => (
              <>
                {told && <ThingOutlines view={view} things={outlinedIn(told, n)} />}
                {task.kind === "ends" && (
                  <EndMarks
                    view={view}
                    length={length}
                    marks={marks}
                    right={right}
                    onChange={setMarks}
                    describedBy={questionId}
                  />
                )}
              </>
            )}
          </WindowView>
        ))}
      </div>
      <div
        className={`eye-panel rounded-md border border-line bg-sheet p-4 ${task.kind === "ends" && !told ? "eye-panel-one" : ""}`}
      >
        <div className="eye-ask">
          <h2
            id={questionId}
            ref={question}
            tabIndex={-1}
            className="font-semibold text-lg leading-snug outline-none focus-visible:shadow-none"
          >
            {asks}
          </h2>
          <p className="mt-1 mb-3 text-ink-2 text-sm">{hint}</p>
          <AnswerPanel task={task} told={told} marks={marks} onMarks={setMarks} onAnswer={props.onAnswer} />
          {props.problem && (
            <div className="mt-3">
              <Notice>{props.problem}</Notice>
            </div>
          )}
        </div>
        {!told && (
          <p className="eye-torch-hint">
            {task.kind === "ends"
              ? "Carry the torch by itself; further out is lower."
              : "Drag on the window to carry the torch, or press the arrow keys; further out is lower."}
          </p>
        )}
        {told && (
          <div className="eye-told">
            <Told isRight={told.isRight} isLast={props.isLast} onGoOn={props.onGoOn}>
              {toldWords(task, told).map((words) => (
                <p key={words}>{words}</p>
              ))}
            </Told>
          </div>
        )}
      </div>
    </div>
  );
}

/** What is outlined in a window: beside an imperfection, what is too small to be recorded would only stand in the way. */
function outlinedIn({ things }: ToldTask, window: number): ToldTask["things"] {
  const own = things.filter((thing) => thing.window === window);
  return own.some(({ what }) => what === "imperfection") ? own.filter(({ what }) => what !== "neutral") : own;
}
