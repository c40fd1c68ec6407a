import type { SectionPart, SectionResult } from "../results";
import { type LineOfResult, linesOf } from "./lines";

/** A line that two markings of one section differ in; null where only the other one has it. */
export interface Difference {
  readonly part: SectionPart;
  readonly before: LineOfResult | null;
  readonly after: LineOfResult | null;
}

/** Lines of two markings of the same report that bring other marks, or are there in one only. */
export function differences(before: SectionResult, after: SectionResult): readonly Difference[] {
  const [was, is] = [keyed(before), keyed(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [one, other] = [was.get(key) ?? null, is.get(key) ?? null];
    if (one && other && one.earned === other.earned && one.worth === other.worth) return [];
    const part = (one ?? other)?.part;
    return part ? [{ part, before: one, after: other }] : [];
  });
}

/** Whether two markings are one: by the same rule, with the same lines at the same places that bring the same marks. */
export function isSameMarking(one: SectionResult, other: SectionResult): boolean {
  if (one === other) return true;
  if (one.ruleVersion !== other.ruleVersion || differences(one, other).length > 0) return false;
  const others = keysOf(other);
  return keysOf(one).every((key, at) => key === others[at]);
}

/** Lines by what they are about, so that lines of two results can be laid side by side. */
function keyed(result: SectionResult): ReadonlyMap<string, LineOfResult> {
  const keys = keysOf(result);
  return new Map(linesOf(result).map((line, at) => [keys[at], line]));
}

/** What the lines are about, in the order of `linesOf`. */
function keysOf({ indications, dimensions, sentences, questions }: SectionResult): readonly string[] {
  return [
    ...indications.lines.map(({ kind, truthIds, callIds }) => {
      const isWhole = kind === "floor" || kind === "nothing-to-find";
      return isWhole ? kind : `truths ${truthIds.join()} calls ${callIds.join()}`;
    }),
    ...(dimensions?.lines ?? []).map(({ dimension, station }) => `dimension ${dimension} ${station}`),
    ...(dimensions?.statements ?? []).map(({ statement }) => `statement ${statement}`),
    ...(sentences ? [...sentences.lines.map(({ truthId }) => `sentence ${truthId}`), "sentence on the piece"] : []),
    ...(questions?.lines ?? []).map(({ question }) => `question ${question}`),
  ];
}
