"use client";

import { type ReactNode, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { count, list } from "../sitting-words";
import { ActForm } from "./act-form";
import type { Board } from "./board";
import { Dialog } from "./dialog";
import { localInput } from "./local-input";
import { sendAct } from "./send-act";

/** What is done to a whole sitting and asked about first. */
export type WholeAct = "add-time" | "close" | "release" | "void" | "move";

interface WholeDialogProps {
  readonly act: WholeAct;
  readonly board: Board;
  readonly onClose: () => void;
  /** Called with a sentence on what was done. */
  readonly onDone: (told: string) => void;
}

/** The question before something is done to the whole sitting. */
export function WholeDialog({ act, board, onClose, onDone }: WholeDialogProps) {
  const { sitting } = board;
  const path = `/api/sittings/${sitting.id}/${act}`;
  switch (act) {
    case "add-time":
      return (
        <Dialog title="More time for all" onClose={onClose}>
          <ActForm
            path={path}
            label="Give everybody the minutes"
            asks={{ minutes: 10, reason: true }}
            onDone={({ minutes }) => onDone(`Everybody has ${count(Number(minutes), "minute")} more in each section.`)}
          >
            On top in every section that is open or still to come. What is closed stays closed.
          </ActForm>
        </Dialog>
      );
    case "close":
      return (
        <Dialog title="Close the sitting?" onClose={onClose}>
          <ActForm path={path} label="Close the sitting" look="main" onDone={() => onDone("The sitting is closed.")}>
            <StillOpen board={board} /> You can open single sections again, with minutes of their own, until you release
            the marks.
          </ActForm>
        </Dialog>
      );
    case "release":
      return (
        <Dialog title="Release the marks?" onClose={onClose}>
          <ActForm
            path={path}
            label="Release the marks for good"
            look="main"
            onDone={() => onDone("The marks are released.")}
          >
            Every learner sees their mark sheets, and with them what there was to find.{" "}
            <strong className="font-semibold text-ink">This cannot be taken back,</strong> and no section can be opened
            again after it.
          </ActForm>
        </Dialog>
      );
    case "void":
      return (
        <Dialog title="Make the whole sitting void?" onClose={onClose}>
          <ActForm
            path={path}
            label="Make the sitting void for good"
            asks={{ reason: true }}
            onDone={() => onDone("The sitting is void.")}
          >
            It counts for nothing, for everybody, and stops at once. What was written is kept.{" "}
            <strong className="font-semibold text-ink">This cannot be taken back.</strong>
          </ActForm>
        </Dialog>
      );
    case "move":
      return (
        <Dialog title="Set another time" onClose={onClose}>
          <MoveForm path={path} plannedAt={sitting.plannedAt} isOpen={sitting.state === "open"} onDone={onDone} />
        </Dialog>
      );
  }
}

/** Whose sections closing would close. */
function StillOpen({ board: { learners } }: { readonly board: Board }): ReactNode {
  const open = learners.flatMap(({ name, runs }) =>
    runs.filter(({ state }) => state === "running" || state === "paused").map(() => name),
  );
  const waiting = learners.flatMap(({ runs }) => runs).filter(({ state }) => state === "waiting").length;
  return (
    <>
      {open.length > 0
        ? `${list(open)} ${open.length === 1 ? "is" : "are"} still at it; their sections are closed with the last save and marked.`
        : "Nobody is at a section just now."}{" "}
      {waiting > 0 && `${count(waiting, "section")} not started ${waiting === 1 ? "counts" : "count"} as not sat.`}
    </>
  );
}

interface MoveFormProps {
  readonly path: string;
  readonly plannedAt: Date;
  readonly isOpen: boolean;
  readonly onDone: (told: string) => void;
}

function MoveForm({ path, plannedAt, isOpen, onDone }: MoveFormProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const send = async (form: FormData) => {
    const at = new Date(String(form.get("plannedAt") ?? ""));
    if (Number.isNaN(at.getTime())) return setProblem("Fill in a day and a time.");
    const acted = await sendAct(path, { plannedAt: at.toISOString() });
    if (!acted.ok) return setProblem([acted.message, ...Object.values(acted.fields)].join(" "));
    onDone("The sitting has another time now.");
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send(new FormData(event.currentTarget));
      }}
      className="mt-2 space-y-3"
      noValidate
    >
      <p className="text-ink-2 text-sm">
        {isOpen
          ? "It goes back to planned, and whoever is in waits for the new time like everybody else."
          : "Learners see the new time at once."}
      </p>
      {problem && <Notice>{problem}</Notice>}
      <Field
        name="plannedAt"
        label="Day and time, where you are"
        type="datetime-local"
        defaultValue={localInput(plannedAt)}
      />
      <Button type="submit" look="quiet">
        Set this time
      </Button>
    </form>
  );
}
