import type { Clutter, ImperfectionType } from "../../imperfections";
import { isImperfectionType } from "../../imperfections";
import type { Call } from "../../report";
import type { AccountLine, MarkedSection, SectionResult, SentenceLine } from "../../results";
import { PIECES, type SurfaceFace } from "../../weld";
import type { EyeMeasure, SectionObservations, SentenceVerdict, TruthObservation } from "./observation";

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

/** What a marked section is read from: its stored result, the truth it was marked against and the calls that were marked. */
export interface MarkedWork {
  readonly result: SectionResult;
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
 * account as it was marked, so that progress and mark sheet never disagree; no mark is changed.
 */
export function observationsOf({ result, truths, clutter, calls, seconds }: MarkedWork): SectionObservations {
  const faces = FACES_OF[result.section];
  const { lines, totals } = result.indications;
  const lineOfTruth = new Map(lines.flatMap((line) => line.truthIds.map((id) => [id, line] as const)));
  const sentenceOf = new Map(result.sentences?.lines.map((line) => [line.truthId, line]));
  const callOf = new Map(calls.map((call, position) => [call.id, { call, order: position + 1 }]));
  const falseLines = lines.filter(({ kind }) => kind === "false-call");
  const calledClutter = new Set(falseLines.map((line) => line.clutter?.id));
  return {
    version: 1,
    section: result.section,
    mark: result.mark,
    passMark: result.passMark,
    passed: result.passed,
    weldLength: faces.length * PIECES[result.section === "fillet" ? "fillet" : "butt"].length,
    seconds,
    notCounted: totals.notCounted,
    truths: truths
      .filter(({ face }) => faces.includes(face))
      .map((truth) => observeTruth(truth, lineOfTruth.get(truth.id), callOf, sentenceOf.get(truth.id))),
    falseCalls: falseLines.flatMap((line) => {
      const called = callOf.get(line.callIds[0])?.call;
      if (!called) return [];
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
      .filter(({ face }) => faces.includes(face))
      .map(({ id, face, kind }) => ({ clutterId: id, kind, face, called: calledClutter.has(id) })),
    dimensions: (result.dimensions?.lines ?? []).map(({ dimension, station, written, actual }) => ({
      dimension,
      station,
      written,
      actual,
    })),
    questions: (result.questions?.lines ?? []).map(({ question, kind, key, written }) => ({
      question,
      kind,
      key,
      written,
    })),
    pieceSentence: result.sentences && verdictOf(result.sentences.piece),
  };
}

type CallAt = { readonly call: Call; readonly order: number };
const FOUND: readonly AccountLine["kind"][] = ["found", "partly", "split", "merged", "neutral-called"];

function observeTruth(
  truth: SeenTruth,
  line: AccountLine | undefined,
  callOf: ReadonlyMap<string, CallAt>,
  sentence: SentenceLine | undefined,
): TruthObservation {
  const found = line !== undefined && FOUND.includes(line.kind);
  const called = found ? line.callIds.flatMap((callId) => callOf.get(callId) ?? []) : [];
  // one call over several is measured against all of them as one, which tells nothing of any of them
  const measured = found && line.truthIds.length === 1 ? line : null;
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
    placed: found ? (line.place?.share ?? 0) / 1000 : 0,
    order: called.length > 0 ? Math.min(...called.map(({ order }) => order)) : null,
    namedAs: found ? namedIn(line, called) : null,
    sizeWritten: size?.written ?? null,
    sizeError: size?.difference ?? null,
    startError: differenceIn(measured, "start")?.difference ?? null,
    endError: differenceIn(measured, "end")?.difference ?? null,
    acrossError: differenceIn(measured, "across")?.difference ?? null,
    sentence: neutral || !sentence ? null : verdictOf(sentence),
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
