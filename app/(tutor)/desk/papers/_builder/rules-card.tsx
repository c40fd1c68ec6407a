"use client";

import { Sheet } from "@/app/_ui/sheet";
import { ChoiceIn, NumberIn } from "./controls";
import type { PaperDraft } from "./draft";
import { ProblemLines } from "./problems";

interface RulesCardProps {
  readonly draft: PaperDraft;
  readonly onChange: (changes: Partial<PaperDraft>) => void;
}

const SENTENCE = "leading-[3.25rem]";

/** What holds for the whole paper, as it will be read. */
export function RulesCard({ draft, onChange }: RulesCardProps) {
  return (
    <Sheet title="For the whole paper">
      <p className={SENTENCE}>
        In one sitting{" "}
        <ChoiceIn
          field="forms"
          label="Forms"
          value={draft.forms}
          choices={[
            ["own", "everybody has a piece of their own"],
            ["same", "everybody has the same piece"],
          ]}
          onChange={(forms) => onChange({ forms })}
        />
        . Mark sheets are shown{" "}
        <ChoiceIn
          field="feedback"
          label="Feedback"
          value={draft.feedback}
          choices={[
            ["on-release", "when you release the sitting"],
            ["at-once", "at once, when a section is closed"],
          ]}
          onChange={(feedback) => onChange({ feedback })}
        />
        .
      </p>
      <ProblemLines of={{ forms: "Forms", feedback: "Mark sheets" }} />
      <p className={SENTENCE}>
        Between two sections there may be{" "}
        <NumberIn
          field="breakMinutes"
          label="Minutes of rest between sections"
          value={draft.breakMinutes}
          onChange={(breakMinutes) => onChange({ breakMinutes })}
        />{" "}
        minutes of rest.
      </p>
      <ProblemLines of={{ breakMinutes: "Minutes of rest" }} />
      <p className={SENTENCE}>
        A section that is not passed may be sat again by itself, on a fresh piece, at most{" "}
        <NumberIn field="resits" label="Re-sits" value={draft.resits} onChange={(resits) => onChange({ resits })} />{" "}
        times. After that the whole paper is due again.
      </p>
      <ProblemLines of={{ resits: "Re-sits" }} />
      <p className={SENTENCE}>
        Just short of the pass mark (within 1.64 standard errors),{" "}
        <ChoiceIn
          field="borderlinePiece"
          label="Borderline piece"
          value={draft.borderlinePiece ? "yes" : "no"}
          choices={[
            ["no", "a section is not passed"],
            ["yes", "a second piece follows at once, and the mean of both marks decides"],
          ]}
          onChange={(piece) => onChange({ borderlinePiece: piece === "yes" })}
        />
        .
      </p>
    </Sheet>
  );
}
