import type { ReactNode } from "react";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { CAUTION } from "@/lib/criteria";

/** Over a set that is not stored yet. */
export const NEW_CRITERIA = {
  title: "New criteria of your own",
  lead: "Say what the set builds on, write how your workshop differs, and try each row before you store it.",
} as const;

/** Over one that is stored. */
export const CHANGE_LEAD =
  "What you change holds for practices begun from then on; those begun before keep the criteria they began with.";

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
