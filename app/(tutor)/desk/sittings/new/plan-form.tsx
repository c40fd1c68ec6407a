"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useId, useState } from "react";
import type { DueInClass } from "@/app/_server/sitting-views";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Sheet } from "@/app/_ui/sheet";
import type { Section } from "@/lib/results";
import { sendAct } from "../_board/send-act";
import { dueWords } from "../due-words";
import { type Choices, expectedOf, type Plan, planOf, writtenPlan } from "./plan";
import { WhatHappens } from "./what-happens";

interface PlanFormProps extends Choices {
  readonly asked: { readonly classId: string | null; readonly paperId: string | null; readonly isDue: boolean };
}

/** Class, paper, who and when of a sitting, with what will come of it beside. */
export function PlanForm({ asked, ...choices }: PlanFormProps) {
  const router = useRouter();
  const [plan, setPlan] = useState<Plan>(() => planOf(choices, asked));
  const [problem, setProblem] = useState<string | null>(null);
  const [isSending, setIsSending] = useState(false);
  const change = (changes: Partial<Plan>) => {
    setProblem(null);
    setPlan((before) => ({ ...before, ...changes }));
  };
  const group = choices.classes.find(({ id }) => id === plan.classId);
  const kept = choices.papers.find(({ id }) => id === plan.paperId);
  const due = choices.dues.find((one) => one.classId === plan.classId && one.paperId === plan.paperId);
  if (!group || !kept) return null;
  const expected = expectedOf(plan, group, kept.paper, due);

  const send = async () => {
    const written = writtenPlan(plan, kept.paper);
    if (typeof written === "string") return setProblem(written);
    setIsSending(true);
    const sent = await sendAct("/api/sittings", written);
    if (sent.ok && sent.id !== null) return router.push(`/desk/sittings/${sent.id}`);
    setIsSending(false);
    if (!sent.ok) setProblem([sent.message, ...Object.values(sent.fields)].join(" "));
  };

  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
      className="mt-3 grid items-start gap-5 lg:grid-cols-[1fr_24rem]"
      noValidate
    >
      <Sheet title="The sitting">
        <div className="mt-3 space-y-5">
          <div className="grid gap-4 sm:grid-cols-2">
            <Choice
              label="Class"
              value={plan.classId}
              options={choices.classes.map(({ id, name }) => [id, name])}
              onChange={(classId) => setPlan(planOf(choices, { ...plan, classId, isDue: false }))}
            />
            <Choice
              label="Paper"
              value={plan.paperId}
              options={choices.papers.map(({ id, paper }) => [id, paper.name])}
              onChange={(paperId) => setPlan(planOf(choices, { ...plan, paperId, isDue: plan.who === "due" }))}
            />
          </div>
          <Lines legend="Who sits it">
            <Radio name="who" isChosen={plan.who === "class"} choose={() => change({ who: "class" })}>
              Everybody in the class, also who joins before it is closed
            </Radio>
            <Radio name="who" isChosen={plan.who === "chosen"} choose={() => change({ who: "chosen" })}>
              Those I choose
            </Radio>
            <Radio name="who" isChosen={plan.who === "due"} isOff={!due} choose={() => change({ who: "due" })}>
              Those with a section due again
              {!due && <span className="text-ink-2"> (nobody has now)</span>}
            </Radio>
          </Lines>
          <People plan={plan} members={group.members} due={due} change={change} />
          {kept.paper.sections.length > 1 && (
            <Lines legend={plan.who === "due" ? "Of what is due to each of them" : "Sections"}>
              {kept.paper.sections.map(({ section, minutes, passMark }) => (
                <Check
                  key={section}
                  isChosen={plan.sections.has(section)}
                  toggle={() => change({ sections: toggled(plan.sections, section) })}
                >
                  {SECTION_NAMES[section]}{" "}
                  <span className="text-ink-2">
                    {minutes} min, {passMark} to pass
                  </span>
                </Check>
              ))}
            </Lines>
          )}
          <When value={plan.plannedAt} onChange={(plannedAt) => change({ plannedAt })} />
        </div>
      </Sheet>
      <Sheet title="What will happen">
        <WhatHappens
          expected={expected}
          paper={kept.paper}
          plannedAt={plan.plannedAt}
          isForAll={plan.who === "class"}
        />
        {problem && (
          <div className="mt-4">
            <Notice>{problem}</Notice>
          </div>
        )}
        <div className="mt-4">
          <Button type="submit" isLarge disabled={isSending || expected.length === 0}>
            Plan the sitting
          </Button>
        </div>
      </Sheet>
    </form>
  );
}

