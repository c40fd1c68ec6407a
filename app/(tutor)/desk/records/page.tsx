import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { type Figures, readRecordsDesk } from "@/app/_server/use-cases/read-records-desk";
import { readXapiDelivery } from "@/app/_server/use-cases/xapi-delivery";
import { Caution } from "@/app/_ui/caution";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { count } from "../sittings/sitting-words";
import { tryAgain } from "./actions";
import { DeliverySheet } from "./delivery-sheet";

export const metadata: Metadata = { title: "Records" };

export default async function RecordsPage({ searchParams }: PageProps<"/desk/records">) {
  const caller = await currentCaller();
  const [{ erased }, desk, sending] = await Promise.all([
    searchParams,
    readRecordsDesk(caller),
    readXapiDelivery(caller),
  ]);
  if (!desk.ok) return showRefusal(desk);
  if (!sending.ok) return showRefusal(sending);
  const { requests, erasures, erasedCount, learnerCount, whole, ofErased, questionCount, isFileDirty } = desk;
  return (
    <PageFrame title="Records" lead="Sums over the whole workshop, what is sent elsewhere, and what is erased.">
      <Link href="/desk" className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4">
        Back to the desk
      </Link>
      {erased === "yes" && (
        <div className="mt-3">
          <Notice isGood>
            The learner is erased.{" "}
            {isFileDirty && "The file of the database is written anew as soon as nobody is at work."}
          </Notice>
        </div>
      )}
      <div className="mt-3 grid items-start gap-5 lg:grid-cols-2">
        <div className="space-y-5">
          <Sheet title="Asked to be erased">
            {requests.length === 0 && (
              <p className="mt-2 text-ink-2">Nobody. Learners ask for it on the page of their account.</p>
            )}
            <ul className="mt-1">
              {requests.map(({ learner, askedAt }) => (
                <li key={learner.id} className="border-line border-t py-1.5 first:border-0 wrap-anywhere">
                  <Link
                    href={`/desk/${learner.id}/erase`}
                    className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
                  >
                    {learner.name}
                  </Link>
                  <span className="block text-ink-2 text-sm">
                    signs in as {learner.signInName}; asked on <LocalTime at={askedAt} />
                  </span>
                </li>
              ))}
            </ul>
          </Sheet>
          <Sheet title="The whole workshop">
            <p className="mt-2">
              {count(learnerCount, "learner")}
              {erasedCount > 0 && `, and ${erasedCount} erased`}. {figureWords(whole)}
            </p>
            {erasedCount > 0 && (
              <p className="mt-2 text-ink-2">
                Of that, by erased learners: {figureWords(ofErased)} Their answers to {count(questionCount, "question")}{" "}
                count with the same questions in a class. Nothing says who they were, or when it was.
              </p>
            )}
          </Sheet>
          <Sheet title="Erased">
            {erasures.length === 0 && <p className="mt-2 text-ink-2">Nobody so far.</p>}
            <ul className="mt-1">
              {erasures.map(({ at, by }) => (
                <li key={at.getTime()} className="border-line border-t py-2 first:border-0 wrap-anywhere">
                  Somebody, on <LocalTime at={at} />, by {by}
                </li>
              ))}
            </ul>
            {isFileDirty && (
              <p className="mt-2 text-ink-2 text-sm">
                The file of the database still has to be written anew, so that not even its free pages hold anything.
                That happens once no sitting is on and nobody has saved for two minutes.
              </p>
            )}
          </Sheet>
        </div>
        <DeliverySheet delivery={sending.delivery} tryAgain={tryAgain} />
      </div>
      <Caution />
    </PageFrame>
  );
}

function figureWords({ sections, passed, imperfections, found }: Figures): string {
  if (sections === 0) return "No section counts yet.";
  return `${count(sections, "section")} that count, ${passed} passed; ${count(imperfections, "imperfection")}, ${found} found.`;
}
