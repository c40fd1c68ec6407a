import { FACE_WORDS } from "@/app/_ui/section-names";
import { describeLimit, describeRange, describeSumRule, limitSchema, rangeSchema, sumRuleSchema } from "@/lib/criteria";
import { imperfection } from "@/lib/imperfections";
import { type DraftRow, writtenLimit, writtenRange, writtenSum } from "./draft";

/** A row as it will be read, part by part: what is not right yet is an ellipsis. */
export function rowWords({ types, faces, ranges, limit, sums, alsoNeeds }: DraftRow) {
  const readLimit = limitSchema.safeParse(writtenLimit(limit));
  const readRanges = ranges.map((range) => rangeSchema.safeParse(writtenRange(range)));
  const readSums = sums.map((rule) => sumRuleSchema.safeParse(writtenSum(rule)));
  return {
    speaksOf:
      types.length === 0
        ? "no imperfection yet"
        : types.map((type) => imperfection(type).name.toLowerCase()).join(", "),
    where: [
      faces.length === 0 ? "on no face yet" : `on ${faces.map((face) => FACE_WORDS[face]).join(", ")}`,
      ...readRanges.map((range) => (range.success ? describeRange(range.data) : "…")),
    ].join("; "),
    says: [
      readLimit.success ? describeLimit(readLimit.data) : "…",
      ...readSums.map((rule) => (rule.success ? describeSumRule(rule.data) : "…")),
      ...(alsoNeeds.trim() === "" ? [] : [`accepted only with ${alsoNeeds.trim()}`]),
    ].join("; "),
  };
}

/** A row read back as it is written. */
export function RowWords({ row }: { readonly row: DraftRow }) {
  const { speaksOf, where, says } = rowWords(row);
  return (
    <p className="text-sm wrap-anywhere" data-reads>
      <span className="font-semibold">{says}</span>
      <span className="block text-ink-2">
        {speaksOf.charAt(0).toUpperCase()}
        {speaksOf.slice(1)}, {where}
      </span>
    </p>
  );
}
