import { DEFAULT_DIMENSION_TOLERANCES } from "../../results";
import type { StatementTruth, Truth } from "../../specimen";
import { ANSWER_NAMES, type Answer, STATEMENT_ANSWERS, type Statement } from "../../weld";
import type { Choice, Kind } from "../kind";
import { capital, tenths } from "../words";

const PHRASES: Readonly<Record<Answer, string>> = {
  mitre: "mitre face",
  convex: "convex face",
  concave: "concave face",
  equal: "legs equal",
  unequal: "legs unequal",
  met: "drawing size met",
  "not-met": "drawing size not met",
};

const TOLERANCES = DEFAULT_DIMENSION_TOLERANCES;

/**
 * Further than this from what divides its answers a statement holds whatever is read within tolerance, mm: legs are read one by
 * one, so that their difference may be off by both. How far the face is over or behind its line no tolerance says; common
 * practice, no source.
 */
const APART: Readonly<Record<Statement, number>> = {
  profile: 0.3,
  asymmetry: TOLERANCES["base-leg"] + TOLERANCES["standing-leg"],
  size: Math.max(TOLERANCES["smallest-leg"], TOLERANCES["smallest-throat"]),
};

/** The statement, where nobody who measures within tolerance comes to another answer. */
function clearStatement(truth: Truth, statement: Statement): StatementTruth | undefined {
  return truth.statements.find(
    (one) => one.statement === statement && Math.abs(one.value - one.limit) > APART[statement],
  );
}

/** A kind that asks for two statements on a fillet at once. */
export const twoStatements = (name: string, first: Statement, second: Statement, stem: string): Kind => ({
  name,
  source: "piece",
  sections: ["fillet"],
  draft: ({ truth }) => {
    const one = clearStatement(truth, first);
    const other = clearStatement(truth, second);
    if (!one || !other) return null;
    const text = (a: Answer, b: Answer) => capital(`${PHRASES[a]}, ${PHRASES[b]}`);
    const numbers = `${told(one)}; ${told(other)}`;
    const wrong = STATEMENT_ANSWERS[first].flatMap((a) =>
      STATEMENT_ANSWERS[second].flatMap((b): Choice[] => {
        const errors = [...(a === one.right[0] ? [] : [denied(a)]), ...(b === other.right[0] ? [] : [denied(b)])];
        return errors.length === 0 ? [] : [{ text: text(a, b), why: errors.join(", and ") }];
      }),
    );
    return { stem, right: { text: text(one.right[0], other.right[0]), why: numbers }, wrong, place: null };
  },
});

const denied = (answer: Answer): string => `it is not ${ANSWER_NAMES[answer]}`.replace("not not ", "");

const TOLD: Readonly<Record<Statement, (value: number, limit: number) => string>> = {
  profile: (value, limit) =>
    `along the middle of the weld the face lies ${tenths(Math.abs(value))} ${value < 0 ? "behind" : "over"} the line from toe to toe, and ${tenths(Math.abs(limit))} divides mitre from the rest`,
  asymmetry: (value, limit) => `the legs differ by ${tenths(value)}, and ${tenths(limit)} makes them unequal`,
  size: (value, limit) => `the least measured is ${tenths(value)}, and the drawing asks for ${tenths(limit)}`,
};

const told = ({ statement, value, limit }: StatementTruth): string => TOLD[statement](value, limit);
