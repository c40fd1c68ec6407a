import type { KeptSetDrill } from "@/lib/eye";
import { EYE_WORDS, inSentence } from "./eye-words";

/** What a set drill is about: "Mixed round, mostly on surface pore and overlap". */
export function setDrillWords({ drill, types }: Pick<KeptSetDrill, "drill" | "types">): string {
  const { title } = EYE_WORDS[drill];
  return types.length === 0 ? title : `${title}, mostly on ${listed(types.map(inSentence))}`;
}

/** listed(["a", "b", "c"]) = "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
