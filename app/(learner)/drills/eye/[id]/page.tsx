import type { Metadata } from "next";
import Link from "next/link";
import { EyeDesk } from "@/app/_eye/eye-desk";
import { EYE_WORDS } from "@/app/_eye/eye-words";
import { specimens } from "@/app/_server/generation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readOwnEyeRound } from "@/app/_server/use-cases/read-eye-round";
import { Caution } from "@/app/_ui/caution";
import { beginRound } from "../../actions";

export const metadata: Metadata = { title: "Drill for the eye" };

export default async function EyeRoundPage({ params }: PageProps<"/drills/eye/[id]">) {
  const { id } = await params;
  const read = await readOwnEyeRound(await currentCaller(), id, specimens);
  if (!read.ok) return showRefusal(read);
  const { title } = EYE_WORDS[read.round.drill];
  return (
    <main id="main" tabIndex={-1} className="eye-page mx-auto max-w-[100rem] px-6 py-4 outline-none">
      <div className="flex flex-wrap items-center justify-between gap-x-6">
        <h1 className="font-semibold text-xl tracking-tight">{title}</h1>
        <Link href="/drills" className="rounded py-2 text-action underline underline-offset-4">
          All drills
        </Link>
      </div>
      <EyeDesk key={read.round.id} first={read.round} begin={beginRound} />
      <Caution />
    </main>
  );
}
