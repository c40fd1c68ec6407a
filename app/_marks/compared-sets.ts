import {
  api1104,
  asmeB313,
  assessPiece,
  awsD11,
  type Criteria,
  iso5817,
  measuredSize,
  measuredValues,
  nominalValues,
  type PieceSentence,
} from "@/lib/criteria";
import { roundTo } from "@/lib/math";
import { PIECES } from "@/lib/weld";
import type { SheetView, TruthView } from "./sheet-view";

interface ComparedSet {
  /** In the head of a narrow column. */
  readonly short: string;
  readonly criteria: Criteria;
}

const iso = (level: "B" | "C" | "D"): ComparedSet => ({
  short: `ISO 5817 ${level}`,
  criteria: iso5817({ level, edition: 2014, penetration: "as-2014", several: false }),
});

/** The standards under which a piece is looked at once more, the strictest level of ISO 5817 first. */
export const COMPARED_SETS: readonly ComparedSet[] = [
  iso("B"),
  iso("C"),
  iso("D"),
  { short: "AWS D1.1 static", criteria: awsD11({ loading: "static", stress: "other" }) },
  { short: "AWS D1.1 cyclic", criteria: awsD11({ loading: "cyclic", stress: "other" }) },
  { short: "ASME B31.3", criteria: asmeB313("girth") },
  { short: "API 1104", criteria: api1104() },
];

/** Sizes are measured to micrometres and told, and held against limits, to this; mm. */
const TOLD_TO = 0.01;

type Piece = Pick<SheetView, "kind" | "joint" | "dimensions">;

/**
 * Sentences what was on a piece: limits go by what the drawing gives of it and by what was really measured on it.
 */
export function judgedBy(piece: Piece, truths: readonly TruthView[], criteria: Criteria): PieceSentence {
  const indications = truths.map(({ id, type, face, start, end, size }) => ({
    id,
    type,
    face,
    start,
    end,
    measured: measuredSize(type, size === null ? null : roundTo(size, TOLD_TO)),
  }));
  const values = { ...nominalValues(piece.joint), ...measuredValues(piece.dimensions) };
  return assessPiece(indications, { length: PIECES[piece.kind].length, values }, criteria);
}
