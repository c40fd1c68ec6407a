import type { PlannedRow } from "@/lib/classes";

/** What happens to a row, in words; the sign says it by shape. */
export const OUTCOME_WORDS: Readonly<Record<PlannedRow["outcome"], { readonly sign: string; readonly text: string }>> =
  {
    new: { sign: "+", text: "new account" },
    added: { sign: "→", text: "has an account, comes into the class" },
    member: { sign: "=", text: "is in the class already" },
    invalid: { sign: "!", text: "left out" },
  };

const learners = (count: number) => (count === 1 ? "one learner" : `${count} learners`);
const rows = (count: number) => (count === 1 ? "one row" : `${count} rows`);

/** What confirming does: the text of its button, null where there is nothing to do, and a sentence before it. */
export function confirmWords(planned: readonly PlannedRow[]): {
  readonly button: string | null;
  readonly note: string;
} {
  const count = (outcome: PlannedRow["outcome"]) => planned.filter((row) => row.outcome === outcome).length;
  const adding = count("new") + count("added");
  const wrong = count("invalid");
  const leaving = wrong > 0 ? ` and leave out ${rows(wrong)}` : "";
  const mend =
    wrong > 0
      ? ` Put ${wrong === 1 ? "the row" : "the rows"} with ! right above, or leave ${wrong === 1 ? "it" : "them"} out.`
      : "";
  if (adding === 0) return { button: null, note: `This list adds nobody.${mend}` };
  const slips = count("new") > 0 ? " The one-time codes of the new accounts are shown once, as slips to print." : "";
  return {
    button: `Add ${learners(adding)}${leaving}`,
    note: `All of it is done together, or nothing.${slips}${mend}`,
  };
}

/** What was done. */
export function doneWords(made: number, added: number, className: string): string {
  const known = added === 0 ? "" : `${learners(added)} with an account`;
  const fresh = made === 0 ? "" : `${learners(made)} with a new account`;
  const who = [fresh, known].filter(Boolean).join(" and ");
  const isOne = made + added === 1;
  return `${who.charAt(0).toUpperCase()}${who.slice(1)} ${isOne ? "is" : "are"} in the class "${className}" now.`;
}
