/**
 * What came of an event. `next` is what is to be kept in either case, since the clock may have closed something that the
 * event came too late for; `isChanged` says whether it differs from what was there. An event that asks for what is so
 * already is accepted and changes nothing.
 */
export type Step<State, Code extends string> =
  | { readonly ok: true; readonly next: State; readonly isChanged: boolean }
  | { readonly ok: false; readonly code: Code; readonly next: State; readonly isChanged: boolean };

/** The step from `before` by way of `byClock`, which the clock alone had made of it, to an answer: a state, or why not. */
export function stepTo<State extends object, Code extends string>(
  before: State,
  byClock: State,
  answer: State | Code,
): Step<State, Code> {
  if (typeof answer === "string") {
    return { ok: false, code: answer, next: byClock, isChanged: byClock !== before };
  }
  return { ok: true, next: answer, isChanged: answer !== before };
}
