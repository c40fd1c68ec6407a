import type { ListedSitting } from "@/app/_server/sitting-views";

/** One sentence on the sittings of a tutor. */
export function describeSittings(sittings: readonly ListedSitting[]): string {
  if (sittings.length === 0) return "No sitting yet. Set a paper for a class at a time, and watch it on its board.";
  const among = (...states: readonly ListedSitting["state"][]) =>
    sittings.filter(({ state }) => states.includes(state)).length;
  const parts = [
    [among("open", "running", "paused"), "on now"],
    [among("planned"), "planned"],
    [among("closed"), "with marks to release"],
    [among("released"), "released"],
    [among("void"), "void"],
  ] as const;
  return `${parts
    .filter(([number]) => number > 0)
    .map(([number, what]) => `${number} ${what}`)
    .join(", ")}.`;
}
