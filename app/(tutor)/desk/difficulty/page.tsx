import type { Metadata } from "next";
import Link from "next/link";
import { Figure } from "@/app/_progress/figure";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDifficulty } from "@/app/_server/use-cases/read-difficulty";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { ENOUGH } from "@/lib/progress";
import { DifficultyTable } from "./difficulty-table";
import { difficultyTable, isSure } from "./difficulty-words";
import "@/app/_progress/progress.css";

export const metadata: Metadata = { title: "How hard it is to see" };

export default async function DifficultyPage() {
  const read = await readDifficulty(await currentCaller());
  if (!read.ok) return showRefusal(read);
  const { rows, sections, learners } = read;
  const enough = rows.filter(({ observations }) => observations >= ENOUGH);
  const off = enough.filter(isSure).length;
  const fewer = rows.length - enough.length;
  return (
    <PageFrame
      title="How hard it is to see"
      lead="What learners find in practice, held against what the tool expects of them. It changes no mark. It only helps to choose a learner's next piece, so that it is neither too hard nor too easy."
    >
      <Link
        href="/desk"
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4 print:hidden"
      >
        Back to the desk
      </Link>
      <Figure
        title="By imperfection and size"
        says={
          <>
            {sections === 0 ? (
              <p>Nobody has handed in a piece for practice yet.</p>
            ) : (
              <p>
                From the latest {count(sections, "piece")} of practice by {count(learners, "learner")}; the first three
                of each show how good somebody is and are not counted.{" "}
                {enough.length === 0
                  ? `Nothing was met ${ENOUGH} times yet, so nothing can be said.`
                  : `${off} of ${count(enough.length, "kind")} turned out otherwise than expected.`}
                {fewer > 0 && ` ${count(fewer, "kind")} met fewer than ${ENOUGH} times: in the file only.`}
              </p>
            )}
            <p className="mt-1">
              Each figure says how hard something is beside the rest: a learner who finds more of everything is better,
              and makes nothing easier. It is drawn towards what was expected, the less there is the more. Expected is
              an estimate of our own, common practice, no source.
            </p>
          </>
        }
        table={difficultyTable(rows)}
        fileName="toeline-difficulty"
        isTableDrawn
      >
        {enough.length > 0 && <DifficultyTable rows={enough} />}
      </Figure>
      <Caution />
    </PageFrame>
  );
}

const count = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;
