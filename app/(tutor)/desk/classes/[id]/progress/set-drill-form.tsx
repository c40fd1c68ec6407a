"use client";
import { EYE_WORDS } from "@/app/_eye/eye-words";
import { Button } from "@/app/_ui/button";
import { byFamily, FAMILY_NAMES } from "@/lib/bench";
import { EYE_DRILLS, EYE_TYPES } from "@/lib/eye";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { ToldForm } from "../../told-form";
import { setClassDrill, withdrawClassDrill } from "./actions";

interface SetDrillFormProps {
  readonly classId: string;
  /** Ticked at first. */
  readonly proposed: readonly ImperfectionType[];
}

const SHOWN = byFamily(EYE_TYPES);

/** Which drill, and what most of it is to be about. */
export function SetDrillForm({ classId, proposed }: SetDrillFormProps) {
  return (
    <ToldForm action={setClassDrill} className="mt-2 space-y-3">
      {(problem) => (
        <>
          <input type="hidden" name="class" value={classId} />
          <p className="max-w-3xl text-ink-2">
            Most of the tasks are about what is ticked and what it is taken for. The others are about anything, or the
            answers would be known beforehand.
          </p>
          <div className="flex flex-wrap items-end gap-x-6 gap-y-3">
            <label className="block">
              <span className="mb-1 block font-medium text-sm">Drill</span>
              <select name="drill" defaultValue="mixed" className="h-11 rounded border border-ink-2 bg-white px-3">
                {EYE_DRILLS.filter((drill) => drill !== "burst").map((drill) => (
                  <option key={drill} value={drill}>
                    {EYE_WORDS[drill].title}
                  </option>
                ))}
              </select>
            </label>
            <fieldset className="flex flex-wrap gap-x-5">
              <legend className="font-medium text-sm">About</legend>
              {proposed.length === 0 && <p className="py-2 text-ink-2">Nothing stands out yet: choose below.</p>}
              {proposed.map((type) => (
                <Tick key={type} type={type} isOn />
              ))}
            </fieldset>
          </div>
          <details className="rounded border border-line px-4">
            <summary className="min-h-11 cursor-pointer py-2.5">Other imperfections</summary>
            <div className="grid gap-x-8 gap-y-2 pb-3 sm:grid-cols-2 lg:grid-cols-3">
              {SHOWN.map(({ family, types }) => (
                <fieldset key={family}>
                  <legend className="font-semibold text-ink-2 text-sm">{FAMILY_NAMES[family]}</legend>
                  {types
                    .filter((type) => !proposed.includes(type))
                    .map((type) => (
                      <div key={type}>
                        <Tick type={type} />
                      </div>
                    ))}
                </fieldset>
              ))}
            </div>
          </details>
          {problem &&
            Object.entries(problem.fields).map(([field, words]) => (
              <p key={field} className="font-medium text-missed text-sm">
                {field === "types" ? "About" : "Drill"}: {words}.
              </p>
            ))}
          <Button type="submit">Set it for the class</Button>
        </>
      )}
    </ToldForm>
  );
}

const Tick = ({ type, isOn = false }: { readonly type: ImperfectionType; readonly isOn?: boolean }) => (
  <label className="inline-flex min-h-11 cursor-pointer items-center gap-2">
    <input type="checkbox" name="type" value={type} defaultChecked={isOn} className="size-5 accent-action" />
    {imperfection(type).name}
  </label>
);

/** Takes a drill that was set off everybody's Today. */
export function WithdrawForm({ classId, setDrillId }: { readonly classId: string; readonly setDrillId: string }) {
  return (
    <ToldForm action={withdrawClassDrill} className="space-y-2">
      {() => (
        <>
          <input type="hidden" name="class" value={classId} />
          <input type="hidden" name="set" value={setDrillId} />
          <Button type="submit" look="quiet">
            Withdraw
          </Button>
        </>
      )}
    </ToldForm>
  );
}
