"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { EYE_DRILLS, type EyeDrill } from "@/lib/eye";
import type { BeginRound } from "./eye-end";
import { EYE_WORDS, lengthWords } from "./eye-words";

/** The drills for the eye, each with its button; what is chosen above holds for all of them. */
export function BeginEye({ begin }: { readonly begin: BeginRound }) {
  const [problem, act] = useActionState(begin, null);
  return (
    <form action={act} className="mt-3">
      {problem && <Notice>{problem.message}</Notice>}
      <div className="flex flex-wrap gap-x-10 gap-y-1">
        <fieldset className="flex flex-wrap items-center gap-x-4">
          <legend className="float-left mr-4 py-2 text-ink-2">To name it, choose</legend>
          <Option type="radio" name="naming" value="four" words="one of four" isOn />
          <Option type="radio" name="naming" value="list" words="from the whole list" />
        </fieldset>
        <Option type="checkbox" name="clock" value="on" words="The burst is against the clock" isOn />
      </div>
      <ul className="mt-2 grid gap-3 sm:grid-cols-2 lg:grid-cols-4">
        {EYE_DRILLS.map((drill, n) => (
          <BeginCard key={drill} drill={drill} isFirst={n === 0} />
        ))}
      </ul>
    </form>
  );
}

function BeginCard({ drill, isFirst }: { readonly drill: EyeDrill; readonly isFirst: boolean }) {
  const { title, does } = EYE_WORDS[drill];
  const length =
    drill === "burst"
      ? `${lengthWords({ drill, isTimed: true })}, or ${lengthWords({ drill, isTimed: false })}`
      : lengthWords({ drill, isTimed: false });
  return (
    <li
      className={`flex flex-col justify-between rounded border bg-paper/60 p-4 ${isFirst ? "border-ink-2 sm:col-span-2" : "border-line"}`}
    >
      <div>
        <h3 className="font-medium">{title}</h3>
        <p className="mt-1 text-ink-2 text-sm">{does}</p>
      </div>
      <p className="mt-3 flex items-center gap-3">
        <Button
          type="submit"
          name="drill"
          value={drill}
          look={isFirst ? "main" : "quiet"}
          aria-label={`Begin: ${title}`}
        >
          Begin
        </Button>
        <span className="text-ink-2 text-sm">{length}</span>
      </p>
    </li>
  );
}

interface OptionProps {
  readonly type: "radio" | "checkbox";
  readonly name: string;
  readonly value: string;
  readonly words: string;
  readonly isOn?: boolean;
}

const Option = ({ type, name, value, words, isOn = false }: OptionProps) => (
  <label className="inline-flex min-h-11 cursor-pointer items-center gap-2">
    <input type={type} name={name} value={value} defaultChecked={isOn} className="size-5 accent-action" />
    {words}
  </label>
);
