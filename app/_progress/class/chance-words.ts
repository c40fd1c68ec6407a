import type { ChanceToPass } from "@/lib/progress";
import { percent } from "../words";

/** "about 61 % (35 to 83 %), by 5 marks", or what is missing to say it. */
export function chanceWords(chance: ChanceToPass | null): string {
  if (chance === null) return "no marks yet";
  const { marks, needed, interval } = chance;
  const by = marks === 1 ? "one mark" : `${marks} marks`;
  if (needed > 0) return `not enough yet: ${by}, ${needed} more`;
  return `about ${percent(chance.chance)} (${percent(interval.low).replace(" %", "")} to ${percent(interval.high)}), by ${by}`;
}
