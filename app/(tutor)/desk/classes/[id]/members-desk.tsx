"use client";

import Link from "next/link";
import { useActionState, useEffect, useId, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { ClassMember } from "@/lib/classes";
import type { MarkedPlate } from "../../last-plate";
import { SlipsPanel } from "../../slips/slips-panel";
import type { changeMembers, MembersState } from "../actions";
import { MembersTable } from "./members-table";

interface MembersDeskProps {
  readonly classId: string;
  readonly isArchived: boolean;
  readonly members: readonly MemberRow[];
  readonly otherClasses: readonly { readonly id: string; readonly name: string }[];
  readonly workshop: string;
  readonly publicAddress: string | null;
  readonly change: typeof changeMembers;
}

export interface MemberRow extends ClassMember {
  readonly openCount: number;
  readonly handedInCount: number;
  readonly last: MarkedPlate | undefined;
}

const NOTHING_YET: MembersState = { told: null, slips: [], turn: 0 };

/** Everybody in a class, and everything that is done to one of them or to several. */
export function MembersDesk({ members, change, workshop, publicAddress, ...desk }: MembersDeskProps) {
  const [{ told, slips, turn }, send] = useActionState(change, NOTHING_YET);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const notice = useRef<HTMLDivElement>(null);
  const question = useRef<HTMLDialogElement>(null);
  const title = useId();
  const isOnSlips = slips.length > 0 && told?.problem === null && told.done.startsWith("The passwords before");

  // what was pressed may be gone with its row: the answer takes the focus
  useEffect(() => {
    if (turn > 0) notice.current?.focus();
  }, [turn]);

  const makeCodes = (form: FormData) => {
    question.current?.close();
    setChosen(new Set());
    send(form);
  };
  const names = members.filter(({ person }) => chosen.has(person.id)).map(({ person }) => person.name);
  const problems = told?.problem ? Object.values(told.problem.fields) : [];
  return (
    <Sheet title="Members" className="mt-3">
      {told && !isOnSlips && (
        <div ref={notice} key={turn} tabIndex={-1} className="mt-3 outline-none">
          <Notice isGood={!told.problem}>
            {told.problem ? [told.problem.message, ...problems].join(" ") : told.done}
          </Notice>
        </div>
      )}
      {slips.length > 0 && (
        <SlipsPanel
          key={slips[0].code}
          slips={slips}
          told="The passwords before work no more, and every device signed in with them is signed out."
          workshop={workshop}
          publicAddress={publicAddress}
        />
      )}
      {!desk.isArchived && (
        <div className="mt-3 flex flex-wrap items-center gap-3">
          <Link
            href={`/desk/classes/${desk.classId}/add`}
            className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
          >
            Add learners from a list
          </Link>
          <Button look="quiet" disabled={chosen.size === 0} onClick={() => question.current?.showModal()}>
            New codes and slips for {chosen.size === 0 ? "those you choose" : `${chosen.size} chosen`}
          </Button>
        </div>
      )}
      <MembersTable {...desk} members={members} chosen={chosen} setChosen={setChosen} send={send} />
      <dialog
        ref={question}
        aria-labelledby={title}
        className="m-auto w-full max-w-lg rounded-md border border-line bg-sheet p-6 text-ink wrap-anywhere backdrop:bg-black/50"
      >
        <h3 id={title} className="text-lg font-semibold">
          New codes for {chosen.size === 1 ? "one learner" : `${chosen.size} learners`}?
        </h3>
        <p className="mt-2">{names.join(", ")}</p>
        <p className="mt-2">
          Their present passwords stop working at once, and every device signed in with them is signed out. Reports and
          marks stay as they are. The codes are shown this once, as slips to print.
        </p>
        <form action={makeCodes} className="mt-5 flex flex-wrap gap-3">
          <input type="hidden" name="class" value={desk.classId} />
          <input type="hidden" name="what" value="codes" />
          {[...chosen].map((id) => (
            <input key={id} type="hidden" name="chosen" value={id} />
          ))}
          <Button look="quiet" onClick={() => question.current?.close()}>
            Keep their passwords
          </Button>
          <Button type="submit">Make new codes</Button>
        </form>
      </dialog>
    </Sheet>
  );
}
