import type { Metadata } from "next";
import Link from "next/link";
import { ConfusedFigure, MissedFigure } from "@/app/_progress/class/figures";
import { CLASS_RANGE_NOTE } from "@/app/_progress/class/range-words";
import { ReadyFigure } from "@/app/_progress/class/ready-figure";
import { teachWords } from "@/app/_progress/class/teach-words";
import { FalseCallRateFigure } from "@/app/_progress/false-calls-figure";
import { AgreementFigure, measured } from "@/app/_progress/measuring-figure";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { Caution } from "@/app/_ui/caution";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { classStanding, readinessOf, worthSetting } from "@/lib/progress";
import { setAsPaper } from "./actions";
import { SetAsPaper } from "./set-as-paper";
import { SetDrills } from "./set-drills";
import "@/app/_progress/progress.css";

export const metadata: Metadata = { title: "What a class misses" };

export default async function ClassProgressPage({ params }: PageProps<"/desk/classes/[id]/progress">) {
  const { id } = await params;
  const read = await readClassProgress(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { group, learners, passMarks, beingBuilt } = read;
  const people = learners.map(({ person }) => person);
  const standing = classStanding(learners.map(({ overview }) => overview));
  const sections = readinessOf(
    learners.map(({ marks }) => marks),
    passMarks,
  );
  const toSet = worthSetting(standing.missed);
  const isEmpty = standing.pieces === 0 && sections.length === 0;
  return (
    <PageFrame title={`What ${group.name} still misses`} isWide>
      <Link
        href={`/desk/classes/${id}`}
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4"
      >
        Back to the class
      </Link>
      {beingBuilt > 0 && (
        <Notice isGood>
          The figures of {beingBuilt === 1 ? "one learner" : `${beingBuilt} learners`} are being worked out anew and are
          not in it yet. Open the page again in a minute.
        </Notice>
      )}
      {isEmpty ? (
        <>
          <p className="mt-4 max-w-3xl">
            What to teach this class comes here: which imperfections it misses, what it takes for what, how it measures,
            and who is ready for a sitting. It begins with the first piece that somebody hands in for practice, and a
            sitting counts once you release its marks. Let your learners take a fresh piece on Today, or{" "}
            <Link href="/desk/sittings/new" className="rounded text-action underline underline-offset-4">
              plan a sitting
            </Link>
            .
          </p>
          <SetDrills classId={id} standing={standing} />
        </>
      ) : (
        <>
          <section aria-labelledby="teach" className="mt-3 max-w-4xl rounded-md border-2 border-ink-2 bg-sheet p-5">
            <h2 id="teach" className="font-semibold text-lg">
              What to teach next
            </h2>
            <ul className="mt-1 text-lg">
              {teachWords(standing).map((sentence) => (
                <li key={sentence} className="mt-1">
                  {sentence}
                </li>
              ))}
            </ul>
            <p className="mt-2 text-ink-2 text-sm">
              From {standing.pieces === 1 ? "one section" : `${standing.pieces} sections`} of practice and of released
              sittings, with {standing.indications} imperfections on them. {CLASS_RANGE_NOTE}
            </p>
            {toSet.length > 0 && <SetAsPaper classId={id} toSet={toSet} set={setAsPaper} />}
          </section>
          <div className="mt-4 flex flex-wrap gap-3">
            <Link href={`/desk/classes/${id}/progress/paper`} className={BUTTON}>
              Print
            </Link>
            <Link href={`/desk/classes/${id}/progress/questions`} className={BUTTON}>
              How the questions work
            </Link>
          </div>
          <SetDrills classId={id} standing={standing} />
          {standing.missed.length > 0 && (
            <MissedFigure classId={id} learners={people} missed={standing.missed} setAsPaper={setAsPaper} />
          )}
          <ConfusedFigure confusions={standing.confusions} />
          <AgreementFigure rows={measured(standing.sizes, standing.dimensions)} />
          <FalseCallRateFigure calls={standing.falseCalls} telling={null} />
          {sections.length > 0 && <ReadyFigure learners={people} sections={sections} />}
        </>
      )}
      <Caution />
    </PageFrame>
  );
}

const BUTTON =
  "inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2";
