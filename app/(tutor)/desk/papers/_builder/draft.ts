import { problemsByField } from "@/app/_server/input-problem";
import { SECTION_PARTS, type SectionPart } from "@/lib/results";
import { type Paper, type PaperSection, paperSchema } from "@/lib/sittings";

/** A section as it stands in its fields: numbers as they are typed. */
export interface SectionDraft extends Omit<PaperSection, "minutes" | "passMark" | "weights" | "questionCount"> {
  readonly minutes: string;
  readonly passMark: string;
  readonly weights: Readonly<Record<SectionPart, string>>;
  readonly questionCount: string;
}

/** A paper as it stands in its fields. */
export interface PaperDraft extends Omit<Paper, "sections" | "breakMinutes" | "resits"> {
  readonly sections: readonly SectionDraft[];
  readonly breakMinutes: string;
  readonly resits: string;
}

export function draftOfSection({ minutes, passMark, weights, questionCount, ...rest }: PaperSection): SectionDraft {
  return {
    ...rest,
    minutes: String(minutes),
    passMark: String(passMark),
    weights: byPart((part) => String(weights[part])),
    questionCount: String(questionCount),
  };
}

export function draftOf({ sections, breakMinutes, resits, ...rest }: Paper): PaperDraft {
  return {
    ...rest,
    sections: sections.map(draftOfSection),
    breakMinutes: String(breakMinutes),
    resits: String(resits),
  };
}

/** The draft as it is sent: what is no number stays wrong, so that the paper's own rules say what would be right. */
export function written({ sections, breakMinutes, resits, ...rest }: PaperDraft): unknown {
  return {
    ...rest,
    sections: sections.map(({ minutes, passMark, weights, questionCount, ...section }) => ({
      ...section,
      minutes: numberOf(minutes),
      passMark: numberOf(passMark),
      weights: byPart((part) => numberOf(weights[part])),
      questionCount: numberOf(questionCount),
    })),
    breakMinutes: numberOf(breakMinutes),
    resits: numberOf(resits),
  };
}

/** By the name of the field, like `sections[0].minutes`. */
export type Problems = Readonly<Record<string, string>>;

type ReadDraft =
  | { readonly ok: true; readonly paper: Paper; readonly problems: Problems }
  | { readonly ok: false; readonly problems: Problems };

/** The paper that the fields say, or what is wrong in which. */
export function readDraft(draft: PaperDraft): ReadDraft {
  const parsed = paperSchema.safeParse(written(draft));
  return parsed.success
    ? { ok: true, paper: parsed.data, problems: {} }
    : { ok: false, problems: problemsByField(parsed.error) };
}

/** Codes of the paper's fields, and what the page calls them. */
const SAID: readonly (readonly [RegExp, string])[] = [
  [/\bon-release\b/, "when you release the sitting"],
  [/\bdrawn\b/, "as it comes"],
  [/\bfinal-mock\b/, "this blueprint"],
  [/\b(practice|assessment|clean)$/, "this blueprint"],
];

/** A message of the paper's rules as it stands at its field: without the field's name, with the page's words. */
export function problemText(message: string): string {
  return `${SAID.reduce((text, [code, words]) => text.replace(code, words), message.replace(/^\w+: /, ""))}.`;
}

function byPart<T>(of: (part: SectionPart) => T): Record<SectionPart, T> {
  return Object.fromEntries(SECTION_PARTS.map((part) => [part, of(part)])) as Record<SectionPart, T>;
}

/** Null where nothing or no number is typed; a comma counts as a point. */
function numberOf(text: string): number | null {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || Number.isNaN(value) ? null : value;
}
