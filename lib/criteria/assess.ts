import { imperfection } from "../imperfections";
import type { Criteria, Criterion, SectionRule } from "./criteria";
import { type Finding, findingText, type Outcome, worstOutcome } from "./finding";
import type { Indication, Piece } from "./indication";
import { findingOf, judgeOne, symbolMissing } from "./judge-one";
import { judgeSections } from "./judge-sections";
import { judgeSums, type Summed } from "./judge-sums";
import { describeLimit } from "./limit";
import { describeRange, withinRanges } from "./range";
import { rowsOn, speaksOf } from "./rows-on";

/** The sentence on one indication, with everything it rests on; the finding that decides stands first. */
export interface Sentence {
  readonly indication: Indication;
  readonly outcome: Outcome;
  readonly findings: readonly Finding[];
  /** The finding that decides, in one line. */
  readonly text: string;
}

/** The sentence on a piece. */
export interface PieceSentence {
  readonly outcome: Outcome;
  /** In the order of the indications. */
  readonly sentences: readonly Sentence[];
  /** What rules over several indications come to on the whole weld, each with its worst stretch. */
  readonly together: readonly Finding[];
}

/**
 * Sentences every indication on a piece and the piece itself. By itself each is held against every row that speaks of its type
 * on its face; rules over several then reject every indication that lies in a stretch, or a section, where they are broken. Lengths
 * are added up, on both toes and faces of one row, and an intermittent undercut counts from start to end. Where several rows
 * speak the worst decides. The piece is rejected with any of its indications and is accepted only if all are, also with none.
 */
export function assessPiece(indications: readonly Indication[], piece: Piece, criteria: Criteria): PieceSentence {
  const alone = new Map(indications.map((indication) => [indication, judgeAlone(indication, piece, criteria)]));
  const summed = judgeTogether(indications, piece, criteria);
  for (const { ofEach } of summed) for (const { indication, finding } of ofEach) alone.get(indication)?.push(finding);
  const sentences = indications.map((indication) => sentenceOf(indication, alone.get(indication) ?? []));
  const together = summed.map(({ whole }) => whole);
  const outcomes = [...sentences.map(({ outcome }) => outcome), ...together.map(({ outcome }) => outcome)];
  return { outcome: worstOutcome(outcomes), sentences, together };
}

/** Sentences one indication as if it were the only one on the piece. */
export const assess = (indication: Indication, piece: Piece, criteria: Criteria): Sentence =>
  assessPiece([indication], piece, criteria).sentences[0];

function judgeAlone(indication: Indication, piece: Piece, criteria: Criteria): Finding[] {
  const { holding, open, outside } = rowsOn(criteria, indication.type, indication.face, piece.values);
  const findings = [
    ...holding.map((row) => judgeOne(row, indication, piece)),
    ...open.map(({ row, missing }): Finding => {
      const why = `${symbolMissing(missing)}, and the limit goes by it`;
      const blank = findingOf(row, describeLimit(row.limit));
      return { ...blank, outcome: "cannot-be-judged", reason: "missing-measure", why };
    }),
  ];
  return findings.length > 0 ? findings : [notCovered(indication, outside, criteria)];
}

function notCovered({ type, face }: Indication, rows: readonly Criterion[], criteria: Criteria): Finding {
  const { name, number } = imperfection(type);
  const where = face === "fillet" ? "a fillet" : `the ${face} face`;
  const ranges = [...new Set(rows.flatMap((row) => row.ranges.map(describeRange)))].join(" or ");
  const why =
    rows.length > 0
      ? `${criteria.name} speaks of it only for ${ranges}`
      : `${criteria.name} gives no limit for ${number} ${name.toLowerCase()} on ${where}`;
  const nowhere = { row: null, clause: null, name: null, rule: null, worked: null, limit: null, found: null } as const;
  const nothing = { foundText: null, reason: null, window: null, evidence: null, notes: "" } as const;
  return { ...nowhere, ...nothing, outcome: "not-covered", why };
}

/** Every rule over several indications. Rows of one id are one row, split by face. */
function judgeTogether(indications: readonly Indication[], piece: Piece, criteria: Criteria): Summed[] {
  const holds = ({ ranges }: Criterion | SectionRule) => withinRanges(ranges, piece.values) === true;
  const held = criteria.rows.filter(holds);
  const sums = [...new Set(held.map(({ id }) => id))].flatMap((id) => {
    const rows = held.filter((row) => row.id === id);
    return judgeSums(
      rows[0],
      indications.filter((indication) => rows.some((row) => speaksOf(row, indication))),
      piece,
    );
  });
  const sections = criteria.sections.filter(holds).flatMap((rule) =>
    judgeSections(
      rule,
      indications.filter((indication) => speaksOf(rule, indication)),
      piece,
    ),
  );
  return [...sums, ...sections];
}

function sentenceOf(indication: Indication, findings: readonly Finding[]): Sentence {
  const outcome = worstOutcome(findings.map((finding) => finding.outcome));
  // what a measure was held against says more than that something is permitted
  const weight = (finding: Finding) =>
    (finding.outcome === outcome ? 0 : 2) + (outcome === "accept" && finding.found === null ? 1 : 0);
  const ordered = [...findings].sort((a, b) => weight(a) - weight(b));
  return { indication, outcome, findings: ordered, text: findingText(ordered[0]) };
}
