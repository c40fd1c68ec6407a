import { type ImperfectionType, likeness } from "../../imperfections";
import { WARM_UP, weaknessWith } from "./candidate";
import { NEXT } from "./choose-next";
import { dueness } from "./due";
import { inOrderOfMeeting } from "./first-types";
import type { Learner } from "./learner";
import { timesSeen } from "./skill";

/** How well what is on a piece is seen: mostly large, of every size, mostly small. */
export const LOOKS = ["plain", "mixed", "fine"] as const;
export type Look = (typeof LOOKS)[number];

/** What a piece that could come next is asked to have. It tells what is on the piece. */
export interface PieceWish {
  readonly isClean: boolean;
  /** Each of them is to come. */
  readonly includes: readonly ImperfectionType[];
  /** Besides them nothing but these. */
  readonly among: readonly ImperfectionType[];
  readonly look: Look;
  /** Much to find; otherwise little. */
  readonly isDense: boolean;
}

/** Whoever is beyond these skills, logits, is asked less often, or more often, to find what is hard to see. */
const SKILLS = { low: -0.3, high: 1.5 };
const looksFor = ({ found: { general } }: Learner): readonly Look[] =>
  general.value < SKILLS.low
    ? ["plain", "plain", "mixed"]
    : general.value > SKILLS.high
      ? ["mixed", "fine", "fine"]
      : LOOKS;

/** New types are picked among so many that come next. */
const NEXT_FEW = 5;
/** So many types that the learner has met are asked for by name, at most. */
const MOST_FOCUS = 3;
/** Share of pieces on which types that look alike are mixed. */
const MIXED = 0.4;
/** How much a type that is neither weak nor due still counts, so that none is forgotten. */
const NEVER_FORGOTTEN = 0.08;

/**
 * What candidates for a learner's next piece are asked to have: weak and due types, types that look like them, and one or two that
 * are new; nothing else that the learner has not met. Whoever is new begins with two types. One wish in `count` is for a clean
 * piece, which `chooseNext` takes or leaves. The looks take turns, so that some of them are as hard as they should be.
 * @param types what can be on such a piece
 * @param draw gives numbers from 0 up to 1
 * @param now milliseconds since 1970
 */
export function wishesFor(
  learner: Learner,
  types: readonly ImperfectionType[],
  count: number,
  draw: () => number,
  now: number,
): PieceWish[] {
  const met = types.filter((type) => timesSeen(learner.found, type) > 0);
  const unmet = inOrderOfMeeting(types.filter((type) => !met.includes(type)));
  const looks = looksFor(learner);
  const isWarmingUp = learner.recent.length < WARM_UP;
  return Array.from({ length: count }, (_, n): PieceWish => {
    const look = looks[n % looks.length];
    if (n === 0 && !isWarmingUp) return { isClean: true, includes: [], among: [], look, isDense: false };
    const fresh = pickSome(unmet.slice(0, NEXT_FEW), howManyNew(met.length, draw), () => 1, draw);
    const focus = pickSome(met, 1 + Math.floor(draw() * MOST_FOCUS), (type) => urgency(learner, type, now), draw);
    const alike = draw() < MIXED ? lookAlike(focus, met, draw) : [];
    const includes = [...new Set([...focus, ...alike, ...fresh])];
    return {
      isClean: false,
      includes,
      among: [...met, ...fresh],
      look,
      isDense: isWarmingUp || draw() < 0.5,
    };
  });
}

/** Two at the beginning, then one, two or none at a time. */
function howManyNew(met: number, draw: () => number): number {
  if (met === 0) return NEXT.mostNew;
  return draw() < 0.4 ? 0 : draw() < 0.7 ? 1 : NEXT.mostNew;
}

const urgency = (learner: Learner, type: ImperfectionType, now: number): number =>
  NEVER_FORGOTTEN + weaknessWith(learner, type) + dueness(learner.due[type], now) / 4;

function lookAlike(
  focus: readonly ImperfectionType[],
  met: readonly ImperfectionType[],
  draw: () => number,
): ImperfectionType[] {
  const alike = met.filter((type) => !focus.includes(type) && focus.some((one) => likeness(one, type) === 0.5));
  return pickSome(alike, 1, () => 1, draw);
}

/** Different ones, each as likely as its weight is of the sum of those that are left; all where there are no more. */
function pickSome<T>(from: readonly T[], count: number, weightOf: (one: T) => number, draw: () => number): T[] {
  const left = [...from];
  const picked: T[] = [];
  while (picked.length < count && left.length > 0) {
    let at = draw() * left.reduce((sum, one) => sum + weightOf(one), 0);
    let n = 0;
    for (; n < left.length - 1; n++) {
      at -= weightOf(left[n]);
      if (at < 0) break;
    }
    picked.push(...left.splice(n, 1));
  }
  return picked;
}
