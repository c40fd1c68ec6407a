import type { Clutter, ImperfectionType } from "../../imperfections";
import { isImperfectionType } from "../../imperfections";
import type { Call } from "../../report";
import type { AccountLine, MarkedSection, SectionResult, SentenceLine } from "../../results";
import { type ReviewAct, reviewed } from "../../review";
import { PIECES, type SurfaceFace } from "../../weld";
import { countingAnswers } from "./answers";
import type { EyeMeasure, SectionObservations, SentenceVerdict, TruthObservation } from "./observation";
import { overruledOf, type SaidOf } from "./overruled";

/** An imperfection of the truth with how well it is seen, as `seenItems` of lib/specimen gives it. Lengths in mm. */
export interface SeenTruth {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size: number | null;
  readonly neutral: boolean;
  readonly eye: { readonly measure: EyeMeasure; readonly value: number };
  /** Logits. */
  readonly difficulty: number;
}

/** A piece of clutter of the truth. */
export interface SeenClutter {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly kind: Clutter;
}

/**
 * What a marked section is read from: its result as stored at hand-in, what tutors said to it since, the truth it was marked
 * against and the calls that were marked.
 */
export interface MarkedWork {
  readonly result: SectionResult;
  readonly acts?: readonly ReviewAct[];
  readonly truths: readonly SeenTruth[];
  readonly clutter: readonly SeenClutter[];
  /** In the order in which the report has them. */
  readonly calls: readonly Call[];
  /** Time at the piece; null where it is not known. */
  readonly seconds: number | null;
}

const FACES_OF: Readonly<Record<MarkedSection, readonly SurfaceFace[]>> = {
  plate: PIECES.butt.faces,
  fillet: PIECES.fillet.faces,
  cap: ["cap"],
  root: ["root"],
};

/**
 * What a marked section tells of the learner: one row for every imperfection and neutral feature, false call, piece of clutter,
 * dimension and question. Truth and calls on faces that the section does not have are left out. Everything is read from the
 * account that counts and what tutors said to its lines (`overruledOf`), so that progress and mark sheet never disagree; no mark
 * is changed. Questions that were annulled are left out.
 */
export function observationsOf({
  result: first,
  acts = [],
  truths,
  clutter,
  calls,
  seconds,
}: MarkedWork): SectionObservations {
  const review = reviewed(first, acts);
  const says = overruledOf(review);
  const result = review.base;
  const faces = FACES_OF[result.section];
  const { lines, totals } = result.indications;
  const lineOfTruth = new Map(
    lines.flatMap((line, at) => line.truthIds.map((id) => [id, { line, said: says("indications", at) }] as const)),
  );
  const sentenceOf = new Map(
    result.sentences?.lines.map((line, at) => [line.truthId, verdictAs(verdictOf(line), says("sentences", at))]),
  );
  const callOf = new Map(calls.map((call, position) => [call.id, { call, order: position + 1 }]));
  const falseLines = lines.flatMap((line, at) =>
    line.kind === "false-call" ? [{ line, isTakenBack: says("indications", at) !== null }] : [],
  );
  const observed = truths
    .filter(({ face }) => faces.includes(face))
    .map((truth) => observeTruth(truth, lineOfTruth.get(truth.id), callOf, sentenceOf.get(truth.id) ?? null));
  const clutterIn = (some: typeof falseLines) => new Set(some.map(({ line }) => line.clutter?.id));
  const isCalled = clutterIn(falseLines.filter(({ isTakenBack }) => !isTakenBack));
  const isRightlyCalled = clutterIn(falseLines.filter(({ isTakenBack }) => isTakenBack));
  return {
    version: 3,
    section: result.section,
    mark: review.mark,
    passMark: result.passMark,
    passed: review.passed,
    weldLength: faces.length * PIECES[result.section === "fillet" ? "fillet" : "butt"].length,
    seconds,
    notCounted: totals.notCounted,
    truths: observed.filter((truth) => truth !== null),
    leftOpen: observed.filter((truth) => truth === null).length,
    falseCalls: falseLines.flatMap(({ line, isTakenBack }) => {
      const called = callOf.get(line.callIds[0])?.call;
      if (!called || isTakenBack) return [];
      const { id, face, type, start, across } = called;
      return {
        callId: id,
        face,
        namedAs: type,
        start: start ?? 0,
        across: across ?? 0,
        on: line.clutter?.kind ?? null,
      };
    }),
    clutter: clutter
      // called, and the price taken back: neither taken for an imperfection nor left alone
      .filter(({ id, face }) => faces.includes(face) && (isCalled.has(id) || !isRightlyCalled.has(id)))
      .map(({ id, face, kind }) => ({ clutterId: id, kind, face, called: isCalled.has(id) })),
    dimensions: (result.dimensions?.lines ?? []).flatMap(({ dimension, station, written, actual }, at) =>
      // right after all: then it is not known by how much it is off
      says("dimensions", at)?.verdict === "right" ? [] : [{ dimension, station, written, actual }],
    ),
    questions: countingAnswers(review).map(({ line: { question, kind, key, written }, isRightAfterAll }) => ({
      question,
      kind,
      key: isRightAfterAll && written !== null ? written : key,
      written,
    })),
    pieceSentence:
      result.sentences &&
      verdictAs(verdictOf(result.sentences.piece), says("sentences", result.sentences.lines.length)),
  };
}

