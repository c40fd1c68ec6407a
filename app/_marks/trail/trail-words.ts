import { TORCH_SIDES } from "@/lib/bench";
import { LOOKS, type LookKind, lookKind, sidesOf, type TimeInSight } from "@/lib/trail";

export const seconds = (time: number): string => {
  if (time < 60) return `${Math.round(time)} s`;
  const rest = Math.round(time % 60);
  return rest === 60 ? `${Math.floor(time / 60) + 1} min` : `${Math.floor(time / 60)} min${rest ? ` ${rest} s` : ""}`;
};

/** "left and top", or "left, top and right". */
function inARow(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** The sides of the screen that low light came from; empty where it came from none for long enough. */
export const sideWords = (time: TimeInSight): string => inARow(sidesOf(time).map((eighth) => TORCH_SIDES[eighth]));

/** One sentence beside a miss: what was done there before it was passed over. */
export function lookWords(time: TimeInSight): string {
  const { afar, close, low } = time;
  switch (lookKind(time)) {
    case "never":
      return "You never looked here.";
    case "afar":
      return `You saw this place only from afar: ${seconds(afar + close)} in sight, too small on the screen to see much.`;
    case "no-low-torch":
      return `You looked here for ${seconds(close)}, but never with the torch low.`;
    case "passed-over": {
      const sides = sideWords(time);
      return `You looked here and passed over it: ${seconds(close)} close up, ${seconds(low)} of that with the torch low${sides && ` (from the ${sides})`}.`;
    }
  }
}

const COUNTED: Readonly<Record<LookKind, string>> = {
  never: "never looked at",
  afar: "seen only from afar",
  "no-low-torch": "looked at, but never with the torch low",
  "passed-over": "looked at and passed over",
};

/** How the misses of a piece came about: "Of 5 misses: 1 never looked at, 4 looked at and passed over." */
export function missesWords(times: readonly TimeInSight[]): string {
  const kinds = times.map(lookKind);
  const [only] = kinds;
  if (kinds.length === 1) return `The one miss was ${COUNTED[only]}.`;
  const counts = LOOKS.map((kind) => ({ kind, count: kinds.filter((one) => one === kind).length }));
  const told = counts.filter(({ count }) => count > 0).map(({ kind, count }) => `${count} ${COUNTED[kind]}`);
  return `Of ${kinds.length} misses: ${told.join("; ")}.`;
}
