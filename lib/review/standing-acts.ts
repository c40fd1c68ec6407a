import type { ActOf, ReviewAct, ReviewKind } from "./act";
import { isSameMarking } from "./differences";
import type { LineId } from "./lines";

const isKind =
  <Kind extends ReviewKind>(kind: Kind) =>
  (act: ReviewAct): act is ActOf<Kind> =>
    act.what.kind === kind;

/** What stands of all acts on one mark. */
export interface StandingActs {
  /** The last time it was marked again; null where it never was, or that was taken back. */
  readonly remark: ActOf<"re-mark"> | null;
  /** Of the mark that counts, by line: the last one each. */
  readonly overrulings: ReadonlyMap<LineId, ActOf<"overrule">>;
  /** Overrulings of the mark that does not count; they count again when it does. */
  readonly waiting: readonly ActOf<"overrule">[];
  /** By question. */
  readonly annulled: ReadonlyMap<string, ActOf<"annul">>;
}

/**
 * What stands, whatever order the acts come in. Of several acts on one thing the last counts; where that was taken back the
 * computed mark does, and none of those before it comes back. Overrulings go by the marking that they were said of, whichever
 * act brought it: marked again with the same outcome, they count again.
 */
export function standingActs(acts: readonly ReviewAct[]): StandingActs {
  const inOrder = acts.toSorted((a, b) => a.id - b.id);
  const takenBack = new Set(inOrder.filter(isKind("take-back")).map(({ what }) => what.of));
  const lastOf = <Act extends ReviewAct>(some: readonly Act[], keyOf: (act: Act) => string): readonly Act[] =>
    [...new Map(some.map((act) => [keyOf(act), act])).values()].filter(({ id }) => !takenBack.has(id));
  const remarks = inOrder.filter(isKind("re-mark"));
  const [remark = null] = lastOf(remarks, () => "");
  /** A marking is known by the first act that brought it; null is the one at hand-in. */
  const markingOf = (base: number | null): number | null => {
    const said = remarks.find(({ id }) => id === base)?.what.result;
    return (said && remarks.find(({ what }) => isSameMarking(what.result, said))?.id) ?? base;
  };
  const counting = markingOf(remark?.what.counts ? remark.id : null);
  const isCounting = ({ what }: ActOf<"overrule">) => markingOf(what.base) === counting;
  const overrulings = lastOf(inOrder.filter(isKind("overrule")), ({ what }) => `${markingOf(what.base)} ${what.line}`);
  return {
    remark,
    overrulings: new Map(overrulings.filter(isCounting).map((act) => [act.what.line, act])),
    waiting: overrulings.filter((act) => !isCounting(act)),
    annulled: new Map(
      lastOf(inOrder.filter(isKind("annul")), ({ what }) => what.question).map((act) => [act.what.question, act]),
    ),
  };
}

/** Whether an act still has a say, so that it can be taken back. */
export function canBeTakenBack(acts: readonly ReviewAct[], id: number): boolean {
  const { remark, overrulings, waiting, annulled } = standingActs(acts);
  return [remark, ...overrulings.values(), ...waiting, ...annulled.values()].some((act) => act?.id === id);
}
