import type { Metadata } from "next";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { RULE_TEXT, RULE_VERSION } from "@/lib/results";

export const metadata: Metadata = { title: "How marking works" };

export default function RulePage() {
  return (
    <PageFrame title="How marking works" lead="The whole rule, in the words that every mark sheet goes by." isNarrow>
      <ol className="mt-6 list-decimal space-y-3 rounded-md border border-line bg-sheet p-6 pl-11 leading-relaxed">
        {RULE_TEXT.map((paragraph) => (
          <li key={paragraph} className="pl-2">
            {paragraph}
          </li>
        ))}
      </ol>
      <p className="mt-4 text-sm text-ink-2">
        Version {RULE_VERSION} of the rule. A later version never changes a mark that was given under an earlier one.
      </p>
      <Caution />
    </PageFrame>
  );
}
