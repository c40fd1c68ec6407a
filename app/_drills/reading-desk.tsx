"use client";
import { useEffect, useMemo, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { type DrillGauge, drawReadingTask, judgeReading, type ReadingTask, slipWords } from "@/lib/drills";
import { explainReading, GAUGES } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { AnswerField } from "./answer-field";
import type { TaskProps } from "./drill-rounds";
import { inMm, readAnswer, spell } from "./read-answer";
import { RuleView } from "./rule-view";
import { StandingView } from "./standing-view";
import { Told } from "./told";

/** A scale to read: type, Enter, see what it reads and why, Enter. */
export function ReadingDesk({ name, gauges, isTold, isLast, onAnswer, onGoOn }: TaskProps) {
  const task = useMemo(
    () => drawReadingTask(randomStream(name), gauges as readonly DrillGauge<"read-scale">[]),
    [name, gauges],
  );
  const { range } = GAUGES[task.kind];
  const [text, setText] = useState("");
  const [typed, setTyped] = useState<number | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);

  const check = () => {
    if (range === null) return;
    const read = readAnswer(text, range.lowest, range.highest, "Type what the scale reads, for example 12.5.");
    if ("problem" in read) {
      setProblem(read.problem);
      field.current?.focus();
      return;
    }
    const { isRight, error } = judgeReading(task, read.value);
    setTyped(read.value);
    onAnswer({ isRight, error });
  };
  return (
    <div className="drill-desk mt-3">
      <div className="rounded-md bg-bench-2 p-3">
        <p className="mb-2 text-bench-text text-sm">
          <b className="mr-2">{GAUGES[task.kind].name}</b>
          <span className="text-bench-dim">{whatItShows(task)}</span>
        </p>
        {task.kind === "steel-rule" ? (
          <RuleView position={task.position} isTold={isTold} />
        ) : (
          <StandingView task={task} isTold={isTold} />
        )}
      </div>
      <div className="rounded-md border border-line bg-sheet p-4">
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (!isTold) check();
          }}
        >
          <AnswerField
            ref={field}
            label="You read"
            text={text}
            problem={problem}
            hint={`Read it to ${inMm(GAUGES[task.kind].step)}.`}
            isReadOnly={isTold}
            onType={(next) => {
              setText(next);
              setProblem(null);
            }}
          />
          {!isTold && (
            <div className="mt-2">
              <Button type="submit">Check</Button>
            </div>
          )}
        </form>
        {isTold && typed !== null && (
          <div className="mt-3 border-line border-t pt-3">
            <ReadingTold task={task} typed={typed} isLast={isLast} onGoOn={onGoOn} />
          </div>
        )}
      </div>
    </div>
  );
}

function ReadingTold({
  task,
  typed,
  ...way
}: { readonly task: ReadingTask; readonly typed: number } & Pick<TaskProps, "isLast" | "onGoOn">) {
  const { isRight, error, slip } = judgeReading(task, typed);
  return (
    <Told isRight={isRight} {...way}>
      <p>
        It reads <b className="tabular-nums">{inMm(task.key)}</b>
        {error === 0
          ? "."
          : `; you read ${spell(typed)}, ${inMm(Math.abs(error))} too ${error > 0 ? "much" : "little"}.`}
        {isRight && error !== 0 && " That is within one step of the scale."}
      </p>
      {slip && <p>{slipWords(slip)}</p>}
      <p className="text-ink-2 text-sm">
        {task.kind === "steel-rule"
          ? `The scribed line meets the edge nearest to the line at ${inMm(task.key)}. The rule is read to ${inMm(GAUGES[task.kind].step)}.`
          : explainReading(task.kind, task.position).words}
      </p>
    </Told>
  );
}

/** What the reading is of, as far as one sees it. */
function whatItShows(task: ReadingTask): string {
  switch (task.kind) {
    case "height-gauge":
      return "height of a cap over the plate; below nought where it lies lower";
    case "depth-gauge":
      return "depth of a hollow below the plate; below nought where it stands up";
    case "hook-gauge":
      return "how much lower the other plate lies; below nought where it is the higher one";
    case "fillet-gauge":
      return task.placement.kind === "fillet-gauge" && task.placement.use === "throat"
        ? "throat of a fillet weld"
        : "leg of a fillet weld";
    case "caliper":
      return "thickness of the plate between its jaws";
    case "steel-rule":
      return "distance of the scribed line from the end of the plate";
  }
}
