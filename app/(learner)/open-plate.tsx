import Link from "next/link";
import type { Practice } from "@/lib/practice";
import { MainCard } from "./main-card";
import { HowFar } from "./unfinished-plates";

/** The plate that was worked on last, to go on with. */
export function OpenPlate({ practice }: { readonly practice: Practice }) {
  return (
    <MainCard title="Your plate lies on the bench">
      <p className="mt-1 text-bench-dim">
        <HowFar practice={practice} />
      </p>
      <p className="mt-1 text-bench-dim">Have you looked at both faces? There is no clock.</p>
      <Link
        href={`/practice/${practice.id}`}
        className="mt-5 inline-block rounded border border-transparent bg-lamp px-8 py-4 text-lg font-medium text-ink hover:brightness-95"
      >
        Go on with your plate
      </Link>
    </MainCard>
  );
}
