import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { sentenceFor } from "@/app/_server/messages";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClosedBook } from "@/app/_server/use-cases/read-closed-book";
import { PageFrame } from "@/app/_ui/page-frame";

export const metadata: Metadata = { title: "Closed book" };

/** Where pages with criteria lead while a section with a closed book is open. */
export default async function BookClosedPage() {
  const read = await readClosedBook(await currentCaller());
  if (!read.ok) return showRefusal(read);
  if (read.sittingId === null) return redirect("/");
  return (
    <PageFrame title="The book is closed" lead={sentenceFor("book-closed")}>
      <p className="mt-6">
        <Link
          href={`/sitting/${read.sittingId}`}
          className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
        >
          To your sitting
        </Link>
      </p>
    </PageFrame>
  );
}
