import type { Call } from "../report";
import type { AccountLine, IndicationsResult, SectionTotals, Tolerances } from "../results";
import type { Truth } from "../specimen";
import type { SurfaceFace } from "../weld";
import { emptyLine, falseCallLine, matchedLine, unmatchedTruthLine } from "./account";
import { type FaceSection, matchFace, prepareSection, type Section, WHOLE } from "./section";

/**
 * Marks the calls on the faces of one piece against its truth; what lies or was called on other faces is left out. The
 * account's lines add up to what was earned exactly, in thousandths of a mark: the worth of the indications is shared out of
 * the whole by largest remainder, every line is rounded once, and its parts are shared out of the rounded line. Clutter only
 * gives false calls a name: no mark depends on it.
 */
export function markIndications(
  faces: readonly SurfaceFace[],
  truth: Pick<Truth, "items" | "clutter">,
  calls: readonly Call[],
  tolerances: Tolerances,
  whole = WHOLE,
): IndicationsResult {
  const section = prepareSection(faces, truth, calls, tolerances, whole);
  const lines = accountLines(section, tolerances);
  const raw = lines.reduce((sum, line) => sum + line.earned, 0);
  if (raw < 0) lines.push({ ...emptyLine("floor"), earned: 0 - raw });
  return {
    part: "indications",
    worth: whole,
    earned: Math.max(0, raw),
    totals: totalsOf(section, lines),
    lines,
  };
}

/** Face by face in plate order, then the calls without a place. */
function accountLines(section: Section, tolerances: Tolerances): AccountLine[] {
  const { whole, faces } = section;
  const clean = section.indications === 0 ? [{ ...emptyLine("nothing-to-find"), worth: whole, earned: whole }] : [];
  const unplaced = faces
    .flatMap((face) => face.unplaced)
    .map((call) => ({ ...emptyLine("not-counted"), callIds: [call.id] }));
  return [...clean, ...faces.flatMap((face) => placedLines(face, tolerances)), ...unplaced];
}

/** The lines of one face in plate order. */
function placedLines(face: FaceSection, tolerances: Tolerances): AccountLine[] {
  const placed: { start: number; line: AccountLine }[] = [];
  const truths = new Set<number>();
  const pieces = new Set<number>();
  for (const block of matchFace(face, tolerances)) {
    placed.push({ start: block.target.start, line: matchedLine(face, block) });
    for (const truth of block.target.truths) truths.add(truth);
    for (const piece of block.pieces) pieces.add(piece);
  }
  face.targets.forEach((target, truth) => {
    if (!truths.has(truth)) placed.push({ start: target.start, line: unmatchedTruthLine(face, truth) });
  });
  face.pieces.forEach((piece, position) => {
    if (!pieces.has(position)) placed.push({ start: piece.start, line: falseCallLine(face, piece) });
  });
  return placed.sort((a, b) => a.start - b.start).map(({ line }) => line);
}

function totalsOf({ indications, faces }: Section, lines: readonly AccountLine[]): SectionTotals {
  const truths = faces.flatMap((face) => face.truths);
  const realOnes = new Set(truths.filter(({ neutral }) => !neutral).map(({ id }) => id));
  const count = (kind: AccountLine["kind"]): number => lines.filter((line) => line.kind === kind).length;
  const parts = lines.flatMap((line) => line.parts);
  return {
    indications,
    neutral: truths.length - indications,
    calls: faces.reduce((sum, { pieces }) => sum + pieces.length, 0),
    notCounted: faces.reduce((sum, { unplaced }) => sum + unplaced.length, 0),
    found: count("found"),
    partly: count("partly"),
    split: count("split"),
    merged: lines
      .filter(({ kind }) => kind === "merged")
      .flatMap(({ truthIds }) => truthIds)
      .filter((id) => realOnes.has(id)).length,
    missed: count("missed"),
    falseCalls: count("false-call"),
    partsEarned: parts.reduce((sum, part) => sum + part.earned, 0),
    cost: lines.reduce((sum, line) => sum + line.cost, 0),
    back: lines.reduce((sum, line) => sum + line.back, 0),
    floor: lines.filter((line) => line.kind === "floor").reduce((sum, line) => sum + line.earned, 0),
  };
}
