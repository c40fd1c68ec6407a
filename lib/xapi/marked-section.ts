import { type MarkedSection, marksInHundredths, type QuestionLine, shownMark } from "../results";
import { activity, idOf, learnerAccount, workshopAccount, type XapiPlace } from "./place";
import { type Activity, isoDuration, type Result, type Statement, VERBS } from "./statement";

/** A marked section that counts. */
export interface CountedWork {
  readonly attemptId: string;
  /** Counts what tutors said to its mark. */
  readonly revision: number;
  readonly practiceId: string;
  readonly userId: string;
  readonly section: MarkedSection;
  readonly handedInAt: Date;
  /** Time at the piece; null where it is not known. */
  readonly seconds: number | null;
  /** The mark that counts, thousandths. */
  readonly mark: number;
  readonly passMark: number;
  readonly isPassed: boolean;
  readonly ruleVersion: string;
  /** As they were marked at hand-in. */
  readonly questions: readonly QuestionLine[];
  /** Null for practice. */
  readonly sat: { readonly sittingId: string; readonly paperId: string; readonly paperName: string } | null;
}

const SECTION_WORDS: Readonly<Record<MarkedSection, string>> = {
  plate: "a butt plate",
  fillet: "a fillet weld",
  cap: "the cap face of a butt plate",
  root: "the root face of a butt plate",
};

/** What a section says of its learner: each question that was put, in its order, then how the whole was done. */
export const statementsOf = (place: XapiPlace, work: CountedWork): readonly Statement[] => [
  ...work.questions.map((line) => answered(place, work, line)),
  markedStatement(place, work),
];

/** Passed or failed, with the mark that counts; a mark that a tutor changed is another statement. */
export function markedStatement(place: XapiPlace, work: CountedWork): Statement {
  const { mark, passMark, isPassed, ruleVersion, seconds, sat } = work;
  const parent = sat && paperOf(place, sat);
  return {
    ...common(place, work),
    id: markedId(place, work.attemptId, work.revision),
    verb: isPassed ? VERBS.passed : VERBS.failed,
    object: sectionOf(place, work),
    result: {
      score: { scaled: mark / 100_000, raw: shownMark(mark), min: 0, max: 100 },
      success: isPassed,
      completion: true,
      ...(seconds !== null && { duration: isoDuration(seconds) }),
      extensions: {
        [`${place.home}/activities/extensions/pass-mark`]: passMark,
        [`${place.home}/activities/extensions/exact-mark`]: marksInHundredths(mark),
        [`${place.home}/activities/extensions/marking-rule`]: ruleVersion,
      },
    },
    context: contextOf(place, work, parent ? [parent] : []),
  };
}

const markedId = (place: XapiPlace, attemptId: string, revision: number): string =>
  idOf(place, `attempt/${attemptId}/mark/${revision}`);

/** One answer; what was not answered has no response. Unlike its marks it is the same whatever is said to it later. */
function answered(place: XapiPlace, work: CountedWork, line: QuestionLine): Statement {
  // options come in any order, and the same question has to be the same activity
  const texts = line.options.toSorted();
  const choice = (option: number) => `option-${texts.indexOf(line.options[option]) + 1}`;
  const name = idOf(place, ["question", line.stem, ...texts, line.options[line.key]].join("\n"));
  const asked = activity(place, `questions/${name}`, { type: "cmi.interaction", name: line.stem });
  const result: Result = {
    success: line.written === line.key,
    ...(line.written !== null && { response: choice(line.written) }),
  };
  return {
    ...common(place, work),
    id: idOf(place, `attempt/${work.attemptId}/answer/${line.question}`),
    verb: VERBS.answered,
    object: {
      ...asked,
      definition: {
        ...asked.definition,
        interactionType: "choice",
        choices: texts.map((text, at) => ({ id: `option-${at + 1}`, description: { en: text } })),
        correctResponsesPattern: [choice(line.key)],
      },
    },
    result,
    context: contextOf(place, work, [sectionOf(place, work)]),
  };
}

/** Takes the mark back that was told at a revision; with `isWhole` everything that was told of the section. */
export function takenBack(
  place: XapiPlace,
  { attemptId, revision, questions }: Pick<CountedWork, "attemptId" | "revision" | "questions">,
  at: Date,
  isWhole: boolean,
): readonly Statement[] {
  const answers = questions.map(({ question }) => idOf(place, `attempt/${attemptId}/answer/${question}`));
  return [...(isWhole ? answers : []), markedId(place, attemptId, revision)].map((id) => ({
    id: idOf(place, `void/${id}`),
    actor: workshopAccount(place),
    verb: VERBS.voided,
    object: { objectType: "StatementRef", id },
    timestamp: at.toISOString(),
    version: "1.0.0",
  }));
}

const common = (place: XapiPlace, { userId, handedInAt }: CountedWork) => ({
  actor: learnerAccount(place, userId),
  timestamp: handedInAt.toISOString(),
  version: "1.0.0" as const,
});

function sectionOf(place: XapiPlace, { section, sat }: CountedWork): Activity {
  const words = SECTION_WORDS[section];
  return sat
    ? activity(place, `papers/${sat.paperId}/${section}`, {
        type: "assessment",
        name: `${sat.paperName}: inspect ${words}`,
      })
    : activity(place, `practice/${section}`, { type: "simulation", name: `Practice: inspect ${words}` });
}

const paperOf = (place: XapiPlace, sat: NonNullable<CountedWork["sat"]>): Activity =>
  activity(place, `papers/${sat.paperId}`, { type: "assessment", name: sat.paperName });

function contextOf(place: XapiPlace, { practiceId, sat }: CountedWork, parent: readonly Activity[]) {
  const sitting =
    sat && activity(place, `sittings/${sat.sittingId}`, { type: "assessment", name: `A sitting of ${sat.paperName}` });
  return {
    // one piece, and everything that is said of it
    registration: idOf(place, `piece/${practiceId}`),
    platform: "Toeline",
    language: "en",
    contextActivities: {
      ...(parent.length > 0 && { parent }),
      grouping: [...(sitting ? [sitting] : []), workshopActivity(place)],
    },
  };
}

export const workshopActivity = (place: XapiPlace): Activity =>
  activity(place, "workshop", { type: "course", name: "Visual weld inspection, practice" });
