"use client";

import Link from "next/link";
import { startTransition, useActionState, useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { SlipsPanel } from "../../../slips/slips-panel";
import type { bringList, ListState } from "./actions";
import { ListInput } from "./list-input";
import { PreviewTable } from "./preview-table";
import { confirmWords, doneWords } from "./preview-words";

interface ListDeskProps {
  readonly classId: string;
  readonly className: string;
  readonly workshop: string;
  readonly publicAddress: string | null;
  readonly bring: typeof bringList;
}

const NOTHING_YET: ListState = { step: "write", problem: null };

/** A list, what will happen to each of its rows, and once that is confirmed the slips of those who are new. */
export function ListDesk({ classId, className, workshop, publicAddress, bring }: ListDeskProps) {
  const [state, send, isPending] = useActionState(bring, NOTHING_YET);
  const [list, setList] = useState("");
  const preview = useRef<HTMLDivElement>(null);
  const done = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.step === "preview") preview.current?.focus();
    if (state.step === "done") done.current?.focus();
  }, [state]);

  if (state.step === "done") {
    const told = doneWords(state.slips.length, state.added, className);
    return (
      <>
        {state.slips.length > 0 ? (
          <SlipsPanel slips={state.slips} told={told} workshop={workshop} publicAddress={publicAddress} />
        ) : (
          <div ref={done} tabIndex={-1} className="mt-4 outline-none">
            <Notice isGood>{told}</Notice>
          </div>
        )}
        <Link
          href={`/desk/classes/${classId}`}
          className="mt-5 inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
        >
          Go to the class
        </Link>
      </>
    );
  }
  const shown = state.step === "preview" && state.list === list ? state : null;
  const confirm = shown && confirmWords(shown.rows);
  return (
    <>
      <Sheet title="The list" className="mt-3">
        {state.step === "write" && state.problem && <Notice>{state.problem.message}</Notice>}
        <ListInput
          list={list}
          setList={setList}
          problem={state.step === "write" ? state.problem?.fields.list : undefined}
        />
        <div className="mt-4">
          <Button
            look={shown ? "quiet" : "main"}
            disabled={isPending}
            onClick={() => startTransition(() => send({ classId, list }))}
          >
            {state.step === "preview" ? "Check the list again" : "Check the list"}
          </Button>
        </div>
      </Sheet>
      {shown && confirm && (
        <div ref={preview} tabIndex={-1} className="outline-none">
          <Sheet title="What will happen" className="mt-5">
            {shown.problem && <Notice>{shown.problem.message}</Notice>}
            <PreviewTable rows={shown.rows} />
            <p className="mt-4 max-w-3xl">{confirm.note}</p>
            <div className="mt-3">
              <Button
                disabled={isPending || confirm.button === null}
                onClick={() => startTransition(() => send({ classId, list, agreed: shown.rows }))}
              >
                {confirm.button ?? "Nobody to add"}
              </Button>
            </div>
          </Sheet>
        </div>
      )}
    </>
  );
}
