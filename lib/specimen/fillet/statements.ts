import { imperfection } from "../../imperfections";
import { median } from "../../math";
import { type FilletSize, STATEMENT_LIMITS } from "../../weld";
import type { StatementTruth } from "../truth";
import { asGaugesShow, type SizesAt, shorterLeg } from "./dimensions";

/**
 * What is right to state of a fillet, from its sections every mm: the profile by the middle one of how far the faces stand out
 * less how far they fall back; the legs by the largest difference that holds over the length from which asymmetry is recorded;
 * the size by the least that a gauge shows of what the drawing gives.
 */
export function statementTruths(along: readonly SizesAt[], size: FilletSize): StatementTruth[] {
  const bulge = median(along.map(({ sizes }) => sizes.convexity - sizes.concavity));
  const bulgeLimit = bulge < 0 ? -STATEMENT_LIMITS.mitre : STATEMENT_LIMITS.mitre;
  const { recordedFrom, recordedLength } = imperfection("excessive-asymmetry");
  const difference = heldOver(along, recordedLength);
  const shown = asGaugesShow(along, size.symbol === "a" ? ({ gaugeThroat }) => gaugeThroat : shorterLeg);
  return [
    decided("profile", bulge, bulgeLimit, bulge < 0 ? ["concave", "mitre"] : ["mitre", "convex"]),
    decided("asymmetry", difference, recordedFrom, ["equal", "unequal"]),
    decided("size", Math.min(...shown), size.value, ["not-met", "met"]),
  ];
}

/** The answer on the value's side of the limit, below or from it on; both where they cannot be told apart. */
function decided(
  statement: StatementTruth["statement"],
  exact: number,
  limit: number,
  [below, above]: readonly [StatementTruth["right"][number], StatementTruth["right"][number]],
): StatementTruth {
  // a nought with a sign is the same, and is not kept in JSON
  const value = Math.round(exact * 100) / 100 + 0;
  const isNear = Math.abs(value - limit) <= STATEMENT_LIMITS.doubt + 1e-9;
  return { statement, right: isNear ? [below, above] : [value < limit ? below : above], value, limit };
}

/** Largest difference of the legs that the weld keeps up over a length, mm. */
function heldOver(along: readonly SizesAt[], length: number): number {
  return along.reduce((most, { x }) => {
    const stretch = along.filter((near) => near.x >= x && near.x <= x + length);
    const isWhole = along.some((near) => near.x >= x + length);
    return isWhole ? Math.max(most, Math.min(...stretch.map(({ sizes }) => sizes.asymmetry))) : most;
  }, 0);
}
