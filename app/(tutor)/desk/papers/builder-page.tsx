import type { ReactNode } from "react";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { CAUTION } from "@/lib/criteria";

interface BuilderPageProps {
  readonly title: string;
  readonly lead: string;
  readonly children: ReactNode;
}

/** A page of the desk with a paper on it. */
export function BuilderPage({ title, lead, children }: BuilderPageProps) {
  return (
    <PageFrame title={title} lead={lead} isWide>
      {children}
      <p className="mt-6 max-w-3xl text-ink-2 text-sm">Criteria: {CAUTION}</p>
      <Caution />
    </PageFrame>
  );
}
