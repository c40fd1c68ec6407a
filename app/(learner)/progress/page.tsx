import type { Metadata } from "next";
import Link from "next/link";
import { EyeLine } from "@/app/_eye/eye-record";
import { ProgressAccount } from "@/app/_progress/progress-account";
import { standingWords } from "@/app/_progress/words";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readEyeDrills } from "@/app/_server/use-cases/read-eye-drills";
import { readOwnProgress } from "@/app/_server/use-cases/read-own-progress";
import { PageFrame } from "@/app/_ui/page-frame";

export const metadata: Metadata = { title: "Progress" };

export default async function ProgressPage() {
  const read = await readOwnProgress(await currentCaller());
  if (!read.ok) return showRefusal(read);
  const { person, progress } = read;
  const eye = await readEyeDrills(await currentCaller());
  const hasMarks = progress.history.length > 0;
  return (
    <PageFrame
      title="Your progress"
      lead={
        hasMarks
          ? standingWords(progress.history, "learner")
          : "What you find, overlook, name and measure, piece after piece."
      }
    >
      <p className="mt-2 hidden print:block">Learner: {person.name}</p>
      {eye.ok && <EyeLine rounds={eye.rounds} />}
      <ProgressAccount
        progress={progress}
        whenEmpty={
          <>
            <p className="mt-6 max-w-3xl">
              Once you hand a piece in, you see here your marks against what they needed, which imperfections you find
              and which you overlook, what you take for what, how far off you measure, and what you call where nothing
              is. Each figure says how sure it is, and how many more it takes where that is not enough.
            </p>
            <p className="mt-4">
              <Link href="/" className="font-medium text-action underline underline-offset-4">
                Take a piece from Today to begin
              </Link>
            </p>
          </>
        }
      />
    </PageFrame>
  );
}
