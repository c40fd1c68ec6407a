import type { FeatureRow } from "../recipe/rows";

/** A row, or one of its variants, in words: what a list of showcases shows and a refusal names. */
export const rowName = ({ face, type }: FeatureRow, variant: string | null = null): string =>
  [face, type, variant].filter(Boolean).join(" ");
