import { type ImperfectionType, imperfection } from "../imperfections";
import { RULE, type Tolerances } from "../results";
import type { TruthItem } from "../specimen";
import { earnedShare, type Ramp, rampFor, toMicrometres } from "./ramp";

/** What a call is held against: one truth, or the hull of two or three of one type. Whole micrometres. */
export interface Target {
  /** Positions in the section's list of truths. */
  readonly truths: readonly number[];
  readonly type: ImperfectionType;
  readonly start: number;
  readonly end: number;
  /** A point has no end part and cannot be split. */
  readonly isPoint: boolean;
  /** Places across of the outermost truths. */
  readonly acrossLow: number;
  readonly acrossHigh: number;
  /** Largest size, or -1 where nobody measures one. */
  readonly size: number;
  /** Thousandths of a mark. */
  readonly worth: number;
  /** Ten-thousandths kept of the worth although several indications lie under one call. */
  readonly kept: number;
  /** Widest gap between the truths. */
  readonly gap: number;
  readonly ramps: Readonly<Record<"placeAlong" | "placeAcross" | "start" | "end" | "size" | "across" | "gap", Ramp>>;
}

/** Ten-thousandths kept with 0, 1 or 2 extra members. */
function keptTable(perExtra: number): readonly number[] {
  return Array.from({ length: RULE.mostInBlock }, (_, extra) => Math.round(10_000 * perExtra ** extra));
}
export const KEPT_PER_EXTRA_CALL = keptTable(RULE.keptPerExtraCall);
const KEPT_PER_EXTRA_INDICATION = keptTable(RULE.keptPerExtraIndication);

/** One truth as a target; `worth` in thousandths of a mark. */
export function singleTarget(item: TruthItem, position: number, worth: number, tolerances: Tolerances): Target {
  const across = toMicrometres(item.across);
  const isPoint = imperfection(item.type).extent === "point";
  return withRamps(tolerances, {
    truths: [position],
    type: item.type,
    start: toMicrometres(item.start),
    end: toMicrometres(item.end),
    isPoint,
    acrossLow: across,
    acrossHigh: across,
    size: item.size === null ? -1 : toMicrometres(item.size),
    worth,
    kept: 10_000,
    gap: 0,
  });
}

/** Hulls of two or three truths of one type with gaps small enough for one call to stand for them all. */
export function mergedTargets(singles: readonly Target[], tolerances: Tolerances): Target[] {
  const targets: Target[] = [];
  for (let i = 0; i < singles.length; i++) {
    for (let j = i + 1; j < singles.length; j++) {
      if (singles[j].type !== singles[i].type) continue;
      addHull([singles[i], singles[j]]);
      for (let k = j + 1; k < singles.length; k++) {
        if (singles[k].type === singles[i].type) addHull([singles[i], singles[j], singles[k]]);
      }
    }
  }
  return targets;

  function addHull(members: readonly Target[]): void {
    const target = hullOf(members, tolerances);
    if (earnedShare(target.ramps.gap, target.gap) > 0) targets.push(target);
  }
}

function hullOf(members: readonly Target[], tolerances: Tolerances): Target {
  const indications = members.filter((member) => member.worth > 0).length;
  return withRamps(tolerances, {
    truths: members.flatMap((member) => member.truths),
    type: members[0].type,
    start: Math.min(...members.map((member) => member.start)),
    end: Math.max(...members.map((member) => member.end)),
    isPoint: false,
    acrossLow: Math.min(...members.map((member) => member.acrossLow)),
    acrossHigh: Math.max(...members.map((member) => member.acrossHigh)),
    size: Math.max(...members.map((member) => member.size)),
    worth: members.reduce((sum, member) => sum + member.worth, 0),
    // A neutral feature under the call is no indication too many.
    kept: KEPT_PER_EXTRA_INDICATION[Math.max(0, indications - 1)],
    gap: widestGap(members),
  });
}

function withRamps(tolerances: Tolerances, target: Omit<Target, "ramps">): Target {
  const length = target.end - target.start;
  return {
    ...target,
    ramps: {
      placeAlong: rampFor(tolerances.placeAlong, length),
      placeAcross: rampFor(tolerances.placeAcross, 0),
      start: rampFor(tolerances.start, length),
      end: rampFor(tolerances.end, length),
      size: rampFor(tolerances.size, Math.max(0, target.size)),
      across: rampFor(tolerances.across, 0),
      gap: rampFor(tolerances.gap, 0),
    },
  };
}

/** Widest stretch that nothing covers between the first start and the last end, counted only from `low` to `high`. */
export function widestGap(
  extents: readonly { readonly start: number; readonly end: number }[],
  low = Number.NEGATIVE_INFINITY,
  high = Number.POSITIVE_INFINITY,
): number {
  const sorted = [...extents].sort((a, b) => a.start - b.start);
  let reached = sorted[0].end;
  let widest = 0;
  for (const extent of sorted) {
    widest = Math.max(widest, Math.min(extent.start, high) - Math.max(reached, low));
    reached = Math.max(reached, extent.end);
  }
  return widest;
}
