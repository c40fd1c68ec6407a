import { CLUTTER_WORDS, imperfection } from "@/lib/imperfections";
import { type Call, SENTENCE_NAMES } from "@/lib/report";
import { type AccountLine, inTenths, marksInHundredths, type Part } from "@/lib/results";
import { JOINT_KINDS, PIECES } from "@/lib/weld";
import type { TruthView } from "./sheet-view";

/** What one line of the account says in words. */
export interface LineWords {
  readonly title: string;
  /** One or two sentences: what happened, and what it would have needed. */
  readonly story: string;
}

export const mm = (value: number): string => `${Number.isInteger(value) ? value : inTenths(value)} mm`;
export const marks = marksInHundredths;

/** "112 to 137 mm", or "at 57 mm" for a point. */
export function extentWords(start: number | null, end: number | null): string {
  if (start === null) return "no place written";
  if (end === null || Math.abs(end - start) < 0.05) return `at ${mm(start)}`;
  return `${start.toFixed(0)} to ${mm(Math.round(end))}`;
}

function typeWords(type: Call["type"]): string {
  if (!type) return "no type written";
  const row = imperfection(type);
  return `${row.name} (${row.number})`;
}

/** Name, number and extent of what is there. */
export const truthTitle = (truths: readonly TruthView[]) =>
  `${typeWords(truths[0].type)}, ${extentWords(truths[0].start, truths[truths.length - 1].end)}`;
const callTitle = (calls: readonly Call[]) =>
  calls.map((call) => `${typeWords(call.type)}, ${extentWords(call.start, call.end)}`).join(" and ");

/** Title and story of a line, from the truths and calls it speaks of. */
export function lineWords(line: AccountLine, truths: readonly TruthView[], calls: readonly Call[]): LineWords {
  switch (line.kind) {
    case "found":
      return { title: truthTitle(truths), story: "You found it, and everything you wrote is within tolerance." };
    case "partly":
      return { title: truthTitle(truths), story: partlyStory(line) };
    case "missed":
      return {
        title: truthTitle(truths),
        story: `You did not call this one. ${imperfection(truths[0].type).looks}`,
      };
    case "split":
      return {
        title: truthTitle(truths),
        story: `You reported one indication in ${calls.length} pieces. They were marked together, less ${percent(1 - line.kept)} for the pieces. ${partlyStory(line)}`,
      };
    case "merged":
      return {
        title: truthTitle(truths),
        story: `One call of yours covers ${truths.length} indications. They were marked together, less ${percent(1 - line.kept)}. ${partlyStory(line)}`,
      };
    case "neutral-called":
      return {
        title: callTitle(calls),
        story: `You called something that is there but is not recorded: ${typeWords(truths[0].type).toLowerCase()}, too small or harmless. It costs nothing and earns nothing.`,
      };
    case "neutral-left":
      return {
        title: truthTitle(truths),
        story: "There, but too small or harmless to record. You were right to leave it.",
      };
    case "false-call":
      return {
        title: callTitle(calls),
        story: `${falseCallStory(line)}${strayWords(calls)}`,
      };
    case "not-counted":
      return {
        title: calls.map((call) => typeWords(call.type)).join(" and "),
        story:
          "This line has no place along or across the weld, so it could not be matched. It costs nothing and earns nothing.",
      };
    case "nothing-to-find":
      return { title: "Nothing to find", story: "A clean piece starts with all marks for indications." };
    case "floor":
      return {
        title: "No less than 0",
        story: "Indications cannot bring less than 0 marks; this line lifts them to 0.",
      };
  }
}

const PRICE_WORDS = "A call that is not in the right place costs marks.";

/** What lies where nothing is to be recorded, and how to tell it the next time. */
function falseCallStory({ clutter }: AccountLine): string {
  if (!clutter) return `Nothing to record was found at this place. ${PRICE_WORDS}`;
  const { there, tell } = CLUTTER_WORDS[clutter.kind];
  return `${there} ${tell} ${PRICE_WORDS}`;
}

/** What was decided on a false call is told, and marks nothing. */
function strayWords(calls: readonly Call[]): string {
  const [sentence] = calls.flatMap((call) => call.sentence ?? []);
  return sentence ? ` You sentenced it ${SENTENCE_NAMES[sentence].toLowerCase()}, which counts for nothing.` : "";
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

const PART_LOSSES: Readonly<Record<Part, string>> = {
  found: "its place",
  type: "the name",
  start: "the start",
  end: "the end",
  size: "the size",
  across: "the place across",
};

/** Smaller losses of a part are not worth a word; thousandths of a mark. */
const LEAST_LOSS = 50;

/** Why a line did not earn all of its marks: its place first, since that scales everything, then the dearest parts. */
function partlyStory(line: AccountLine): string {
  const found = line.earned > 0 ? "You found it" : "You called something here, but too little of it fits";
  const lost = line.parts
    .filter(({ part, share, full }) => part !== "found" && full * (1000 - share) >= LEAST_LOSS * 1000)
    .sort((a, b) => b.full * (1000 - b.share) - a.full * (1000 - a.share))
    .slice(0, 2)
    .map(({ part }) => PART_LOSSES[part]);
  const off = placeWords(line);
  const story =
    lost.length > 0 ? `${found}, but ${lost.join(" and ")} ${lost.length > 1 ? "are" : "is"} off.` : `${found}.`;
  return off ? `${story} ${off}` : story;
}

/** Why every mark of a line is scaled down: the call is not quite in its place. Null where it is. */
export function placeWords({ place }: AccountLine): string | null {
  if (!place || place.share === 1000) return null;
  const isAlong = place.stickOut > place.stickOutTolerance;
  const isBeside = place.beside > place.besideTolerance;
  const along = isAlong ? `reaches ${mm(place.stickOut)} past it (in full up to ${mm(place.stickOutTolerance)})` : "";
  const beside = isBeside ? `lies ${mm(place.beside)} beside it (in full up to ${mm(place.besideTolerance)})` : "";
  return `Your call ${[along, beside].filter(Boolean).join(" and ")}, so every mark of this line counts ${percent(place.share / 1000)}.`;
}

/** Where to look again for a miss without giving it away: a stretch of 50 mm in which it begins. */
export function vagueStretch({ start, face }: Pick<TruthView, "start" | "face">): {
  readonly words: string;
  readonly middle: number;
} {
  const lengths = JOINT_KINDS.filter((kind) => PIECES[kind].faces.includes(face)).map((kind) => PIECES[kind].length);
  const from = Math.min(...lengths.map((length) => length - 50), Math.floor(start / 50) * 50);
  return { words: `between ${from} and ${from + 50} mm`, middle: from + 25 };
}

export const PART_NAMES: Readonly<Record<Part, string>> = {
  found: "Found",
  type: "What it is",
  start: "From",
  end: "To",
  size: "Size",
  across: "Across",
};
