"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { ToSet } from "@/lib/progress";
import { ToldForm } from "../../told-form";
import type { setAsPaper } from "./actions";

interface SetAsPaperProps {
  readonly classId: string;
  /** At least one. */
  readonly toSet: readonly ToSet[];
  readonly set: typeof setAsPaper;
}

/** Makes a paper of what the class misses with one press; what is on it can be chosen first. */
export function SetAsPaper({ classId, toSet, set }: SetAsPaperProps) {
  const [ticked, setTicked] = useState<readonly ImperfectionType[]>(() =>
    toSet.filter(({ isAdvised }) => isAdvised).map(({ type }) => type),
  );
  const chosen = toSet.filter(({ type }) => ticked.includes(type)).map(({ type }) => type);
  const toggle = (type: ImperfectionType, isOn: boolean) =>
    setTicked((now) => (isOn ? [...now, type] : now.filter((one) => one !== type)));
  return (
    <ToldForm action={set} className="mt-4 border-line border-t pt-3">
      {(problem) => (
        <>
          <input type="hidden" name="class" value={classId} />
          {/* in the order of the list, whatever order they were ticked in */}
          {chosen.map((type) => (
            <input key={type} type="hidden" name="types" value={type} />
          ))}
          <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
            <Button type="submit" disabled={chosen.length === 0}>
              Set as a paper
            </Button>
            <p className="min-w-0 flex-1 basis-72 text-sm">{saysOf(chosen)}</p>
          </div>
          {problem?.fields.types && <p className="mt-1 font-medium text-missed text-sm">{problem.fields.types}</p>}
          <details open={chosen.length === 0 || undefined} className="mt-1">
            <summary className="inline-flex min-h-11 cursor-pointer items-center rounded font-medium text-action text-sm underline underline-offset-4">
              Choose what is on it
            </summary>
            <fieldset>
              <legend className="sr-only">Imperfections on the paper's pieces</legend>
              <div className="grid gap-x-6 sm:grid-cols-2">
                {toSet.map(({ type, found }) => (
                  <label key={type} className="flex min-h-11 cursor-pointer items-center gap-3 text-sm">
                    <input
                      type="checkbox"
                      checked={ticked.includes(type)}
                      onChange={(event) => toggle(type, event.target.checked)}
                      className="size-5 shrink-0 accent-action"
                    />
                    <span>
                      {imperfection(type).name} <span className="text-ink-2">{imperfection(type).number}</span>
                      <span className="block text-ink-2 text-xs">
                        {found.count} of {found.of} found
                      </span>
                    </span>
                  </label>
                ))}
              </div>
            </fieldset>
          </details>
        </>
      )}
    </ToldForm>
  );
}

function saysOf(chosen: readonly ImperfectionType[]): string {
  if (chosen.length === 0) return "Tick what is to be on its pieces first.";
  const names = chosen.map((type) => imperfection(type).name.toLowerCase());
  const last = names.pop();
  const all = names.length > 0 ? `${names.join(", ")} and ${last}` : last;
  return `With ${all} on its pieces. You look it over first; nobody sits it until you plan a sitting.`;
}
