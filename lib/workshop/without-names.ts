/** What stands in place of a name that was erased. */
export const ERASED_NAME = "an erased learner";

/**
 * Takes names out of a text that somebody wrote, whole words in any case. A first name by itself, or a nickname, is not found.
 *
 * @example withoutNames("Kim Rowe left early", ["Kim Rowe", "kim.rowe"]) // "an erased learner left early"
 */
export function withoutNames(text: string, names: readonly string[]): string {
  const longestFirst = names.filter((name) => name !== "").toSorted((a, b) => b.length - a.length);
  return longestFirst.reduce((rest, name) => {
    const escaped = name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
    return rest.replace(new RegExp(`(?<![\\p{L}\\p{N}])${escaped}(?![\\p{L}\\p{N}])`, "giu"), ERASED_NAME);
  }, text);
}
