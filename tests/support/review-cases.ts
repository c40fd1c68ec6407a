import fc from "fast-check";
import { DEFAULT_CRITERIA } from "../../lib/criteria";
import { drawQuestions } from "../../lib/questions";
import { type RandomStream, randomStream } from "../../lib/random";
import { EMPTY_REPORT, type Report } from "../../lib/report";
import type { Section, SectionResult } from "../../lib/results";
import { linesOf, type ReviewAct, type ReviewContent } from "../../lib/review";
import { DEFAULT_SETTINGS, markSection } from "../../lib/scoring";
import { statedSchema } from "../../lib/weld";
import { syntheticFillet, syntheticPlate } from "./synthetic-truths";

/** A report by somebody who overlooks, misreads and sees what is not there. */
function carelessReport(
  truth: ReturnType<typeof syntheticPlate | typeof syntheticFillet>,
  random: RandomStream,
): Report {
  const faces = [...new Set(truth.items.map(({ face }) => face))];
  const calls = truth.items
    .filter(() => random.chance(0.6))
    .map(({ id, face, type, start, end, across, size }) => ({
      id: id.toLowerCase(),
      face,
      type,
      start: Math.max(0, start + random.normal(0, 4)),
      end,
      across: across + random.normal(0, 1),
      size,
      sentence: random.chance(0.7) ? ("reject" as const) : null,
    }));
  const strays = Array.from({ length: random.integer(6) }, (_, n) => ({
    id: `stray-${n}`,
    face: random.pick(faces),
    type: null,
    start: random.uniform(5, 190),
    end: null,
    across: random.uniform(-8, 8),
    size: null,
    sentence: null,
  }));
  return {
    ...EMPTY_REPORT,
    calls: [...calls, ...strays].map((call) => ({
      ...call,
      end: call.end === null ? null : Math.max(call.end, call.start),
    })),
    measures: truth.dimensions
      .filter(() => random.chance(0.7))
      .map(({ dimension, station, value, at }) => ({ dimension, station, value: value + random.normal(0, 0.6), at })),
    statements: truth.statements
      .filter(() => random.chance(0.7))
      .map(({ statement, right: [answer] }) => statedSchema.parse({ statement, answer })),
    pieceSentence: random.chance(0.7) ? "reject" : null,
  };
}

/** A marked section with questions, some of them answered rightly, drawn from a name. */
export function careless(name: string, section: Section = "plate", questions = 6): SectionResult {
  const random = randomStream(name);
  const truth = section === "plate" ? syntheticPlate(random.child("piece")) : syntheticFillet(random.child("piece"));
  const criteria = DEFAULT_CRITERIA;
  const asked = drawQuestions({ section, truth, criteria }, questions, random.child("questions"));
  const report = carelessReport(truth, random.child("report"));
  const answers = Object.fromEntries(
    asked.flatMap(({ id, key }) => (random.chance(0.8) ? [[id, random.chance(0.6) ? key : (key + 1) % 4]] : [])),
  );
  return markSection(section, truth, { ...report, answers }, { ...DEFAULT_SETTINGS[section], criteria }, asked);
}

const SAMPLE: readonly SectionResult[] = Array.from({ length: 12 }, (_, n) =>
  careless(`reviewed ${n}`, n % 2 === 0 ? "plate" : "fillet", n % 5),
);

export const act = (id: number, what: ReviewContent): ReviewAct => ({
  id,
  at: new Date(Date.UTC(2026, 2, 2, 12, id)),
  by: { id: "tutor", name: "T. Utor" },
  reason: "seen on the piece",
  what,
});

/** A marked section. */
export const markedSections: fc.Arbitrary<SectionResult> = fc.constantFrom(...SAMPLE);

/** One act on the first mark: a line overruled within its range, or a question taken out. */
export function contentsFor(result: SectionResult): fc.Arbitrary<ReviewContent> {
  const overrulings = linesOf(result).flatMap(({ id, range }) =>
    range === null
      ? []
      : [
          fc
            .integer({ min: range.least, max: range.most })
            .map((marks): ReviewContent => ({ kind: "overrule", base: null, line: id, marks })),
        ],
  );
  const annulments = (result.questions?.lines ?? []).map(({ question }) =>
    fc.constant<ReviewContent>({ kind: "annul", question, batch: "b" }),
  );
  return fc.oneof(...overrulings, ...annulments);
}

/** A marked section with acts on it, some of them taken back. */
export const reviewCases: fc.Arbitrary<{ result: SectionResult; acts: readonly ReviewAct[] }> = markedSections.chain(
  (result) =>
    fc.array(fc.tuple(contentsFor(result), fc.boolean()), { maxLength: 12 }).map((drawn) => ({
      result,
      acts: drawn.flatMap(([what, isTakenBack], n) => [
        act(2 * n + 1, what),
        ...(isTakenBack ? [act(2 * n + 2, { kind: "take-back", of: 2 * n + 1 })] : []),
      ]),
    })),
);
