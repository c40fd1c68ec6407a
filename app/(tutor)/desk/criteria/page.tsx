import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readCriteriaSets } from "@/app/_server/use-cases/read-criteria-sets";
import { Sheet } from "@/app/_ui/sheet";
import { putAway, takeBack } from "./actions";
import { CriteriaPage } from "./criteria-page";
import { SetsTable } from "./sets-table";

export const metadata: Metadata = { title: "Criteria of your own" };

export default async function CriteriaSetsPage() {
  const read = await readCriteriaSets(await currentCaller());
  if (!read.ok) return showRefusal(read);
  const inUse = read.sets.filter(({ archivedAt }) => archivedAt === null);
  const away = read.sets.filter(({ archivedAt }) => archivedAt !== null);
  return (
    <CriteriaPage
      title="Criteria of your own"
      lead="In-house limits beside the built-in standards. Every tutor of the workshop may change them; a practice keeps the criteria it began with, whatever you change here."
    >
      <div className="mt-5 flex flex-wrap items-center gap-x-6 gap-y-2">
        <Link
          href="/desk/criteria/new"
          className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
        >
          New set
        </Link>
        <Link href="/desk" className="inline-flex min-h-11 items-center text-action underline underline-offset-4">
          Back to the desk
        </Link>
      </div>
      <Sheet title="In use" className="mt-4">
        {inUse.length === 0 ? (
          <p className="mt-2 text-ink-2">
            No set is in use. Begin a new one: build on a standard, say what is different in your workshop, and try it
            before you store it.
          </p>
        ) : (
          <SetsTable sets={inUse} action={putAway} actionLabel="Put away" />
        )}
      </Sheet>
      {away.length > 0 && (
        <Sheet title="Put away" className="mt-4">
          <p className="mt-2 text-ink-2 text-sm">Nobody can choose these until you take them back.</p>
          <SetsTable sets={away} action={takeBack} actionLabel="Take back" />
        </Sheet>
      )}
    </CriteriaPage>
  );
}
