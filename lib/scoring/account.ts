import { type AccountLine, PART_SHARES, PARTS, type Part, type PartAccount, type PlaceAccount } from "../results";
import { apportion } from "./apportion";
import type { Block } from "./blocks";
import { touchedClutter } from "./clutter";
import type { Piece } from "./pieces";
import {
  appraise,
  besideOf,
  type Hull,
  hullOfCalls,
  keptShare,
  partShare,
  placeShare,
  stickOut,
  typeShare,
} from "./quality";
import type { Ramp } from "./ramp";
import type { FaceSection } from "./section";
import type { Target } from "./targets";

const mm = (micrometres: number): number => micrometres / 1000;

/** The line of a block: calls and the truths they stand for. */
export function matchedLine(section: FaceSection, block: Block): AccountLine {
  const { target } = block;
  const pieces = block.pieces.map((position) => section.pieces[position]);
  const hull = hullOfCalls(target, pieces);
  const value = appraise(target, hull, section.price);
  const parts = accountParts(target, { pieces, hull, earned: value.parts });
  const cost = 0 - section.price * pieces.length;
  const earned = value.parts + value.back + cost;
  return {
    kind: matchedKind(target, pieces.length, earned),
    truthIds: target.truths.map((truth) => section.truths[truth].id),
    callIds: pieces.map((piece) => piece.id),
    worth: target.worth,
    earned,
    place: accountPlace(target, hull),
    kept: keptShare(target, hull.count) / 10_000,
    parts,
    cost,
    back: value.back,
    clutter: null,
  };
}

function matchedKind(target: Target, calls: number, earned: number): AccountLine["kind"] {
  if (target.worth === 0) return "neutral-called";
  if (target.truths.length > 1) return "merged";
  if (calls > 1) return "split";
  return earned === target.worth ? "found" : "partly";
}

/** The line of a truth that no call stands for. */
export function unmatchedTruthLine(section: FaceSection, position: number): AccountLine {
  const target = section.targets[position];
  return {
    ...emptyLine(target.worth === 0 ? "neutral-left" : "missed"),
    truthIds: [section.truths[position].id],
    worth: target.worth,
    parts: accountParts(target, null),
  };
}

/** The line of a call that stands for nothing; it says what lies there instead, which costs neither more nor less. */
export function falseCallLine(section: FaceSection, piece: Piece): AccountLine {
  const cost = 0 - section.price;
  const touched = touchedClutter(piece, section.clutter);
  return {
    ...emptyLine("false-call"),
    callIds: [piece.id],
    earned: cost,
    cost,
    clutter: touched && { id: touched.id, kind: touched.kind },
  };
}

/** A line that adds nothing yet. */
export function emptyLine(kind: AccountLine["kind"]): AccountLine {
  return {
    kind,
    truthIds: [],
    callIds: [],
    worth: 0,
    earned: 0,
    place: null,
    kept: 1,
    parts: [],
    cost: 0,
    back: 0,
    clutter: null,
  };
}

interface Written {
  readonly pieces: readonly Piece[];
  readonly hull: Hull;
  /** What all parts earned together, thousandths of a mark. */
  readonly earned: number;
}

/** The parts of a line. What a truth is worth and what was earned are both shared out by largest remainder. */
function accountParts(target: Target, written: Written | null): PartAccount[] {
  if (target.worth === 0) return [];
  const parts = PARTS.filter((part) => isPart(part, target));
  const shares = parts.map((part) => (written ? partShare(part, target, written.hull)! : 0));
  const full = apportion(
    target.worth,
    parts.map((part) => PART_SHARES[part]),
  );
  const earned = apportion(
    written?.earned ?? 0,
    parts.map((part, i) => PART_SHARES[part] * shares[i]),
  );
  return parts.map((part, i) => ({
    part,
    ...compare(part, target, written),
    share: shares[i],
    earned: earned[i],
    full: full[i],
  }));
}

function isPart(part: Part, target: Target): boolean {
  return !(part === "end" && target.isPoint) && !(part === "size" && target.size < 0);
}

/** What was written against what is true, mm. */
function compare(part: Part, target: Target, written: Written | null) {
  const { ramps } = target;
  switch (part) {
    case "found":
      return { written: null, actual: null, error: null, tolerance: null, nothingFrom: null };
    case "type":
      return {
        written: worstNamed(target, written),
        actual: target.type,
        error: null,
        tolerance: null,
        nothingFrom: null,
      };
    case "start":
      return measured(ramps.start, target.start, written?.hull.start);
    case "end":
      return measured(ramps.end, target.end, written?.hull.end);
    case "size":
      return measured(ramps.size, target.size, written && written.hull.size >= 0 ? written.hull.size : undefined);
    case "across": {
      const farthest = written?.pieces.find((piece) => besideOf(target, piece) === written.hull.beside);
      const middle = measured(ramps.across, (target.acrossLow + target.acrossHigh) / 2, farthest?.across);
      return { ...middle, error: written ? mm(written.hull.beside) : null };
    }
  }
}

function worstNamed(target: Target, written: Written | null): string | null {
  const worst = written?.pieces.find((piece) => typeShare(target, piece) === written.hull.likeness);
  return worst?.type ?? null;
}

function measured(ramp: Ramp, actual: number, written: number | undefined) {
  return {
    written: written === undefined ? null : mm(written),
    actual: mm(actual),
    error: written === undefined ? null : mm(Math.abs(written - actual)),
    tolerance: mm(ramp.full),
    nothingFrom: mm(ramp.none),
  };
}

function accountPlace(target: Target, hull: Hull): PlaceAccount {
  const { placeAlong, placeAcross } = target.ramps;
  const hasGap = hull.count > 1 || target.truths.length > 1;
  return {
    stickOut: mm(stickOut(target, hull.start, hull.end)),
    stickOutTolerance: mm(placeAlong.full),
    stickOutNothingFrom: mm(placeAlong.none),
    beside: mm(hull.beside),
    besideTolerance: mm(placeAcross.full),
    besideNothingFrom: mm(placeAcross.none),
    gap: hasGap ? mm(Math.max(hull.gap, target.gap)) : null,
    share: placeShare(target, hull),
  };
}
