import {
  assessPiece,
  type Criteria,
  findingText,
  type Indication,
  measuredSize,
  measuredValues,
  nominalValues,
  OUTCOMES,
  type Outcome,
  type Piece,
  type PieceSentence,
  type SymbolValues,
} from "../criteria";
import { imperfection } from "../imperfections";
import { roundTo } from "../math";
import { type Call, type Report, SENTENCES, type WrittenSentence, worstSentence } from "../report";
import { type AccountLine, RULE, type Ruled, type SentenceLine, type SentencesResult } from "../results";
import type { Truth, TruthItem } from "../specimen";
import { PIECES, type SurfaceFace } from "../weld";
import { apportion } from "./apportion";
import { comparePieces, compareText, toPiece } from "./pieces";

/** True sizes and dimensions are held against limits, and told, to this; mm. */
const TOLD_TO = 0.01;

/** What is sentenced, and by what. */
export interface Sentenced {
  readonly faces: readonly SurfaceFace[];
  readonly truth: Pick<Truth, "items" | "dimensions" | "joint">;
  readonly report: Pick<Report, "calls" | "measures" | "pieceSentence">;
  readonly criteria: Criteria;
  /** So far from its limit, mm, no gauge tells on which side of it a size lies. */
  readonly sizeUncertainty: number;
}

const SENTENCE_OF: Readonly<Record<Outcome, WrittenSentence>> = {
  accept: "accept",
  reject: "reject",
  "cannot-be-judged": "refer",
  "not-covered": "refer",
};

/**
 * Marks the sentences on imperfections that are there, each worth the same, and on the piece, which is worth as much as two. What
 * is right on one that was found follows from what the learner wrote, or from the truth where something was left blank that
 * decides; a miss earns nothing. The piece goes by the truth. `lines` are those of the indications, which say what was found.
 */
export function markSentences(sentenced: Sentenced, lines: readonly AccountLine[], whole: number): SentencesResult {
  const { faces, truth, report, criteria } = sentenced;
  const there = truth.items.filter(({ face, neutral }) => !neutral && faces.includes(face));
  // in the order of the account
  const account = lines.flatMap((line) => line.truthIds.map((id) => ({ id, callIds: line.callIds })));
  const items = account.flatMap(({ id, callIds }) =>
    there.flatMap((item) => (item.id === id ? [{ item, callIds }] : [])),
  );
  const worth = apportion(whole, [...items.map(() => 1), RULE.pieceSentence]);
  const written = ruledReport(sentenced);
  const real = ruledTruth(sentenced, there);
  const imperfections = items.map(({ item, callIds }, n) => {
    const calls = report.calls.filter(({ id }) => callIds.includes(id));
    const fromWritten = calls.length === 0 ? null : written.onCalls(calls);
    const decides = fromWritten?.isComplete === true ? fromWritten.ruled : null;
    const fromTruth = real.on(item);
    return earning({
      truthId: item.id,
      callIds: [...callIds],
      written: worstSentence(calls.map(({ sentence }) => sentence)),
      fromWritten: fromWritten?.ruled ?? null,
      fromTruth: fromTruth.ruled,
      right: decides ? [SENTENCE_OF[decides.outcome]] : fromTruth.right,
      decidedBy: decides ? "written" : "truth",
      worth: worth[n],
      isFound: calls.length > 0,
    });
  });
  const piece = earning({
    truthId: real.decidesPiece,
    callIds: [],
    written: report.pieceSentence,
    fromWritten: written.piece,
    fromTruth: real.piece.ruled,
    right: real.piece.right,
    decidedBy: "truth",
    worth: worth[items.length],
    isFound: true,
  });
  const earned = [...imperfections, piece].reduce((sum, line) => sum + line.earned, 0);
  const { id, name, edition } = criteria;
  return { part: "sentences", worth: whole, earned, criteria: { id, name, edition }, lines: imperfections, piece };
}

/** A sentence earns all or nothing. */
function earning({ isFound, ...line }: Omit<SentenceLine, "earned"> & { readonly isFound: boolean }): SentenceLine {
  const isRight = isFound && line.written !== null && line.right.includes(line.written);
  return { ...line, earned: isRight ? line.worth : 0 };
}

/** What some outcomes come to as sentences, each once, the worst first. */
const sentencesOf = (outcomes: readonly Outcome[]): WrittenSentence[] =>
  SENTENCES.filter((sentence) => outcomes.some((outcome) => SENTENCE_OF[outcome] === sentence));

const ruledBy = ({ outcome, text }: Ruled): Ruled => ({ outcome, text });

