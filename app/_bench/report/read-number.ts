/** The number that a text means, with a point or a comma; null for nothing, undefined for what is no number. */
export function readNumber(text: string): number | null | undefined {
  const trimmed = text
    .trim()
    .replace(",", ".")
    .replace(/^\u2212/, "-");
  if (trimmed === "") return null;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(trimmed) ? Number(trimmed) : undefined;
}

/** What is wrong with it, and what would be right; null where nothing is. */
export function faultOf(read: number | null | undefined, min: number, max: number, unit: string): string | null {
  if (read === undefined) return "Write a number, for example 12.5.";
  return read !== null && (read < min || read > max) ? `From ${min} to ${max} ${unit}.` : null;
}
