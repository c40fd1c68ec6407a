import { isPass, type Section } from "../results";
import { averagedMark } from "./borderline";
import type { Paper } from "./paper";

/** A section that one learner has sat in a course, marked. Which round it is of, and what it repeats, follows from the history. */
export interface CourseAttempt {
  readonly id: string;
  readonly section: Section;
  /** What is sat in one sitting is of one round, in whatever order. */
  readonly sittingId: string;
  /** When it was closed. */
  readonly at: Date;
  /** As shown, at most one decimal. */
  readonly mark: number;
  readonly passMark: number;
  /** Counts for nothing. */
  readonly isVoid: boolean;
  /** The parallel piece to the attempt at the same section before it. */
  readonly isBorderline: boolean;
  /** A parallel piece to it has been given and not been sat yet, so that nothing is decided. */
  readonly awaitsPiece: boolean;
}

export interface CourseRule {
  /** Every one of them has to be passed in one round. */
  readonly sections: readonly Section[];
  /** How often a failed one may be sat again, alone, before everything is due again in a new round. */
  readonly resits: number;
}

export const courseRule = ({ sections, resits }: Pick<Paper, "sections" | "resits">): CourseRule => ({
  sections: sections.map(({ section }) => section),
  resits,
});

/** "undecided" while a parallel piece is still to be sat. */
export const STANDINGS = ["due", "re-sit-due", "undecided", "passed"] as const;
export type Standing = (typeof STANDINGS)[number];

/** "extra": of a section that was passed already, or is none of the course; it changes nothing. */
export const ATTEMPT_KINDS = ["first", "re-sit", "borderline", "extra", "void"] as const;
export type AttemptKind = (typeof ATTEMPT_KINDS)[number];

/** An attempt and what it stands for in the course. */
export interface PlacedAttempt {
  readonly attempt: CourseAttempt;
  /** From 1. */
  readonly round: number;
  readonly kind: AttemptKind;
  /** Id of the attempt that a re-sit repeats, or that a parallel piece goes with. */
  readonly repeats: string | null;
  /** What the section was decided on, one decimal: its mark, or the mean with its parallel piece; null where it decided nothing. */
  readonly decidedOn: number | null;
  readonly outcome: "passed" | "failed" | "undecided" | null;
}

/** Where one learner stands. */
export interface Course {
  readonly rule: CourseRule;
  /** The round that is on, from 1. */
  readonly round: number;
  readonly standings: ReadonlyMap<Section, Standing>;
  /** Every section is passed in one round. */
  readonly isPassed: boolean;
  /** In the order of time, those of one sitting together. */
  readonly attempts: readonly PlacedAttempt[];
}

/** A section within the round that is on. */
interface Place {
  readonly standing: Standing;
  readonly fails: number;
  /** The attempt that counted last. */
  readonly last: CourseAttempt | null;
}

/** Every section in the round that is on. */
interface Round {
  readonly number: number;
  readonly places: ReadonlyMap<Section, Place>;
  /** The sitting in which a section has failed more often than it may be sat again; the next one begins the next round. */
  readonly endedIn: string | null;
}

const freshRound = (number: number, { sections }: CourseRule): Round => ({
  number,
  endedIn: null,
  places: new Map(sections.map((section) => [section, { standing: "due", fails: 0, last: null }])),
});

/**
 * The re-sit rule over a learner's history, in whatever order it comes: a failed section is sat again, alone, on a fresh
 * piece; when its last re-sit fails too, everything is due again in a new round, which begins with the next sitting: the
 * order in which somebody takes the sections of one sitting makes no difference. A passed section stands within its round;
 * what is void counts for nothing; an attempt and its parallel piece are decided by their mean, as one.
 */
