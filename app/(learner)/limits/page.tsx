import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readInHouseCriteria } from "@/app/_server/use-cases/read-in-house-criteria";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { CAUTION } from "@/lib/criteria";
import { LimitsDesk } from "./limits-desk";

export const metadata: Metadata = { title: "Limits side by side" };

export default async function LimitsPage({ searchParams }: PageProps<"/limits">) {
  const read = await readInHouseCriteria(await currentCaller());
  if (!read.ok) return showRefusal(read);
  return (
    <PageFrame
      title="Limits side by side"
      lead="One imperfection, held against several standards at once. Try it: move t from 8 to 14 mm and see which limits grow and which stay."
    >
      <p className="mt-3 max-w-3xl border-lamp border-l-4 bg-paper-2 py-2 pr-3 pl-4 text-ink-2 text-sm">{CAUTION}</p>
      <LimitsDesk query={await searchParams} inHouse={read.criteria} />
      <Caution />
    </PageFrame>
  );
}
