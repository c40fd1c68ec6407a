import type { WrittenSentence } from "@/lib/report";

/** A written sentence told apart by its sign as well as by its colour. */
export const SENTENCE_SIGNS: Readonly<Record<WrittenSentence, { readonly sign: string; readonly tone: string }>> = {
  accept: { sign: "✓", tone: "text-found" },
  reject: { sign: "✗", tone: "text-missed" },
  refer: { sign: "?", tone: "text-partly" },
};
