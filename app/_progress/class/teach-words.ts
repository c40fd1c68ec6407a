import { CLUTTER_WORDS, type Clutter, imperfection, type SizeKind } from "@/lib/imperfections";
import { type ClassStanding, ENOUGH, isOfMost, type ToTeach } from "@/lib/progress";
import { DIMENSION_FACTS } from "@/lib/weld";

const SIZE_WORDS: Readonly<Record<SizeKind, string>> = {
  depth: "Depths",
  height: "Heights",
  diameter: "Diameters of pores",
  difference: "Differences in level",
  gap: "Gaps",
};

/** What to teach this afternoon: at most three sentences, or one that says what is not known yet. */
export function teachWords({ toTeach, indications }: Pick<ClassStanding, "toTeach" | "indications">): string[] {
  const told = [
    missedWords(toTeach.missed),
    confusedWords(toTeach.confused),
    misreadWords(toTeach.misread),
    calledWords(toTeach.called),
  ].filter((sentence) => sentence !== null);
  if (told.length > 0) return told.slice(0, 3);
  return indications < ENOUGH
    ? [
        `Not enough yet to say what to teach: there were ${indications} imperfections to find so far, and it takes ${ENOUGH} of a type.`,
      ]
    : [`Nothing stands out yet. A type counts from ${ENOUGH} of it on that the class had before it.`];
}

function missedWords(missed: ToTeach["missed"]): string | null {
  if (missed === null) return null;
  const { type, found, judged, belowHalf } = missed;
  const name = imperfection(type).name.toLowerCase();
  const together = `together they find ${found.count} of ${found.of}`;
  return isOfMost(missed)
    ? `Most of the class misses ${name}: ${belowHalf} of ${judged} find fewer than half, ${together}.`
    : `What the class misses most is ${name}: ${together}.`;
}

function confusedWords(confused: ToTeach["confused"]): string | null {
  if (confused === null) return null;
  const [one, other] = confused.pair.map((type) => imperfection(type).name);
  return `${one} and ${other.toLowerCase()} are taken for each other: ${confused.there + confused.back} times, ${Math.round(100 * confused.share)} % of the finds of either.`;
}

function misreadWords(misread: ToTeach["misread"]): string | null {
  if (misread === null) return null;
  const { bias, n } = misread.agreement;
  const [what, unit, are] =
    "size" in misread
      ? [SIZE_WORDS[misread.size], "mm", "are"]
      : [DIMENSION_FACTS[misread.dimension].name, DIMENSION_FACTS[misread.dimension].unit, "is"];
  const way = bias > 0 ? "too large" : "too small";
  return `${what} ${are} read ${Math.abs(bias).toFixed(1)} ${unit} ${way} on average, over ${n} readings.`;
}

function calledWords(called: ToTeach["called"]): string | null {
  if (called === null) return null;
  const { kind, called: share } = called;
  return `${clutterName(kind)} is called an imperfection ${share.count} times of ${share.of}.`;
}

/** "a chalk mark" to "A chalk mark". */
const clutterName = (kind: Clutter): string => {
  const { name } = CLUTTER_WORDS[kind];
  return name.charAt(0).toUpperCase() + name.slice(1);
};
