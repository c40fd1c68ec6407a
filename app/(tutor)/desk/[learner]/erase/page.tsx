import type { Metadata } from "next";
import Link from "next/link";
import { SaveRecord } from "@/app/_paper/save-record";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { previewErasure } from "@/app/_server/use-cases/erase-learner";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { count } from "../../sittings/sitting-words";
import { erase } from "./actions";
import { EraseForm } from "./erase-form";

export const metadata: Metadata = { title: "Erase a learner" };

export default async function ErasePage({ params }: PageProps<"/desk/[learner]/erase">) {
  const { learner: id } = await params;
  const preview = await previewErasure(await currentCaller(), id);
  if (!preview.ok) return showRefusal(preview);
  const { learner, askedAt, goes, hindrance, stays, recordStoreName } = preview;
  const pieces = goes.handedIn + goes.open;
  const sums = [
    stays.imperfections > 0 && `what became of ${count(stays.imperfections, "imperfection")}`,
    stays.answers > 0 && `${count(stays.answers, "answer")} to questions`,
  ].filter((sum) => sum !== false);
  return (
    <PageFrame
      title={`Erase ${learner.name}`}
      lead={
        askedAt ? (
          <>
            {learner.name} asked for it on <LocalTime at={askedAt} />. It cannot be brought back.
          </>
        ) : (
          "Nobody has asked for it. It cannot be brought back."
        )
      }
    >
      <Link href={`/desk/${id}`} className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4">
        Back to {learner.name}
      </Link>
      <div className="mt-3 grid items-start gap-5 lg:grid-cols-2">
        <Sheet title="What goes">
          <ul className="mt-2 list-disc space-y-1 pl-5">
            <li>
              The account with its password
              {goes.devices > 0 && `; it is signed in on ${count(goes.devices, "device")} and is signed out there`}
            </li>
            {goes.classes > 0 && (
              <li>
                Being a member of {count(goes.classes, "class", "classes")}
                {goes.otherClasses > 0 && (
                  <>
                    , <strong className="font-medium">{goes.otherClasses} of other tutors</strong>, who lose what was
                    sat there as well: ask them first
                  </>
                )}
              </li>
            )}
            {pieces > 0 && (
              <li>
                {capital(count(pieces, "practice piece"))}
                {goes.open > 0 && ` (${goes.open} not handed in)`}, with reports, marks and where they looked
              </li>
            )}
            {goes.sections > 0 && (
              <li>
                {capital(count(goes.sections, "section"))} of sittings
                {goes.unreleased > 0 && `, ${goes.unreleased} of them with marks that are not released yet`}
              </li>
            )}
            {goes.acts > 0 && <li>{capital(count(goes.acts, "change"))} that tutors made to their marks</li>}
            {goes.drillRounds > 0 && <li>{capital(count(goes.drillRounds, "drill round"))}</li>}
            {stays.sections > 0 && <li>All figures of progress</li>}
            {goes.statements > 0 && (
              <li>{capital(count(goes.statements, "statement"))} that the record store has not taken</li>
            )}
            <li>Their name and sign-in name where a reason, or the name or note of a class has them</li>
          </ul>
        </Sheet>
        <Sheet title="What stays, without who or when">
          <ul className="mt-2 list-disc space-y-1 pl-5">
            {stays.sections > 0 && (
              <li>
                Sums over {count(stays.sections, "section")} that {stays.sections === 1 ? "counts" : "count"}
                {sums.length > 0 && `: ${sums.join(", ")}`}, added to those of everybody who was erased
              </li>
            )}
            {goes.sections > 0 && (
              <li>In their sittings an “Erased learner”: which sections, and how each ended, with no mark</li>
            )}
            <li>What was done to them in the log of a sitting, as done to an erased learner, without the reason</li>
            <li>That you erased somebody today</li>
          </ul>
        </Sheet>
        <Sheet title="What you have to see to yourself">
          <ul className="mt-2 list-disc space-y-1 pl-5">
            <li>A first name alone or a nickname in a reason or a note: it is not found</li>
            <li>Their name in a paper or in criteria: nothing is changed there</li>
            <li>The record itself, if it has to be kept elsewhere: save it first</li>
            <li>Backups of the data folder, prints and saved files: they still hold the record</li>
            {recordStoreName && (
              <li>
                What the record store has already, and what is on its way to it just now: it knows them as{" "}
                <span className="font-mono text-sm wrap-anywhere">{recordStoreName}</span>
              </li>
            )}
          </ul>
          <div className="mt-4">
            <SaveRecord personId={learner.id} />
          </div>
        </Sheet>
        <Sheet title="Erase for good">
          {hindrance ? (
            <div className="mt-3">
              <Notice>{HINDRANCES[hindrance]}</Notice>
            </div>
          ) : (
            <EraseForm learner={{ id: learner.id, name: learner.name, signInName: learner.signInName }} erase={erase} />
          )}
        </Sheet>
      </div>
    </PageFrame>
  );
}

const HINDRANCES = {
  "being-sat":
    "A section of a sitting is open for this learner. Close it on the board first, or wait until it is handed in.",
  "sitting-on":
    "A sitting is running in the workshop, and erasing would hold it up. Come back to this page once it is closed.",
  "marks-unreleased":
    "Marks of this learner are not released. Release them first, or ask the tutor of that class to; then come back to this page.",
} as const;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
