"use client";

import { type ReactNode, useActionState } from "react";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { AccessSlip } from "./access-slip";
import type { AccessAsked, AccessState, giveAccess } from "./actions";
import { AddLearner } from "./add-learner";
import { type DeskLearner, LearnersTable } from "./learners-table";

interface AccessDeskProps {
  readonly learners: readonly DeskLearner[];
  readonly giveAccess: typeof giveAccess;
  /** What lies beside the form for a new learner. */
  readonly children: ReactNode;
}

const NOTHING_GIVEN: AccessState = { slip: null, problem: null };

/** Everything on the desk that gives out passwords: one slip at a time, where it was asked for. */
export function AccessDesk({ learners, giveAccess: action, children }: AccessDeskProps) {
  const [{ slip, problem }, send] = useActionState(action, NOTHING_GIVEN);
  const slipFor = (asked: AccessAsked) => slip?.asked === asked && <AccessSlip key={slip.password} access={slip} />;
  const addProblem = problem?.asked === "new-account" ? problem : null;
  return (
    <>
      <Sheet title="Learners" className="mt-6">
        {slipFor("new-password")}
        {problem?.asked === "new-password" && <Notice>{problem.message}</Notice>}
        <LearnersTable learners={learners} send={send} />
      </Sheet>
      <div className="mt-5 grid items-start gap-5 lg:grid-cols-2">
        <Sheet title="Add a learner">
          {slipFor("new-account")}
          <AddLearner send={send} problem={addProblem} />
        </Sheet>
        {children}
      </div>
    </>
  );
}
