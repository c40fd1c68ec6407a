import type { Metadata } from "next";
import Link from "next/link";
import { MarksFigure } from "@/app/_progress/class/marks-figure";
import { QuestionsFigure } from "@/app/_progress/class/questions-figure";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { type Handed, readClassQuestions } from "@/app/_server/use-cases/read-class-questions";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import "@/app/_progress/progress.css";

export const metadata: Metadata = { title: "How the questions work" };

export default async function QuestionsPage({
  params,
  searchParams,
}: PageProps<"/desk/classes/[id]/progress/questions">) {
  const [{ id }, { of }] = await Promise.all([params, searchParams]);
  const read = await readClassQuestions(await currentCaller(), id, typeof of === "string" ? of : null);
  if (!read.ok) return showRefusal(read);
  const { group, choices, choice, analysis } = read;
  return (
    <PageFrame
      title={`How the questions work in ${group.name}`}
      lead={
        analysis.marks.count === 0
          ? "Marks and questions of a section come here as soon as somebody has handed it in: for practice at once, in a sitting once it is closed."
          : "Over at most the latest 200 sections. Somebody who handed in several counts several times. A question that a tutor annulled is marked as annulled.".concat(
              analysis.pooled > 0
                ? ` ${analysis.pooled} of the answers are by learners of the workshop who were erased since.`
                : "",
            )
      }
    >
      <Link
        href={`/desk/classes/${id}/progress`}
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4 print:hidden"
      >
        Back to what the class misses
      </Link>
      <nav aria-label="Sections" className="mt-2 flex flex-wrap gap-3 print:hidden">
        {choices.map((one) => (
          <Link
            key={one.key}
            href={`/desk/classes/${id}/progress/questions?of=${encodeURIComponent(one.key)}`}
            aria-current={one.key === choice.key ? "page" : undefined}
            className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-4 hover:bg-paper-2 aria-[current=page]:border-2 aria-[current=page]:border-action aria-[current=page]:font-semibold"
          >
            {nameOf(one)}
          </Link>
        ))}
      </nav>
      <MarksFigure marks={analysis.marks} reliability={analysis.reliability} />
      <QuestionsFigure items={analysis.items} askedSeldom={analysis.askedSeldom} />
      <Caution />
    </PageFrame>
  );
}

const nameOf = ({ section, paperName }: Handed): string => `${SECTION_NAMES[section]}, ${paperName ?? "practice"}`;
