import { lineTitle } from "@/app/_marks/line-title";
import { RULE_VERSION, type SectionResult } from "@/lib/results";
import { differences, markAgainInput, type ReviewContent, resultOfBase } from "@/lib/review";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { type HandedInPractice, readHandedInPractice } from "@/prisma/stores/practices";
import { type ReviewableRun, storeReviews } from "@/prisma/stores/reviews";
import type { StoredSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { refuse } from "../refusal";
import { sheetViewOf } from "../sheet-view-of";
import { sectionOf } from "../sittings/new-run";
import { requireReviewableRun, signed, withOneMore } from "../sittings/reviewing";

/** What a section marked under an older rule would come to under the present one; nothing is changed. */
export async function previewMarkAgain(caller: Caller, runId: string) {
  const marked = await again(caller, runId);
  if (!marked.ok) return marked;
  const { run, sheet, result } = marked;
  const view = sheetViewOf(sheet);
  const { first } = run;
  const choice = (counts: boolean) => {
    const { base, mark, shown, passed, standing } = wouldCount(run, result, counts);
    return {
      ruleVersion: base.ruleVersion,
      computed: base.shown,
      /** As it would count, thousandths. */
      mark,
      shown,
      passed,
      /** Overrulings that were said of another marking and would not count. */
      waiting: standing.waiting.map(({ id, what }) => {
        const said = resultOfBase(what.base, run.acts, first);
        return { act: id, line: lineTitle(view, said, what.line), marks: what.marks, ruleVersion: said.ruleVersion };
      }),
    };
  };
  return {
    ok: true,
    first: choice(false),
    again: choice(true),
    /** As computed. */
    lines: differences(first, result).map(({ before, after }) => ({
      line: before ? lineTitle(view, first, before.id) : after ? lineTitle(view, result, after.id) : "",
      before: before && { earned: before.earned, worth: before.worth },
      after: after && { earned: after.earned, worth: after.worth },
    })),
  } as const;
}

/** A tutor keeps the new mark beside the first, and says which of them counts. */
export async function markAgain(caller: Caller, runId: string, input: unknown) {
  const marked = await again(caller, runId);
  if (!marked.ok) return marked;
  const parsed = markAgainInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { counts, seen, reason } = parsed.data;
  const { run, actor, result } = marked;
  const isSeen =
    wouldCount(run, result, false).mark === seen.first && wouldCount(run, result, true).mark === seen.again;
  if (!isSeen) return refuse("review-changed");
  if (differences(run.first, result).length === 0) return refuse("nothing-differs");
  const what = remark(result, counts);
  const details = {
    line: `Rule ${run.first.ruleVersion}: ${run.first.shown.toFixed(1)}; rule ${result.ruleVersion}: ${result.shown.toFixed(1)}`,
    counts: counts ? `rule ${result.ruleVersion} counts` : `rule ${run.first.ruleVersion} counts`,
  };
  const act = signed(run, { act: "mark-again", what, reason, details }, actor, caller.clock());
  return (await storeReviews([act])) ? ({ ok: true } as const) : refuse("review-changed");
}

const remark = (result: SectionResult, counts: boolean): ReviewContent => ({ kind: "re-mark", result, counts });

/** The mark with all that stands of it, if the new marking counts, or the first. */
const wouldCount = (run: ReviewableRun, result: SectionResult, counts: boolean) =>
  withOneMore(run, remark(result, counts)).after;

async function again(caller: Caller, runId: string) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  if (own.run.first.ruleVersion === RULE_VERSION) return refuse("same-rule");
  const sheet = await readHandedInPractice(own.run.practiceId);
  if (!sheet) return refuse("no-such-run");
  return { ...own, sheet, result: markedNow(sheet, own.run.first, own.stored) };
}

/**
 * The section marked from what is kept of it: report, truth, criteria, questions and pass mark as they were, weights as its
 * paper has them. Questions are taken from the first mark, which has them whole also where the report was never closed.
 */
function markedNow(
  { practice: { section, criteria, report }, truth }: HandedInPractice,
  { passMark, questions }: SectionResult,
  { sitting }: StoredSitting,
): SectionResult {
  const { weights } = sectionOf(sitting.paper, section);
  const settings = { ...DEFAULT_SETTINGS[section], weights, passMark, criteria };
  const asked = (questions?.lines ?? []).map(({ question, kind, stem, options, key, explanation, place }) => {
    const [a, b, c, d] = options;
    return { id: question, kind, stem, options: [a, b, c, d] as const, key, explanation, place };
  });
  return markSection(section, truth, report, settings, asked);
}
