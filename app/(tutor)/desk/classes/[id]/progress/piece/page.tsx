import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { findPieceToShow } from "@/app/_server/use-cases/find-piece-to-show";
import { PageFrame } from "@/app/_ui/page-frame";
import { imperfection, isImperfectionType } from "@/lib/imperfections";

export const metadata: Metadata = { title: "A piece that shows it" };

/** Leads to the mark sheet of a piece that shows what is to be taught. */
export default async function PiecePage({ params, searchParams }: PageProps<"/desk/classes/[id]/progress/piece">) {
  const [{ id }, { type }] = await Promise.all([params, searchParams]);
  if (typeof type !== "string" || !isImperfectionType(type)) return notFound();
  const found = await findPieceToShow(await currentCaller(), id, type);
  if (!found.ok) return showRefusal(found);
  if (found.practiceId) return redirect(`/practice/${found.practiceId}/marks`);
  return (
    <PageFrame title={`No piece shows it: ${imperfection(type).name.toLowerCase()}`} isNarrow>
      <p className="mt-3">
        None of the latest pieces of the class has one. It is there again as soon as one is handed in.
      </p>
      <Link
        href={`/desk/classes/${id}/progress`}
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4"
      >
        Back to what the class misses
      </Link>
    </PageFrame>
  );
}
