import { lineTitle } from "@/app/_marks/line-title";
import { type LineOfResult, marksWithin, overruleInput, reviewed } from "@/lib/review";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { storeReviews } from "@/prisma/stores/reviews";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { refuse } from "../refusal";
import { sheetViewOf } from "../sheet-view-of";
import { requireReviewableRun, signed } from "../sittings/reviewing";

/** A tutor gives a line of the mark that counts other marks, with a reason; the computed ones stay beside them. */
export async function overruleLine(caller: Caller, runId: string, input: unknown) {
  const own = await requireReviewableRun(caller, runId);
  if (!own.ok) return own;
  const parsed = overruleInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const { line: id, marks, reason } = parsed.data;
  const { run, actor } = own;
  const { base, baseId, lines, standing } = reviewed(run.first, run.acts);
  const line = lines.find((one) => one.id === id);
  if (!line?.range) return refuse("no-such-line");
  const given = marksWithin(marks, line.range);
  if (given === null) return refuse("invalid-input", { fields: { marks: rangeWords(line.range) } });
  const sheet = await readHandedInPractice(run.practiceId);
  if (!sheet) return refuse("no-such-run");
  const details = {
    line: lineTitle(sheetViewOf(sheet), base, id),
    // of what the line was worth when it was marked, as what is given is: an annulled question changes worths
    lineBefore: standing.overrulings.get(id)?.what.marks ?? line.earned,
    lineAfter: given,
    lineWorth: line.worth,
  };
  const what = { kind: "overrule", base: baseId, line: id, marks: given } as const;
  const act = signed(run, { act: "overrule", what, reason, details }, actor, caller.clock());
  return (await storeReviews([act])) ? ({ ok: true } as const) : refuse("review-changed");
}

const rangeWords = ({ most }: NonNullable<LineOfResult["range"]>): string =>
  most === 0
    ? "marks: 0, which takes the price back; such a line is worth nothing more"
    : `marks: from 0 to ${(most / 1000).toFixed(2)}, which is what the line is worth`;
