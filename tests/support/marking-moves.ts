import { imperfection } from "../../lib/imperfections";
import type { Call } from "../../lib/report";
import type { AccountLine, IndicationsResult } from "../../lib/results";
import type { MarkingCase } from "./marking-cases";

export type Attribute = "type" | "start" | "end" | "size" | "across";

/** The report with the call of the same id exchanged. */
export function replaced(given: MarkingCase, change: Call): MarkingCase {
  return { items: given.items, calls: given.calls.map((call) => (call.id === change.id ? change : call)) };
}

export interface MatchedCall {
  readonly line: AccountLine;
  readonly call: Call;
  /** What the call ought to say: its truth, or for a merged call the hull of its truths. */
  readonly aim: Call;
  readonly isLine: boolean;
}

export function matchedCalls(given: MarkingCase, result: IndicationsResult): MatchedCall[] {
  return result.lines.flatMap((line) => {
    const items = given.items.filter(({ id }) => line.truthIds.includes(id));
    if (items.length === 0) return [];
    const acrosses = items.map((item) => item.across);
    const sizes = items.flatMap((item) => (item.size === null ? [] : [item.size]));
    const isLine = items.length > 1 || imperfection(items[0].type).extent === "line";
    const aim: Call = {
      id: "aim",
      face: "cap",
      type: items[0].type,
      start: Math.min(...items.map((item) => item.start)),
      end: Math.max(...items.map((item) => item.end)),
      across: (Math.min(...acrosses) + Math.max(...acrosses)) / 2,
      size: sizes.length === 0 ? null : Math.max(...sizes),
      sentence: null,
    };
    const calls = given.calls.filter(({ id }) => line.callIds.includes(id));
    return calls.map((call) => ({ line, call, aim, isLine }));
  });
}

/** The call with one attribute moved a share of the way, or null where there is nothing to move or start would pass end. */
export function movedCall({ call, aim, isLine }: MatchedCall, attribute: Attribute, share: number): Call | null {
  if (attribute === "type") return { ...call, type: aim.type };
  const [from, to] = [call[attribute], aim[attribute]];
  if (from === null || to === null) return null;
  // Without an end, the start stands for both ends of a line: that is moving two attributes.
  if (attribute === "start" && call.end === null && isLine) return null;
  const change = { ...call, [attribute]: from + share * (to - from) };
  return change.end !== null && change.start! > change.end ? null : change;
}

/** One attribute moved by a nudge, or the whole call moved along (how = 2); null where that cannot be written. */
export function nudgedCall(call: Call, nudge: number, how: number): Call | null {
  const moved = (value: number | null): number | null => (value === null ? null : value + nudge);
  const change: Call = [
    { ...call, start: moved(call.start) },
    { ...call, end: moved(call.end) },
    { ...call, start: moved(call.start), end: moved(call.end) },
    { ...call, across: moved(call.across) },
    { ...call, size: moved(call.size) },
  ][how];
  const { start, end, size } = change;
  if ((start !== null && start < 0) || (size !== null && size < 0)) return null;
  return start !== null && end !== null && end < start ? null : change;
}
