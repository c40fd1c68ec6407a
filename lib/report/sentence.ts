/**
 * What an inspector decides by the acceptance criteria, the worst first. To refer is to leave the decision to somebody else: the
 * criteria give no limit, or need something that the eye and these gauges cannot give.
 */
export const SENTENCES = ["reject", "refer", "accept"] as const;
export type WrittenSentence = (typeof SENTENCES)[number];

/** In the order in which they are offered. */
export const OFFERED_SENTENCES = ["accept", "reject", "refer"] as const satisfies readonly WrittenSentence[];

export const SENTENCE_NAMES: Readonly<Record<WrittenSentence, string>> = {
  accept: "Accept",
  reject: "Reject",
  refer: "Refer",
};

/** The worst of some sentences, blank ones left out; null where none is written. */
export const worstSentence = (written: readonly (WrittenSentence | null)[]): WrittenSentence | null =>
  SENTENCES.find((sentence) => written.includes(sentence)) ?? null;