interface PeopleProps {
  readonly plan: Plan;
  readonly members: Choices["classes"][number]["members"];
  readonly due: DueInClass | undefined;
  readonly change: (changes: Partial<Plan>) => void;
}

/** Who of the class, or of those with something due. */
function People({ plan, members, due, change }: PeopleProps) {
  if (plan.who === "class") return null;
  if (members.length === 0) return <p className="text-ink-2">Nobody is in this class yet.</p>;
  const isDue = plan.who === "due";
  const people = isDue
    ? (due?.learners ?? []).map(({ id, name, sections }) => ({ id, name, note: dueWords(sections) }))
    : members.map(({ id, name, timeFactor }) => ({ id, name, note: timeFactor === 1 ? "" : `× ${timeFactor} time` }));
  const chosen = isDue ? plan.chosenDue : plan.chosen;
  return (
    <Lines legend={isDue ? "Which of them" : "Learners"}>
      {people.map(({ id, name, note }) => (
        <Check
          key={id}
          isChosen={chosen.has(id)}
          toggle={() => change(isDue ? { chosenDue: toggled(chosen, id) } : { chosen: toggled(chosen, id) })}
        >
          {name} {note && <span className="text-ink-2">{note}</span>}
        </Check>
      ))}
    </Lines>
  );
}

function When({ value, onChange }: { readonly value: string; readonly onChange: (value: string) => void }) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className="block font-medium text-sm">
        Day and time, where you are
      </label>
      <input
        id={id}
        type="datetime-local"
        value={value}
        onChange={(event) => onChange(event.target.value)}
        aria-describedby={`${id}-hint`}
        className="mt-1 h-11 rounded border border-ink-2 bg-white px-3"
      />
      <p id={`${id}-hint`} className="mt-1 text-ink-2 text-sm">
        It does not begin by itself: you open and begin it.
      </p>
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string) => void;
}

function Choice({ label, value, options, onChange }: ChoiceProps) {
  const id = useId();
  return (
    <div className="min-w-0">
      <label htmlFor={id} className="block font-medium text-sm">
        {label}
      </label>
      <select
        id={id}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        className="mt-1 h-11 w-full rounded border border-ink-2 bg-white px-3"
      >
        {options.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}

function Lines({ legend, children }: { readonly legend: string; readonly children: ReactNode }) {
  return (
    <fieldset>
      <legend className="font-medium text-sm">{legend}</legend>
      <div className="mt-1">{children}</div>
    </fieldset>
  );
}

interface RadioProps {
  readonly name: string;
  readonly isChosen: boolean;
  readonly isOff?: boolean;
  readonly choose: () => void;
  readonly children: ReactNode;
}

function Radio({ name, isChosen, isOff = false, choose, children }: RadioProps) {
  return (
    <label className={`flex min-h-11 items-center gap-3 ${isOff ? "text-ink-2" : "cursor-pointer"}`}>
      <input
        type="radio"
        name={name}
        checked={isChosen}
        disabled={isOff}
        onChange={choose}
        className="size-5 shrink-0 accent-action"
      />
      <span>{children}</span>
    </label>
  );
}

interface CheckProps {
  readonly isChosen: boolean;
  readonly toggle: () => void;
  readonly children: ReactNode;
}

function Check({ isChosen, toggle, children }: CheckProps) {
  return (
    <label className="flex min-h-11 cursor-pointer items-center gap-3 wrap-anywhere">
      <input type="checkbox" checked={isChosen} onChange={toggle} className="size-5 shrink-0 accent-action" />
      <span>{children}</span>
    </label>
  );
}

const toggled = <T extends string | Section>(chosen: ReadonlySet<T>, one: T): ReadonlySet<T> =>
  new Set(chosen.has(one) ? [...chosen].filter((other) => other !== one) : [...chosen, one]);
