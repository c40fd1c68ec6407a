import type { ActOf, ReviewAct, ReviewKind } from "./act";
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
 * computed mark does, and none of those before it comes back.
 */
export function standingActs(acts: readonly ReviewAct[]): StandingActs {
  const inOrder = acts.toSorted((a, b) => a.id - b.id);
  const takenBack = new Set(inOrder.filter(isKind("take-back")).map(({ what }) => what.of));
  const lastOf = <Act extends ReviewAct>(some: readonly Act[], keyOf: (act: Act) => string): readonly Act[] =>
    [...new Map(some.map((act) => [keyOf(act), act])).values()].filter(({ id }) => !takenBack.has(id));
  const [remark = null] = lastOf(inOrder.filter(isKind("re-mark")), () => "");
  const baseId = remark?.what.counts ? remark.id : null;
  const overrulings = lastOf(inOrder.filter(isKind("overrule")), ({ what }) => `${what.base} ${what.line}`);
  return {
    remark,
    overrulings: new Map(overrulings.filter(({ what }) => what.base === baseId).map((act) => [act.what.line, act])),
    waiting: overrulings.filter(({ what }) => what.base !== baseId),
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
