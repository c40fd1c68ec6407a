import { z } from "zod";
import type { Practice } from "../practice";
import type { PrintedTruth } from "../printing";

import { SECTIONS, type SectionResult, shownMark } from "../results";
import { type ReviewAct, reviewed } from "../review";
import { BEAT, BIN, type PackedTrail } from "../trail";
import { ASPECTS, SURFACE_FACES } from "../weld";
import { recordedAccount, recordedAccountSchema } from "./account";
import { iso, isoOrNull, mm, moment, thousandths } from "./common";
import { recordedReport, recordedReportSchema, typeSchema } from "./report";

const truthSchema = z.strictObject({
  id: z.string(),
  face: z.enum(SURFACE_FACES),
  type: typeSchema,
  startMm: mm,
  endMm: mm,
  acrossMm: mm,
  sizeMm: mm.nullable(),
});

/** What a tutor said to a mark. Acts are named by their numbers. */
const actSchema = z.strictObject({
  act: z.int(),
  kind: z.enum(["overrule", "annul", "re-mark", "take-back"]),
  at: moment,
  by: z.string(),
  reason: z.string(),
  line: z.string().nullable(),
  givenThousandths: thousandths.nullable(),
  question: z.string().nullable(),
  ruleVersion: z.string().nullable(),
  takesBackAct: z.int().nullable(),
});

const markedSchema = z.strictObject({
  /** As computed, by the marking that counts. */
  account: recordedAccountSchema,
  firstMarkThousandths: thousandths,
  firstRuleVersion: z.string(),
  /** What counts, tutors' acts included. */
  countingMarkThousandths: thousandths,
  countingShownMark: z.number(),
  countingIsPassed: z.boolean(),
  acts: z.array(actSchema),
});

/** Where the learner looked: how often a count stands, in turn with the count, as it is stored. */
const trailSchema = z.strictObject({
  unitSeconds: z.number(),
  binMm: mm,
  views: z.strictObject(
    Object.fromEntries(ASPECTS.map((aspect) => [aspect, z.array(z.int()).optional()])) as Record<
      (typeof ASPECTS)[number],
      z.ZodOptional<z.ZodArray<z.ZodInt>>
    >,
  ),
});

/** One piece that the learner had on the bench. */
export const recordedPieceSchema = z.strictObject({
  id: z.string(),
  section: z.enum(SECTIONS),
  /** The section of a sitting that it is, as `sittings` names it; null for practice. */
  sectionOfSitting: z.string().nullable(),
  state: z.enum(["open", "handed-in"]),
  startedAt: moment,
  savedAt: moment.nullable(),
  reportClosedAt: moment.nullable(),
  handedInAt: moment.nullable(),
  passMark: z.number(),
  book: z.enum(["open", "closed"]),
  criteria: z.strictObject({ id: z.string(), name: z.string(), edition: z.string() }).nullable(),
  /** Null where a tutor made the record and it is not handed in. */
  report: recordedReportSchema.nullable(),
  /** Null until whoever made the record may know marks and truth. */
  marked: z
    .strictObject({
      joint: z.string(),
      generatorVersion: z.string(),
      truths: z.array(truthSchema),
      sections: z.array(markedSchema),
    })
    .nullable(),
  viewTrail: trailSchema.nullable(),
});
export type RecordedPiece = z.infer<typeof recordedPieceSchema>;

/** What is known of a piece that was marked. */
export interface KnownPiece {
  readonly joint: string;
  readonly generatorVersion: string;
  readonly truths: readonly PrintedTruth[];
  readonly sections: readonly { readonly result: SectionResult; readonly acts: readonly ReviewAct[] }[];
}

export interface PieceToRecord {
  readonly practice: Practice;
  readonly withReport: boolean;
  readonly known: KnownPiece | null;
  readonly trail: PackedTrail | null;
}

export function recordedPiece({ practice, withReport, known, trail }: PieceToRecord): RecordedPiece {
  const { id, section, runId, state, passMark, book, criteria, report } = practice;
  return {
    id,
    section,
    sectionOfSitting: runId,
    state,
    startedAt: iso(practice.startedAt),
    savedAt: isoOrNull(practice.savedAt),
    reportClosedAt: isoOrNull(practice.reportClosedAt),
    handedInAt: isoOrNull(practice.handedInAt),
    passMark,
    book,
    criteria: criteria && { id: criteria.id, name: criteria.name, edition: criteria.edition },
    report: withReport ? recordedReport(report) : null,
    marked: known && {
      joint: known.joint,
      generatorVersion: known.generatorVersion,
      truths: known.truths.map(({ id: truthId, face, type, start, end, across, size }) => {
        return { id: truthId, face, type, startMm: start, endMm: end, acrossMm: across, sizeMm: size };
      }),
      sections: known.sections.map(recordedMark),
    },
    viewTrail: trail && { unitSeconds: BEAT, binMm: BIN, views: trail.views },
  };
}

function recordedMark({ result, acts }: KnownPiece["sections"][number]): z.infer<typeof markedSchema> {
  const { first, base, mark, passed } = reviewed(result, acts);
  return {
    account: recordedAccount(base),
    firstMarkThousandths: first.mark,
    firstRuleVersion: first.ruleVersion,
    countingMarkThousandths: mark,
    countingShownMark: shownMark(mark),
    countingIsPassed: passed,
    acts: acts.map(({ id, at, by, reason, what }) => ({
      act: id,
      kind: what.kind,
      at: iso(at),
      by: by.name,
      reason,
      line: what.kind === "overrule" ? what.line : null,
      givenThousandths: what.kind === "overrule" ? what.marks : null,
      question: what.kind === "annul" ? what.question : null,
      ruleVersion: what.kind === "re-mark" ? what.result.ruleVersion : null,
      takesBackAct: what.kind === "take-back" ? what.of : null,
    })),
  };
}
