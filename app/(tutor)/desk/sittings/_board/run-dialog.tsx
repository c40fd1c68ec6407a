"use client";

import { type ReactNode, useId } from "react";
import type { SittingState } from "@/lib/sittings";
import { count } from "../sitting-words";
import { ActForm } from "./act-form";
import type { BoardLearner, BoardRun } from "./board";
import { runName, runWords } from "./board-words";
import { ClockTime } from "./clock-time";
import { Dialog } from "./dialog";
import { TimeLeft } from "./server-time";

interface RunDialogProps {
  readonly sittingId: string;
  readonly state: SittingState;
  readonly learner: BoardLearner;
  readonly run: BoardRun;
  readonly onClose: () => void;
  /** Called with a sentence on what was done. */
  readonly onDone: (told: string) => void;
}

const MINUTES_ON_TOP = 10;
const MINUTES_AGAIN = 15;

/** What can be done to one section of one learner. */
export function RunDialog({ sittingId, state, learner, run, onClose, onDone }: RunDialogProps) {
  const { name } = learner;
  const section = runName(run).toLowerCase();
  const path = (act: string) => `/api/runs/${run.runId}/${act}`;
  const isBegun = run.state === "running" || run.state === "paused";
  const isClosed = run.state === "handed-in" || run.state === "expired";
  const canStillChange = state !== "released" && state !== "void";
  const isToCome = canStillChange && (isBegun || (run.state === "waiting" && state !== "closed"));
  return (
    <Dialog title={`${name}: ${section}`} onClose={onClose}>
      <div className="mt-2 flex flex-wrap gap-x-6 gap-y-1 text-ink-2">
        <span>{runWords(run, state)}</span>
        {run.clock.state !== "stopped" && (
          <span className="[&>span]:inline! [&>span+span]:ml-2">
            <TimeLeft clock={run.clock} />
          </span>
        )}
        <span>
          {run.savedAt ? (
            <>
              last saved <ClockTime at={run.savedAt} withSeconds />
            </>
          ) : (
            "nothing saved yet"
          )}
        </span>
      </div>
      {run.voidReason !== null && <p className="mt-3">Void, and counts for nothing: {run.voidReason}</p>}
      {isToCome && (
        <Part title="More time">
          <ActForm
            path={path("add-time")}
            label="Give the minutes"
            asks={{ minutes: MINUTES_ON_TOP, reason: true }}
            onDone={({ minutes }) => onDone(`${name} has ${count(Number(minutes), "minute")} more in this section.`)}
          >
            On top of what there is, in this section alone, at once. {name} sees it on the clock.
          </ActForm>
        </Part>
      )}
      {run.state === "running" && canStillChange && (
        <Part title="Pause">
          <ActForm path={path("pause")} label="Pause this section" onDone={() => onDone(`${name} is paused.`)}>
            The clock of this section stands and its bench is covered until you resume it.
          </ActForm>
        </Part>
      )}
      {run.state === "paused" && (
        <Part title="Resume">
          <ActForm path={path("resume")} label="Resume this section" onDone={() => onDone(`${name} goes on.`)}>
            The clock goes on from where it stood.
          </ActForm>
        </Part>
      )}
      {isClosed && canStillChange && (
        <Part title="Open again">
          {run.hasSeenMarks ? (
            <p className="mt-2 text-ink-2 text-sm">
              {name} has seen what there was to find on this piece, so it stays closed. Plan a re-sit on a fresh piece
              instead.
            </p>
          ) : (
            <ActForm
              path={path("re-open")}
              label="Open this section again"
              asks={{ minutes: MINUTES_AGAIN, reason: true }}
              onDone={({ minutes }) => onDone(`${name} may go on for ${count(Number(minutes), "minute")} from now.`)}
            >
              {name} goes on with what was last saved, for so many minutes from now, whatever was left before. A mark
              given already is taken back and made anew, and what was changed about it goes with it; the log keeps that.
            </ActForm>
          )}
        </Part>
      )}
      {isToCome && (
        <Part title="Extra time in the whole paper">
          <ActForm
            key={learner.factor}
            path={`/api/sittings/${sittingId}/factor/${learner.userId}`}
            label="Change the extra time"
            asks={{ factor: learner.factor, reason: true }}
            onDone={({ factor }) => onDone(`${name} has ${factor} times the usual time.`)}
          >
            Multiplies the paper&rsquo;s minutes in every section of {name} that is open or to come; 1 is the usual
            time.
          </ActForm>
        </Part>
      )}
      {isBegun && canStillChange && (
        <Part title="Close">
          <ActForm
            path={path("close")}
            label="Close this section"
            onDone={() => onDone(`${name}’s section is closed.`)}
          >
            {run.savedAt ? (
              <>
                It is closed with the save of <ClockTime at={run.savedAt} withSeconds /> and marked.
              </>
            ) : (
              "Nothing is saved yet: it is closed empty and marked so."
            )}{" "}
            You can open it again with minutes of its own until the marks are released.
          </ActForm>
        </Part>
      )}
      {run.state !== "void" && state !== "void" && (
        <Part title="Make void">
          <ActForm
            path={path("void")}
            label="Make this section void for good"
            asks={{ reason: true }}
            onDone={() => onDone(`${name}’s section is void.`)}
          >
            It counts for nothing, as if it had not been sat. What was written is kept.{" "}
            <strong className="font-semibold text-ink">This cannot be taken back.</strong>
          </ActForm>
        </Part>
      )}
    </Dialog>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section aria-labelledby={id} className="mt-4 border-line border-t pt-3">
      <h4 id={id} className="font-medium">
        {title}
      </h4>
      {children}
    </section>
  );
}