export function courseOf(attempts: readonly CourseAttempt[], rule: CourseRule): Course {
  const inOrder = bySitting(attempts);
  const goesWith = pairs(inOrder);
  const withPiece = new Set(goesWith.values());
  const placed: PlacedAttempt[] = [];
  let round = freshRound(1, rule);
  for (const attempt of inOrder) {
    if (round.endedIn !== null && round.endedIn !== attempt.sittingId) round = freshRound(round.number + 1, rule);
    const partner = goesWith.get(attempt) ?? null;
    const one = place(attempt, partner, attempt.awaitsPiece || withPiece.has(attempt), round);
    // what is decided on a parallel piece shows with that piece
    placed.push(withPiece.has(attempt) && one.outcome === "undecided" ? { ...one, outcome: null } : one);
    round = after(round, one, rule);
  }
  if (round.endedIn !== null) round = freshRound(round.number + 1, rule);
  const standings = new Map([...round.places].map(([section, { standing }]) => [section, standing]));
  const isPassed = [...standings.values()].every((standing) => standing === "passed");
  return { rule, round: round.number, standings, isPassed, attempts: placed };
}

/** Attempts sitting by sitting, in the order of time; a sitting is as early as the first of its attempts that counts. */
function bySitting(attempts: readonly CourseAttempt[]): readonly CourseAttempt[] {
  const began = new Map<string, number>();
  // those that count come last, and so stand over void ones
  for (const { sittingId, at } of attempts.toSorted(
    (a, b) => Number(b.isVoid) - Number(a.isVoid) || b.at.getTime() - a.at.getTime(),
  )) {
    began.set(sittingId, at.getTime());
  }
  const beganAt = ({ sittingId, at }: CourseAttempt) => began.get(sittingId) ?? at.getTime();
  return attempts.toSorted(
    (a, b) =>
      beganAt(a) - beganAt(b) ||
      byText(a.sittingId, b.sittingId) ||
      a.at.getTime() - b.at.getTime() ||
      byText(a.id, b.id),
  );
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Each parallel piece with the attempt that it goes with: the one before it at the same section of its sitting, void ones left out. */
function pairs(inOrder: readonly CourseAttempt[]): ReadonlyMap<CourseAttempt, CourseAttempt> {
  const found = new Map<CourseAttempt, CourseAttempt>();
  const before = new Map<Section, CourseAttempt>();
  for (const attempt of inOrder.filter(({ isVoid }) => !isVoid)) {
    const partner = before.get(attempt.section);
    before.delete(attempt.section);
    if (attempt.isBorderline && partner?.sittingId === attempt.sittingId) found.set(attempt, partner);
    else before.set(attempt.section, attempt);
  }
  return found;
}

/** What an attempt is and comes to in the round that is on. */
function place(attempt: CourseAttempt, partner: CourseAttempt | null, hasPiece: boolean, round: Round): PlacedAttempt {
  const now = round.places.get(attempt.section);
  const common = { attempt, round: round.number, repeats: partner?.id ?? null, decidedOn: null, outcome: null };
  if (attempt.isVoid) return { ...common, kind: "void" };
  if (now === undefined || now.standing === "passed") return { ...common, kind: "extra" };
  if (partner !== null) {
    const decidedOn = averagedMark(partner.mark, attempt.mark);
    return { ...common, kind: "borderline", decidedOn, outcome: passOrFail(decidedOn, partner.passMark) };
  }
  const kind = now.last === null ? "first" : "re-sit";
  const repeats = now.last?.id ?? null;
  const outcome = passOrFail(attempt.mark, attempt.passMark);
  if (outcome === "failed" && hasPiece) return { ...common, kind, repeats, outcome: "undecided" };
  return { ...common, kind, repeats, decidedOn: attempt.mark, outcome };
}

const passOrFail = (mark: number, passMark: number) => (isPass(mark, passMark) ? "passed" : "failed");

/** The round after an attempt; it is over if a section has failed more often than it may be sat again. */
function after(round: Round, { attempt, kind, outcome }: PlacedAttempt, rule: CourseRule): Round {
  const now = round.places.get(attempt.section);
  if (now === undefined || outcome === null) return round;
  // a parallel piece stands in for its attempt, which stays the one to repeat
  const last = kind === "borderline" ? now.last : attempt;
  const fails = now.fails + (outcome === "failed" ? 1 : 0);
  const standing = outcome === "failed" ? "re-sit-due" : outcome;
  const places = new Map(round.places).set(attempt.section, { standing, fails, last });
  return { ...round, places, endedIn: fails > rule.resits ? attempt.sittingId : round.endedIn };
}
