import type { Metadata } from "next";
import Link from "next/link";
import { ProgressAccount } from "@/app/_progress/progress-account";
import { standingWords } from "@/app/_progress/words";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readLearnerProgress } from "@/app/_server/use-cases/read-learner-progress";
import { PageFrame } from "@/app/_ui/page-frame";

export const metadata: Metadata = { title: "Progress of a learner" };

export default async function LearnerProgressPage({ params }: PageProps<"/desk/[learner]/progress">) {
  const { learner } = await params;
  const read = await readLearnerProgress(await currentCaller(), learner);
  if (!read.ok) return showRefusal(read);
  const { person, progress } = read;
  return (
    <PageFrame
      title={`Progress of ${person.name}`}
      lead={progress.history.length > 0 && standingWords(progress.history, "tutor")}
    >
      <Link
        href={`/desk/${person.id}`}
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4 print:hidden"
      >
        Back to {person.name}
      </Link>
      <ProgressAccount
        progress={progress}
        whenEmpty={
          <p className="mt-4 max-w-3xl">
            Nothing counts yet. What {person.name} finds, overlooks, names and measures comes here with the first piece
            handed in for practice, and with a sitting once you release its marks.
          </p>
        }
      />
    </PageFrame>
  );
}
