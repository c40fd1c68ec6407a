import Link from "next/link";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import type { ListedPractice } from "@/lib/practice";
import type { Section } from "@/lib/results";
import { MainCard } from "./main-card";
import { HowFar } from "./unfinished-pieces";

const LOOKED_AT: Readonly<Record<Section, string>> = {
  plate: "Have you looked at both faces?",
  fillet: "Have you measured all three stations?",
};

/** The piece that was worked on last, to go on with. */
export function OpenPiece({ practice }: { readonly practice: ListedPractice }) {
  return (
    <MainCard title={`Your ${SECTION_WORDS[practice.section]} lies on the bench`}>
      <p className="mt-1 text-bench-dim">
        <HowFar practice={practice} />
      </p>
      <p className="mt-1 text-bench-dim">
        {practice.reportClosedAt ? "Answer its questions, then hand in." : LOOKED_AT[practice.section]} There is no
        clock.
      </p>
      <Link
        href={`/practice/${practice.id}`}
        className="mt-5 inline-block rounded border border-transparent bg-lamp px-8 py-4 text-lg font-medium text-ink hover:brightness-95"
      >
        Go on with it
      </Link>
    </MainCard>
  );
}
