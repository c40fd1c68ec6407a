import type { SectionResult } from "@/lib/results";
import { differences, type LineId, type ReviewAct, type ReviewedSection, resultOfBase } from "@/lib/review";
import { lineTitle } from "./line-title";
import { marks } from "./line-words";
import type { SheetView } from "./sheet-view";

/** An act of a tutor as a mark sheet tells it. */
export interface ActView {
  readonly id: number;
  readonly at: Date;
  /** Whose signature it is. */
  readonly by: string;
  readonly reason: string;
  /** What was done to what: "gave 5.00 of 5.00 marks". */
  readonly what: string;
  readonly about: string;
  /** Whether it has a say still. */
  readonly stands: boolean;
}

/** What stands beside the computed marks of a line. Thousandths of a mark. */
export interface LineReview {
  readonly worth: number;
  readonly earned: number;
  /** What was said of the line itself; null where its worth only changed with another one's. */
  readonly act: ActView | null;
  readonly isAnnulled: boolean;
}

/** A mark with its verdict and the version of the rule that it was computed by. */
export interface MarkView {
  readonly ruleVersion: string;
  readonly mark: number;
  readonly shown: number;
  readonly passed: boolean;
}

/** What tutors said to a mark, beside it. */
export interface ReviewView {
  /** As computed: the one whose lines stand on the sheet. */
  readonly computed: MarkView;
  /** As it counts. */
  readonly reviewed: Omit<MarkView, "ruleVersion">;
  /** Where it was marked again: both, and in which lines they differ. */
  readonly markedAgain: {
    readonly first: MarkView;
    readonly again: MarkView;
    readonly counts: "first" | "again";
    readonly lines: readonly { readonly line: string; readonly before: number | null; readonly after: number | null }[];
  } | null;
  readonly parts: ReviewedSection["parts"];
  /** What lifts the indications to 0 as reviewed, where the account has no line for it; thousandths. */
  readonly floor: number;
  /** Lines that something was said of, or that are worth something else now. */
  readonly lines: Readonly<Record<LineId, LineReview>>;
  /** Everything that was done, the earliest first. */
  readonly acts: readonly ActView[];
}

type Named = Pick<SheetView, "truths" | "calls">;

/** What tutors' acts on a mark come to, with the words of its mark sheet. */
export function reviewView(section: ReviewedSection, acts: readonly ReviewAct[], named: Named): ReviewView {
  const { first, base, mark, shown, passed, parts, lines, standing } = section;
  const { overrulings, waiting, annulled, remark } = standing;
  const standingIds = new Set(
    [remark, ...overrulings.values(), ...waiting, ...annulled.values()].map((act) => act?.id),
  );
  const views = acts.map((act) => actView(act, acts, section, standingIds.has(act.id), named));
  const viewOf = (id: number | undefined) => views.find((view) => view.id === id) ?? null;
  return {
    computed: markView(base),
    reviewed: { mark, shown, passed },
    markedAgain: remark && {
      first: markView(first),
      again: markView(remark.what.result),
      counts: remark.what.counts ? "again" : "first",
      lines: differences(first, remark.what.result).map(({ before, after }) => ({
        line: before ? lineTitle(named, first, before.id) : after ? lineTitle(named, remark.what.result, after.id) : "",
        before: before?.earned ?? null,
        after: after?.earned ?? null,
      })),
    },
    parts,
    floor: section.floor,
    lines: Object.fromEntries(
      lines.flatMap((line): readonly (readonly [LineId, LineReview])[] => {
        const { worth, earned } = line.reviewed;
        const act =
          (line.question !== null && viewOf(annulled.get(line.question)?.id)) || viewOf(overrulings.get(line.id)?.id);
        return act || worth !== line.worth || earned !== line.earned
          ? [[line.id, { worth, earned, act, isAnnulled: line.annulled !== null }]]
          : [];
      }),
    ),
    acts: views,
  };
}

const markView = ({ ruleVersion, mark, shown, passed }: SectionResult): MarkView => ({
  ruleVersion,
  mark,
  shown,
  passed,
});

function actView(
  act: ReviewAct,
  acts: readonly ReviewAct[],
  section: ReviewedSection,
  stands: boolean,
  named: Named,
): ActView {
  const { id, at, by, reason } = act;
  const about = actAbout(act, acts, section, named);
  return { id, at, by: by.name, reason, what: actDone(act, acts, section), about, stands };
}

function actAbout(
  { what }: ReviewAct,
  acts: readonly ReviewAct[],
  { first, base }: Pick<ReviewedSection, "first" | "base">,
  named: Named,
): string {
  switch (what.kind) {
    case "overrule":
      return lineTitle(named, resultOfBase(what.base, acts, first), what.line);
    case "annul": {
      const asked = base.questions?.lines ?? [];
      const at = asked.findIndex(({ question }) => question === what.question);
      return at === -1 ? "A question" : `Question ${at + 1}: ${asked[at].stem}`;
    }
    case "re-mark":
      return "The whole section";
    case "take-back": {
      const taken = acts.find(({ id }) => id === what.of);
      return taken ? actAbout(taken, acts, { first, base }, named) : "";
    }
  }
}

const PART_OF_SENTENCE = { annul: "annulled", overrule: "overruled", "re-mark": "marked again" } as const;

function actDone({ what }: ReviewAct, acts: readonly ReviewAct[], { first }: ReviewedSection): string {
  switch (what.kind) {
    case "overrule":
      return `overruled: ${marks(what.marks)} marks`;
    case "annul":
      return "annulled";
    case "re-mark": {
      const { result, counts } = what;
      return `marked again under rule ${result.ruleVersion}: ${result.shown.toFixed(1)}; ${counts ? "that counts" : `the mark under rule ${first.ruleVersion} counts`}`;
    }
    case "take-back": {
      const kind = acts.find(({ id }) => id === what.of)?.what.kind;
      return `taken back: is not ${kind && kind !== "take-back" ? PART_OF_SENTENCE[kind] : "changed"} any more`;
    }
  }
}
