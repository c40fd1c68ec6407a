import type { StatementLine } from "@/lib/results";
import { STATEMENT_LIMITS } from "@/lib/weld";
import { mm } from "./line-words";

/** Why an answer is right: what was measured, and where the limit lies. */
export function statementStory({ statement, value, limit, right }: StatementLine): string {
  const measured = measuredWords(statement, value);
  if (right.length === 1) return `${measured}; the limit is ${mm(Math.abs(limit))}.`;
  return `${measured}: within ${mm(STATEMENT_LIMITS.doubt)} of the limit of ${mm(Math.abs(limit))}, too near to tell, so both are right.`;
}

function measuredWords(statement: StatementLine["statement"], value: number): string {
  switch (statement) {
    case "profile":
      return `Along most of the weld the face ${value < 0 ? "falls back" : "stands out"} ${mm(Math.abs(value))}`;
    case "asymmetry":
      return `The legs differ by up to ${mm(value)}`;
    case "size":
      return `The smallest is ${mm(value)}`;
  }
}
