import type { Metadata } from "next";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { RULE_CHAPTERS, RULE_VERSION } from "@/lib/results";
import { ExampleTable } from "./example-table";

export const metadata: Metadata = { title: "How marking works" };

export default function RulePage() {
  return (
    <PageFrame title="How marking works" lead="The whole rule, in the words that every mark sheet goes by." isNarrow>
      <Sheet title="An example" className="mt-6">
        <ExampleTable />
      </Sheet>
      {RULE_CHAPTERS.map(({ title, paragraphs }) => (
        <Sheet key={title} title={title} className="mt-4">
          {paragraphs.map((paragraph) => (
            <p key={paragraph} className="mt-2.5 leading-relaxed">
              {paragraph}
            </p>
          ))}
        </Sheet>
      ))}
      <p className="mt-4 text-sm text-ink-2">
        Version {RULE_VERSION} of the rule. A later version never changes a mark that was given under an earlier one.
      </p>
      <Caution />
    </PageFrame>
  );
}
