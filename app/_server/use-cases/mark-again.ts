import { lineTitle } from "@/app/_marks/line-title";
import { RULE_VERSION, type SectionResult } from "@/lib/results";
import { differences, markAgainInput, standingActs } from "@/lib/review";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { type HandedInPractice, readHandedInPractice } from "@/prisma/stores/practices";
import { storeReviews } from "@/prisma/stores/reviews";
import type { StoredSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { refuse } from "../refusal";
import { sheetViewOf } from "../sheet-view-of";
import { sectionOf } from "../sittings/new-run";
import { requireReviewableRun, signed } from "../sittings/reviewing";

/** What a section marked under an older rule would come to under the present one; nothing is changed. */
export async function previewMarkAgain(caller: Caller, runId: string) {
  const marked = await again(caller, runId);
  if (!marked.ok) return marked;
  const { run, sheet, result } = marked;
  const view = sheetViewOf(sheet);
  const { first } = run;
  const { overrulings, waiting } = standingActs(run.acts);
  return {
    ok: true,
    before: markOf(first),
    after: markOf(result),
    mark: result.mark,
    lines: differences(first, result).map(({ before, after }) => ({
      line: before ? lineTitle(view, first, before.id) : after ? lineTitle(view, result, after.id) : "",
      before: before && { earned: before.earned, worth: before.worth },
      after: after && { earned: after.earned, worth: after.worth },
    })),
    /** Overrulings were said of the first mark: they do not go over to the new one. */
    overrulings: [...overrulings.values(), ...waiting].filter(({ what }) => what.base === null).length,
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
  if (result.mark !== seen) return refuse("review-changed");
  if (differences(run.first, result).length === 0) return refuse("nothing-differs");
  const what = { kind: "re-mark", result, counts } as const;
  const details = {
    line: `Rule ${run.first.ruleVersion}: ${run.first.shown.toFixed(1)}; rule ${result.ruleVersion}: ${result.shown.toFixed(1)}`,
    counts: counts ? `rule ${result.ruleVersion} counts` : `rule ${run.first.ruleVersion} counts`,
  };
  const act = signed(run, { act: "mark-again", what, reason, details }, actor, caller.clock());
  return (await storeReviews([act])) ? ({ ok: true } as const) : refuse("review-changed");
}

const markOf = ({ ruleVersion, shown, passed }: SectionResult) => ({ ruleVersion, shown, passed });

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