/** A sentence given in full is right; one that was right and was given nothing is not known to be wrong in any way. */
const verdictAs = (verdict: SentenceVerdict, said: SaidOf | null): SentenceVerdict | null => {
  if (said?.verdict === "right") return "right";
  return said?.verdict === "nothing" && verdict === "right" ? null : verdict;
};

type CallAt = { readonly call: Call; readonly order: number };
const FOUND: readonly AccountLine["kind"][] = ["found", "partly", "split", "merged", "neutral-called"];

/** Null where a tutor gave a miss a part of its marks, which does not say what was right of it. */
function observeTruth(
  truth: SeenTruth,
  account: { readonly line: AccountLine; readonly said: SaidOf | null } | undefined,
  callOf: ReadonlyMap<string, CallAt>,
  sentence: SentenceVerdict | null,
): TruthObservation | null {
  const line = account?.line;
  const verdict = account?.said?.verdict;
  const computed = line !== undefined && FOUND.includes(line.kind);
  if (verdict === "part" && !computed) return null;
  const found = verdict === "right" || (computed && verdict !== "nothing");
  const called = line && found ? line.callIds.flatMap((callId) => callOf.get(callId) ?? []) : [];
  // one call over several is measured against all of them as one, which tells nothing of any of them
  // and of one that was right after all it is not known by how much it is off
  const measured = line && found && verdict !== "right" && line.truthIds.length === 1 ? line : null;
  const size = differenceIn(measured, "size");
  const { id, type, face, start, end, across, eye, difficulty, neutral } = truth;
  return {
    truthId: id,
    type,
    face,
    start,
    end,
    across,
    size: truth.size,
    eye: { measure: eye.measure, value: eye.value },
    difficulty,
    neutral,
    found,
    placed: verdict === "right" ? 1 : line && found ? (line.place?.share ?? 0) / 1000 : 0,
    order: called.length > 0 ? Math.min(...called.map(({ order }) => order)) : null,
    namedAs: verdict === "right" ? type : line && found ? namedIn(line, called) : null,
    sizeWritten: size?.written ?? null,
    sizeError: size?.difference ?? null,
    startError: differenceIn(measured, "start")?.difference ?? null,
    endError: differenceIn(measured, "end")?.difference ?? null,
    acrossError: differenceIn(measured, "across")?.difference ?? null,
    sentence: neutral ? null : sentence,
  };
}

function namedIn(line: AccountLine, called: readonly CallAt[]): ImperfectionType | null {
  const part = line.parts.find(({ part }) => part === "type");
  // neutral features have no parts
  if (!part) return called[0]?.call.type ?? null;
  return typeof part.written === "string" && isImperfectionType(part.written) ? part.written : null;
}

function differenceIn(line: AccountLine | null, name: "start" | "end" | "size" | "across") {
  const part = line?.parts.find(({ part }) => part === name);
  if (typeof part?.written !== "number" || typeof part.actual !== "number") return null;
  return { written: part.written, difference: Math.round(1000 * (part.written - part.actual)) / 1000 };
}

/** What a sentence was worth as a decision: lenient lets pass what should not pass, strict stops what could. */
function verdictOf({ written, right }: Pick<SentenceLine, "written" | "right">): SentenceVerdict {
  if (written === null) return "blank";
  if (right.includes(written)) return "right";
  if (written === "accept") return "lenient";
  return right.includes("accept") ? "strict" : "other";
}
