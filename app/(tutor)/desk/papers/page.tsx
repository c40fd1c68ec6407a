import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { listPapers } from "@/app/_server/use-cases/list-papers";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { putAway, takeBack } from "./actions";
import { PapersTable } from "./papers-table";

export const metadata: Metadata = { title: "Papers" };

export default async function PapersPage() {
  const list = await listPapers(await currentCaller());
  if (!list.ok) return showRefusal(list);
  const inUse = list.papers.filter(({ archivedAt }) => archivedAt === null);
  const away = list.papers.filter(({ archivedAt }) => archivedAt !== null);
  return (
    <PageFrame
      title="Papers"
      lead="What a sitting is made of: sections with their time, pass mark and piece. A version that a sitting uses is never changed; what you save after that is the next version."
    >
      <div className="mt-5 flex flex-wrap items-center gap-x-6 gap-y-2">
        <Link
          href="/desk/papers/new"
          className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
        >
          New paper
        </Link>
        <Link href="/desk" className="inline-flex min-h-11 items-center text-action underline underline-offset-4">
          Back to the desk
        </Link>
      </div>
      <Sheet title="At hand" className="mt-4">
        {inUse.length === 0 ? (
          <p className="mt-2 text-ink-2">
            There is no paper here yet. Begin a new one: it starts as a butt plate of 120 minutes and a fillet weld of
            30, and you change what your workshop does otherwise.
          </p>
        ) : (
          <PapersTable papers={inUse} action={putAway} actionLabel="Put away" />
        )}
      </Sheet>
      {away.length > 0 && (
        <Sheet title="Put away" className="mt-4">
          <p className="mt-2 text-ink-2 text-sm">No new sitting can be made of these until you take them back.</p>
          <PapersTable papers={away} action={takeBack} actionLabel="Take back" />
        </Sheet>
      )}
      <Caution />
    </PageFrame>
  );
}
