"use client";
import { useEffect, useRef, useState } from "react";
import { TypePicker } from "@/app/_bench/report/type-picker";
import { Button } from "@/app/_ui/button";
import type { AskedTask, EyeAnswer, ToldTask } from "@/lib/eye";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { roundTo } from "@/lib/math";
import { AnswerField } from "../_drills/answer-field";
import { readAnswer, spell } from "../_drills/read-answer";
import { Choices } from "./choices";
import { type Marks, moved } from "./end-marks";

export interface AnswerProps {
  readonly task: AskedTask;
  /** Null before it is answered. */
  readonly told: ToldTask | null;
  readonly marks: Marks;
  readonly onMarks: (marks: Marks) => void;
  readonly onAnswer: (answer: EyeAnswer) => void;
}

/** What a task is answered with. */
export function AnswerPanel(props: AnswerProps) {
  const { task, told, onAnswer } = props;
  switch (task.kind) {
    case "spot":
      return (
        <Choices
          choices={[
            { value: true, words: "Yes, there is" },
            { value: false, words: "No, nothing" },
          ]}
          chosen={told?.answer.kind === "spot" ? told.answer.isThere : null}
          right={told?.right.kind === "spot" ? told.right.isThere : null}
          onChoose={(isThere) => onAnswer({ kind: "spot", isThere })}
        />
      );
    case "pair":
      return (
        <Choices
          isInRow
          choices={[
            { value: 0, words: "The left one" },
            { value: 1, words: "The right one" },
          ]}
          chosen={told?.answer.kind === "pair" ? told.answer.window : null}
          right={told?.right.kind === "pair" ? told.right.window : null}
          onChoose={(window) => onAnswer({ kind: "pair", window: window === 0 ? 0 : 1 })}
        />
      );
    case "name":
      return task.options ? <NameOfFour {...props} options={task.options} /> : <NameOfAll {...props} />;
    case "ends":
      return <EndsFields {...props} />;
    case "size":
      return <SizeField {...props} />;
  }
}

function NameOfFour({ options, told, onAnswer }: AnswerProps & { readonly options: readonly ImperfectionType[] }) {
  return (
    <Choices
      choices={options.map((value) => ({ value, words: imperfection(value).name }))}
      chosen={told?.answer.kind === "name" ? told.answer.type : null}
      right={told?.right.kind === "name" ? told.right.type : null}
      onChoose={(type) => onAnswer({ kind: "name", type })}
    />
  );
}

function NameOfAll({ task, told, onAnswer }: AnswerProps) {
  const [type, setType] = useState<ImperfectionType | null>(null);
  const check = useRef<HTMLDivElement>(null);
  useEffect(() => {
    check.current?.querySelector<HTMLElement>(type ? "button" : "input")?.focus({ preventScroll: true });
  }, [type]);
  if (told) return null;
  return (
    <div ref={check}>
      <TypePicker face={task.windows[0].face} value={type} onChange={setType} />
      <div className="mt-2">
        <Button disabled={type === null} onClick={() => type && onAnswer({ kind: "name", type })}>
          Check
        </Button>
      </div>
    </div>
  );
}

/** A text as it was typed, and where the marks were after it: it stands until one of them is moved otherwise. */
interface Typed {
  readonly text: string;
  readonly marks: Marks;
}

/** The marks as numbers, for whoever would rather type. */
function EndsFields({ task, told, marks, onMarks, onAnswer }: AnswerProps) {
  const { length } = task.windows[0];
  const [typed, setTyped] = useState<Partial<Record<keyof Marks, Typed>>>({});
  const [problem, setProblem] = useState<string | null>(null);
  const textOf = (mark: keyof Marks): string => {
    const last = typed[mark];
    const isUntouched = last?.marks.from === marks.from && last.marks.to === marks.to;
    return last && isUntouched ? last.text : spell(marks[mark], 1);
  };
  const readOf = (mark: keyof Marks, text: string) =>
    readAnswer(text, 0, length, `Type the ${mark === "from" ? "start" : "end"}, in mm, for example 12.5.`);
  const type = (mark: keyof Marks, text: string) => {
    const read = readOf(mark, text);
    const next = "value" in read ? moved(marks, mark, read.value, length) : marks;
    setTyped({ ...typed, [mark]: { text, marks: next } });
    setProblem(null);
    onMarks(next);
  };
  const check = () => {
    for (const mark of ["from", "to"] as const) {
      const read = readOf(mark, textOf(mark));
      if ("problem" in read) return setProblem(read.problem);
      if (roundTo(read.value, 0.1) !== marks[mark])
        return setProblem("The end has to lie further along than the start.");
    }
    onAnswer({ kind: "ends", ...marks });
  };
  return (
    <form
      className="flex flex-wrap items-start gap-x-5"
      onSubmit={(event) => {
        event.preventDefault();
        if (!told) check();
      }}
    >
      {(["from", "to"] as const).map((mark) => (
        <AnswerField
          key={mark}
          label={mark === "from" ? "Start" : "End"}
          text={textOf(mark)}
          problem={null}
          isReadOnly={told !== null}
          onType={(text) => type(mark, text)}
        />
      ))}
      {!told && (
        <div className="pt-6">
          <Button type="submit">Check</Button>
        </div>
      )}
      {problem && (
        <p role="alert" className="w-full font-medium text-missed text-sm">
          {problem}
        </p>
      )}
    </form>
  );
}

/** Nothing in a short window is wider or longer than this, mm. */
const MOST = 50;

function SizeField({ told, onAnswer }: AnswerProps) {
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const check = () => {
    const read = readAnswer(text, 0, MOST, "Type your estimate, in mm, for example 2.5.");
    if ("problem" in read) return setProblem(read.problem);
    onAnswer({ kind: "size", value: read.value });
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (!told) check();
      }}
    >
      <AnswerField
        ref={field}
        label="You estimate"
        text={text}
        problem={problem}
        isReadOnly={told !== null}
        onType={(next) => {
          setText(next);
          setProblem(null);
        }}
      />
      {!told && <Button type="submit">Check</Button>}
    </form>
  );
}
