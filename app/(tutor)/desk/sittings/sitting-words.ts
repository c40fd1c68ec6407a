import type { RunState, SittingState } from "@/lib/sittings";

/** States of a sitting as they are shown. */
export const STATE_WORDS: Readonly<Record<SittingState, string>> = {
  planned: "planned",
  open: "open, not begun",
  running: "running",
  paused: "paused",
  closed: "closed, marks not released",
  released: "released",
  void: "void",
};

/** "one learner", "12 learners". */
export function count(number: number, one: string, many = `${one}s`): string {
  return number === 1 ? `one ${one}` : `${number || "no"} ${many}`;
}

/** "a, b and c". */
export function list(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Whether somebody is at the section. */
export const isBeingSat = (state: RunState): boolean => state === "running" || state === "paused";
export const isOver = (state: SittingState): boolean => state === "closed" || state === "released";
