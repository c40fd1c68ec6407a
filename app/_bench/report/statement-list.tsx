"use client";
import type { Dispatch } from "react";
import type { WritingEvent } from "@/lib/bench";
import {
  ANSWER_NAMES,
  type FilletSize,
  STATEMENT_ANSWERS,
  STATEMENT_FACTS,
  STATEMENTS,
  type Stated,
  type Statement,
  statedSchema,
} from "@/lib/weld";

interface StatementListProps {
  readonly size: FilletSize;
  readonly statements: readonly Stated[];
  readonly write: Dispatch<WritingEvent>;
}

/** What is stated of the weld as a whole, each by choosing an answer. */
export function StatementList({ size, statements, write }: StatementListProps) {
  return (
    <section aria-labelledby="statements" className="border-line border-t" data-statements="">
      <h3 id="statements" className="px-3 pt-3 font-semibold">
        Statements{" "}
        <span className="font-normal text-ink-2 text-sm">
          {statements.length} of {STATEMENTS.length} made
        </span>
      </h3>
      <p className="px-3 pt-1 text-sm">
        The drawing asks for{" "}
        <b>
          {size.symbol}
          {size.value}
        </b>
        : a {size.symbol === "a" ? "throat" : "leg"} of {size.value} mm.
      </p>
      <ul>
        {STATEMENTS.map((statement) => (
          <StatementRow
            key={statement}
            statement={statement}
            stated={statements.find((one) => one.statement === statement)}
            write={write}
          />
        ))}
      </ul>
    </section>
  );
}

interface StatementRowProps {
  readonly statement: Statement;
  readonly stated: Stated | undefined;
  readonly write: Dispatch<WritingEvent>;
}

function StatementRow({ statement, stated, write }: StatementRowProps) {
  const { name, asks } = STATEMENT_FACTS[statement];
  const choice =
    "relative flex h-11 flex-1 cursor-pointer items-center justify-center rounded border border-line px-1 text-sm has-checked:border-ink has-checked:bg-ink has-checked:text-sheet has-focus-visible:outline-3 has-focus-visible:outline-lamp";
  return (
    <li className="border-line border-b px-3 py-2 last:border-b-0">
      <fieldset>
        <legend className="font-medium text-sm">{name}</legend>
        <p className="mb-1 text-ink-2 text-xs">{asks}</p>
        <div className="flex gap-2">
          {STATEMENT_ANSWERS[statement].map((answer) => (
            <label key={answer} className={choice}>
              <input
                type="radio"
                name={`statement-${statement}`}
                checked={stated?.answer === answer}
                onChange={() => write({ kind: "state", stated: statedSchema.parse({ statement, answer }) })}
                className="sr-only"
              />
              {ANSWER_NAMES[answer]}
            </label>
          ))}
        </div>
        {stated && (
          <button
            type="button"
            className="mt-1 min-h-9 text-action text-xs underline"
            onClick={() => write({ kind: "unstate", statement })}
          >
            Take this answer back
          </button>
        )}
      </fieldset>
    </li>
  );
}
