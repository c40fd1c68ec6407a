import { OUTCOME_NAMES, type Outcome } from "@/lib/criteria";

const LOOKS: Readonly<Record<Outcome, { readonly path: string; readonly colour: string }>> = {
  accept: { path: "M2 6.5 5 9.5 10.5 2.5", colour: "text-found" },
  reject: { path: "M2.5 2.5 9.5 9.5M9.5 2.5 2.5 9.5", colour: "text-missed" },
  "cannot-be-judged": { path: "M3.5 4A2.5 2.5 0 1 1 6 6.5V8M6 10V11", colour: "text-partly" },
  "not-covered": { path: "M2 6H10", colour: "text-ink-2" },
};

/** Tick, cross, question mark or dash, on a field of 12 by 12. */
export const outcomePath = (outcome: Outcome): string => LOOKS[outcome].path;

/** An outcome by sign and word besides colour. */
export function OutcomeSign({ outcome }: { readonly outcome: Outcome }) {
  return (
    <span className={`inline-flex items-center gap-1.5 whitespace-nowrap font-semibold ${LOOKS[outcome].colour}`}>
      <svg viewBox="0 0 12 12" className="size-3.5 shrink-0" aria-hidden="true">
        <path d={LOOKS[outcome].path} fill="none" stroke="currentColor" strokeWidth="2" />
      </svg>
      {OUTCOME_NAMES[outcome]}
    </span>
  );
}
