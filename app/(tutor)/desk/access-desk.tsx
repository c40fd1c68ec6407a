"use client";

import { type ReactNode, useActionState } from "react";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { Person, SignInSlip } from "@/lib/workshop";
import type { AccessAsked, AccessState, giveAccess } from "./actions";
import { AddPerson } from "./add-person";
import { type DeskLearner, LearnersTable } from "./learners-table";
import { SlipsPanel } from "./slips/slips-panel";

interface AccessDeskProps {
  /** Those in no class. */
  readonly learners: readonly DeskLearner[];
  readonly tutors: readonly Person[];
  readonly workshop: string;
  readonly publicAddress: string | null;
  readonly giveAccess: typeof giveAccess;
  /** What lies beside the forms for new accounts. */
  readonly children: ReactNode;
}

const NOTHING_GIVEN: AccessState = { given: null, problem: null };

const TOLD: Readonly<Record<AccessAsked, (slip: SignInSlip) => string>> = {
  "new-learner": ({ name, signInName }) => `${name} signs in as ${signInName}.`,
  "new-tutor": ({ name, signInName }) => `${name} signs in as ${signInName}, and is a tutor.`,
  "new-code": ({ name, signInName }) =>
    `${name} signs in as ${signInName}. The password before works no more, and every device is signed out.`,
};

/** Everything on the desk that gives out codes: one slip at a time, where it was asked for. */
export function AccessDesk({ learners, tutors, giveAccess: action, children, ...place }: AccessDeskProps) {
  const [{ given, problem }, send] = useActionState(action, NOTHING_GIVEN);
  const slipFor = (asked: AccessAsked) =>
    given?.asked === asked && (
      <SlipsPanel key={given.slip.code} slips={[given.slip]} told={TOLD[asked](given.slip)} {...place} />
    );
  const problemFor = (asked: AccessAsked) => (problem?.asked === asked ? problem : null);
  return (
    <>
      <Sheet title="Learners in no class" className="mt-5">
        {slipFor("new-code")}
        {problem?.asked === "new-code" && <Notice>{problem.message}</Notice>}
        <LearnersTable learners={learners} send={send} />
      </Sheet>
      <div className="mt-5 grid items-start gap-5 lg:grid-cols-2">
        <Sheet title="Add a learner">
          {slipFor("new-learner")}
          <AddPerson asked="new-learner" send={send} problem={problemFor("new-learner")} />
        </Sheet>
        {children}
        <Sheet title="Tutors">
          <ul className="mt-2">
            {tutors.map(({ id, name, signInName }) => (
              <li key={id} className="border-t border-line py-2 first:border-0 wrap-anywhere">
                {name} <span className="font-mono text-sm text-ink-2">{signInName}</span>
              </li>
            ))}
          </ul>
          {slipFor("new-tutor")}
          <details className="mt-2" open={problemFor("new-tutor") !== null || undefined}>
            <summary className="flex min-h-11 cursor-pointer items-center font-medium text-action underline underline-offset-4">
              Add a tutor
            </summary>
            <p className="mt-1 text-sm text-ink-2">
              A tutor has a desk like yours, sees learners in no class and those of their own classes, and can change
              what is set for the workshop.
            </p>
            <AddPerson asked="new-tutor" send={send} problem={problemFor("new-tutor")} />
          </details>
        </Sheet>
      </div>
    </>
  );
}
