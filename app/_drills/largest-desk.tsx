"use client";
import { useEffect, useMemo, useState } from "react";
import { useGaugeOn } from "@/app/_bench/frame/use-gauge";
import { gaugeWords } from "@/app/_bench/gauge/gauge-words";
import { Button } from "@/app/_ui/button";
import { type DrillGauge, drawLargestTask, judgeLargest, type LargestTask, type LargestVerdict } from "@/lib/drills";
import { contactAt, GAUGES } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { AnswerField } from "./answer-field";
import type { TaskProps } from "./drill-rounds";
import { LargestTold } from "./largest-told";
import { readAnswer } from "./read-answer";
import { Told } from "./told";
import { handedOver, Workplace } from "./workplace";

const NOTHING = { value: "", at: "" } as const;

/** A weld along which the largest value is sought: set down, slide, read, move on; then how much was overlooked. */
export function LargestDesk({ name, gauges, isTold, isLast, onAnswer, onGoOn }: TaskProps) {
  const task = useMemo(
    () => drawLargestTask(randomStream(name), gauges as readonly DrillGauge<"find-largest">[]),
    [name, gauges],
  );
  const seating = useMemo(() => randomStream(name).child("seating"), [name]);
  const gauge = useGaugeOn("cap", task.heights, seating, handedOver(task.first));
  const { out, standing, position } = gauge;
  const read = useReadPlaces(
    out?.placement.x ?? 0,
    standing?.ok === true && contactAt(standing, position) === "touching",
  );

  const [typed, setTyped] = useState<Readonly<Record<"value" | "at", string>>>(NOTHING);
  const [problems, setProblems] = useState<Readonly<Record<"value" | "at", string | null>>>({ value: null, at: null });
  const [verdict, setVerdict] = useState<(LargestVerdict & { readonly value: number; readonly at: number }) | null>(
    null,
  );
  const type = (field: "value" | "at") => (text: string) => {
    setTyped({ ...typed, [field]: text });
    setProblems({ ...problems, [field]: null });
  };
  const check = () => {
    const { range } = GAUGES[task.kind];
    if (range === null) return;
    const { x0, x1 } = task.heights.extent;
    const value = readAnswer(
      typed.value,
      range.lowest,
      range.highest,
      "Type the largest that you read, for example 2.5.",
    );
    const at = readAnswer(typed.at, x0, x1, "Type where it was, in mm from the datum, for example 45.");
    setProblems({
      value: "problem" in value ? value.problem : null,
      at: "problem" in at ? at.problem : null,
    });
    if ("problem" in value || "problem" in at) return;
    const found = judgeLargest(task, { value: value.value, at: at.value }, read);
    setVerdict({ ...found, value: value.value, at: at.value });
    onAnswer({ isRight: found.isRight, error: found.error });
  };
  return (
    <Workplace
      gauge={gauge}
      heights={task.heights}
      stations={isTold ? [{ x: task.truth.at, text: "largest" }] : []}
      read={read}
      isAsking={!isTold}
      says={out ? gaugeWords(out, standing, null, position) : ""}
      isRefused={standing?.ok === false}
      underPlan={
        isTold &&
        verdict && (
          <Told isRight={verdict.isRight} isLast={isLast} onGoOn={onGoOn}>
            <LargestTold task={task} verdict={verdict} read={read} />
          </Told>
        )
      }
    >
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!isTold) check();
        }}
      >
        <p className="mb-2">{goalWords(task)}</p>
        <div className="grid gap-x-5 sm:grid-cols-2">
          <AnswerField
            label={task.kind === "height-gauge" ? "Largest height" : "Largest depth"}
            text={typed.value}
            problem={problems.value}
            isReadOnly={isTold}
            onType={type("value")}
          />
          <AnswerField
            label="Where, from the datum"
            text={typed.at}
            problem={problems.at}
            isReadOnly={isTold}
            onType={type("at")}
          />
        </div>
        {!isTold && (
          <div className="mt-2 flex flex-wrap items-center gap-4">
            <Button type="submit">That is the largest</Button>
            <span className="text-ink-2 text-sm" role="status">
              {readWords(read.length)}
            </span>
          </div>
        )}
      </form>
    </Workplace>
  );
}

/** Every place along the weld at which the moving part was brought to the metal, in order, mm. */
function useReadPlaces(x: number, isTouching: boolean): readonly number[] {
  const [places, setPlaces] = useState<readonly number[]>([]);
  useEffect(() => {
    if (isTouching) setPlaces((now) => (now.includes(x) ? now : [...now, x].sort((a, b) => a - b)));
  }, [x, isTouching]);
  return places;
}

function goalWords({ kind, work }: LargestTask): string {
  return kind === "height-gauge"
    ? "Find where the cap stands highest over the plate. Set the gauge down, bring its slide to the crown, read, and go along the weld."
    : `Find where the undercut along the toe on plate ${work.side === 1 ? "A" : "B"} is deepest. The point stands in it; go along the weld.`;
}

const readWords = (count: number): string =>
  count === 0 ? "Read nowhere yet." : `Read at ${count} ${count === 1 ? "place" : "places"}.`;
