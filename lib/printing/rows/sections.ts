import { SECTION_PARTS, type SectionPart, type SectionResult } from "../../results";
import type { ReviewedSection } from "../../review";
import type { Column } from "../csv";
import type { PrintedSheet } from "../printed-sheet";
import { marks, OF_SECTION, type OfSection } from "./common";
import { reviewOf } from "./reviewed";

interface SectionRow extends OfSection {
  readonly result: SectionResult;
  readonly review: ReviewedSection;
}

const PARTS: Readonly<Record<SectionPart, string>> = {
  indications: "Indications",
  dimensions: "Dimensions and statements",
  sentences: "Sentences",
  questions: "Questions",
};

const ofPart = (part: SectionPart): readonly Column<SectionRow>[] => [
  { header: `${PARTS[part]}, worth, marks`, of: ({ result }) => marksOrNull(result[part]?.worth) },
  { header: `${PARTS[part]}, earned, marks`, of: ({ result }) => marksOrNull(result[part]?.earned) },
  { header: `${PARTS[part]}, earned, thousandths of a mark`, of: ({ result }) => result[part]?.earned ?? null },
];

const marksOrNull = (thousandths: number | undefined) => (thousandths === undefined ? null : marks(thousandths));

const COUNTS = [
  ["Indications there", "indications"],
  ["Found", "found"],
  ["Partly right", "partly"],
  ["Found in pieces", "split"],
  ["Several in one", "merged"],
  ["Missed", "missed"],
  ["False calls", "falseCalls"],
  ["Calls not counted", "notCounted"],
] as const;

/** One row for each section: its mark against its pass mark, and what each of its parts brought. */
export const SECTION_COLUMNS: readonly Column<SectionRow>[] = [
  ...OF_SECTION,
  { header: "Started, UTC", of: ({ sheet }) => sheet.startedAt },
  { header: "Joint", of: ({ sheet }) => sheet.joint },
  { header: "Criteria", of: ({ sheet }) => sheet.criteria },
  { header: "Mark, of 100", of: ({ result }) => result.shown },
  { header: "Pass mark, of 100", of: ({ result }) => result.passMark },
  { header: "Passed", of: ({ result }) => result.passed },
  { header: "Mark, thousandths of a mark", of: ({ result }) => result.mark },
  { header: "Reviewed mark, of 100", of: ({ review }) => review.shown },
  { header: "Passed as reviewed", of: ({ review }) => review.passed },
  { header: "Reviewed mark, thousandths of a mark", of: ({ review }) => review.mark },
  ...SECTION_PARTS.flatMap(ofPart),
  ...COUNTS.map(([header, count]) => ({
    header,
    of: ({ result }: SectionRow) => result.indications.totals[count],
  })),
  { header: "Marking rule", of: ({ result }) => result.ruleVersion },
  { header: "Mark at first, of 100", of: ({ review }) => review.first.shown },
  { header: "Marking rule at first", of: ({ review }) => review.first.ruleVersion },
];

export const sectionRows = (sheet: PrintedSheet): readonly SectionRow[] =>
  sheet.sections.map((result, n) => ({ sheet, section: result.section, result, review: reviewOf(sheet, n) }));