/** What decides on a piece, and the words for it. */
function ruledPiece({ outcome, sentences, together }: PieceSentence): { ruled: Ruled; decides: Indication | null } {
  if (outcome === "accept") {
    const text = sentences.length === 0 ? "there is nothing to sentence: accept" : "each of them is accepted: accept";
    return { ruled: { outcome, text }, decides: null };
  }
  const worst = sentences.find((sentence) => sentence.outcome === outcome);
  if (worst) return { ruled: ruledBy(worst), decides: worst.indication };
  const finding = together.find((one) => one.outcome === outcome)!;
  return { ruled: { outcome, text: findingText(finding) }, decides: null };
}

function ruledTruth({ truth, criteria, sizeUncertainty }: Sentenced, there: readonly TruthItem[]) {
  const piece: Piece = { length: PIECES[truth.joint.kind].length, values: trueValues(truth) };
  const assessed = (shift: (item: TruthItem) => number) =>
    assessPiece(
      there.map((item) => trueIndication(item, shift(item))),
      piece,
      criteria,
    );
  const shifts = [-sizeUncertainty, sizeUncertainty];
  const exact = assessed(() => 0);
  const { ruled, decides } = ruledPiece(exact);
  const pieces = shifts.map((by) => assessed(() => by).outcome);
  return {
    piece: { ruled, right: sentencesOf([exact.outcome, ...pieces]) },
    decidesPiece: decides?.id ?? null,
    /** What is right on one of them: both sides where its size lies too near a limit to tell. */
    on(item: TruthItem) {
      const sentence = exact.sentences[there.indexOf(item)];
      const shifted = item.size === null ? [] : shifts;
      const near = shifted.map(
        (by) => assessed((one) => (one === item ? by : 0)).sentences[there.indexOf(item)].outcome,
      );
      return { ruled: ruledBy(sentence), right: sentencesOf([sentence.outcome, ...near]) };
    },
  };
}

function trueIndication({ id, type, face, start, end, size }: TruthItem, shift: number): Indication {
  const shifted = size === null ? null : Math.max(0, roundTo(size, TOLD_TO) + shift);
  return { id, type, face, start, end, measured: measuredSize(type, shifted) };
}

const trueValues = ({ joint, dimensions }: Pick<Truth, "joint" | "dimensions">): SymbolValues => ({
  ...nominalValues(joint),
  ...measuredValues(dimensions.map((one) => ({ ...one, value: roundTo(one.value, TOLD_TO) }))),
});

/** What the criteria say of what the learner wrote: every call on the piece that has a place and a name counts. */
function ruledReport({ faces, truth, report, criteria }: Sentenced) {
  const { joint } = truth;
  const { length } = PIECES[joint.kind];
  const calls = report.calls
    .flatMap((call) => {
      const piece = toPiece(call);
      return piece && call.type && faces.includes(call.face) ? [{ call, piece }] : [];
    })
    .sort((a, b) => compareText(a.call.face, b.call.face) || comparePieces(a.piece, b.piece))
    .map(({ call }) => call);
  const indications = calls.map(writtenIndication);
  const values = { ...nominalValues(joint), ...measuredValues(report.measures) };
  const assessed = assessPiece(indications, { length, values }, criteria);
  // what is asked for and was not measured, as it is
  const filled = assessPiece(indications, { length, values: { ...trueValues(truth), ...values } }, criteria);
  const lacksSomething = (call: Call): boolean => {
    const at = calls.indexOf(call);
    const { extent, size } = imperfection(call.type!);
    if (extent === "line" && call.end === null) return true;
    if (assessed.sentences[at].outcome !== "cannot-be-judged") return false;
    return (size !== null && call.size === null) || filled.sentences[at].outcome !== "cannot-be-judged";
  };
  return {
    piece: ruledPiece(assessed).ruled,
    /** The worst on the calls that stand for one imperfection; incomplete where something blank could change it. */
    onCalls(own: readonly Call[]): { readonly ruled: Ruled | null; readonly isComplete: boolean } {
      if (own.some(({ type }) => type === null)) return { ruled: null, isComplete: false };
      const sentences = calls.flatMap((call, at) => (own.includes(call) ? [assessed.sentences[at]] : []));
      const worst = OUTCOMES.flatMap((outcome) => sentences.find((one) => one.outcome === outcome) ?? [])[0];
      return { ruled: ruledBy(worst), isComplete: !own.some(lacksSomething) };
    },
  };
}

function writtenIndication({ id, type, face, start, end, size }: Call): Indication {
  const [from, to] = [start!, end ?? start!];
  return {
    id,
    type: type!,
    face,
    start: Math.min(from, to),
    end: Math.max(from, to),
    measured: measuredSize(type!, size),
  };
}
