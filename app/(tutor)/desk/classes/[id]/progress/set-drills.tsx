import { setDrillWords } from "@/app/_eye/set-drill-words";
import { currentCaller } from "@/app/_server/session";
import { readSetDrills } from "@/app/_server/use-cases/read-set-drills";
import { LocalTime } from "@/app/_ui/local-time";
import { Sheet } from "@/app/_ui/sheet";
import { EYE_TYPES } from "@/lib/eye";
import type { ImperfectionType } from "@/lib/imperfections";
import type { ClassStanding } from "@/lib/progress";
import { SetDrillForm, WithdrawForm } from "./set-drill-form";

/** So many of what a class misses are proposed. */
const PROPOSED = 3;

/** Set as a drill: what the class misses and mixes up is proposed, and what was set before shows who has done it and how. */
export async function SetDrills({ classId, standing }: { readonly classId: string; readonly standing: ClassStanding }) {
  const read = await readSetDrills(await currentCaller(), classId);
  if (!read.ok) return null;
  return (
    <Sheet title="Set as a drill" className="mt-5">
      {read.isInUse && <SetDrillForm classId={classId} proposed={proposedOf(standing)} />}
      {read.drills.map(({ drill, learners }) => {
        const done = learners.flatMap((learner) => (learner.done ? [{ ...learner, done: learner.done }] : []));
        const missing = learners.filter((learner) => learner.done === null);
        return (
          <section key={drill.id} aria-label={setDrillWords(drill)} className="mt-4 border-line border-t pt-4">
            <div className="flex flex-wrap items-start justify-between gap-x-6 gap-y-2">
              <p className="min-w-0 flex-1 basis-80">
                <span className="font-medium">{setDrillWords(drill)}.</span>{" "}
                <span className="text-ink-2">
                  Set {drill.setBy && `by ${drill.setBy} `}on <LocalTime at={drill.setAt} />
                  {drill.withdrawnAt && ", withdrawn"}. Done by {done.length} of {learners.length}.
                </span>
              </p>
              {read.isInUse && !drill.withdrawnAt && <WithdrawForm classId={classId} setDrillId={drill.id} />}
            </div>
            {done.length > 0 && (
              <ul className="mt-2 grid gap-x-8 text-sm tabular-nums sm:grid-cols-2 lg:grid-cols-3">
                {done.map(({ id, name, done: { asked, right } }) => (
                  <li key={id} className="flex justify-between gap-4 border-line border-t py-1.5">
                    <span>{name}</span>
                    <span className="whitespace-nowrap">
                      <b>{right}</b> of {asked} right
                    </span>
                  </li>
                ))}
              </ul>
            )}
            {missing.length > 0 && (
              <p className="mt-2 text-ink-2 text-sm">Not yet: {missing.map(({ name }) => name).join(", ")}.</p>
            )}
          </section>
        );
      })}
    </Sheet>
  );
}

/** What most of the class misses, and what it confuses most, each once. */
function proposedOf({ missed, toTeach }: ClassStanding): readonly ImperfectionType[] {
  const isTold = ({ type, found }: ClassStanding["missed"][number]) =>
    EYE_TYPES.includes(type) && found.needed === 0 && (found.share ?? 1) < 1;
  const misses = missed.filter(isTold).slice(0, PROPOSED);
  const { confused } = toTeach;
  return [
    ...new Set([
      ...misses.map(({ type }) => type),
      ...(confused ? confused.pair.filter((type) => EYE_TYPES.includes(type)) : []),
    ]),
  ];
}
