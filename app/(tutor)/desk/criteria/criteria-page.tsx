import type { ReactNode } from "react";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { CAUTION } from "@/lib/criteria";

interface CriteriaPageProps {
  readonly title: string;
  readonly lead: string;
  readonly children: ReactNode;
}

/** A page of the desk with criteria on it. */
export function CriteriaPage({ title, lead, children }: CriteriaPageProps) {
  return (
    <PageFrame title={title} lead={lead}>
      <p className="mt-3 max-w-3xl border-lamp border-l-4 bg-paper-2 py-2 pr-3 pl-4 text-ink-2 text-sm">{CAUTION}</p>
      {children}
      <Caution />
    </PageFrame>
  );
}
