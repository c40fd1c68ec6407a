import type { Section } from "../results";
import type { Course, Standing } from "./course";

/** What a learner has to sit next: the sections, each with why, and the same in words. */
export interface NextInCourse {
  readonly isPassed: boolean;
  readonly round: number;
  readonly due: readonly { readonly section: Section; readonly why: "first" | "re-sit" | "parallel-piece" }[];
  /** To the learner, second person. */
  readonly words: string;
}

const WHY = { due: "first", "re-sit-due": "re-sit", undecided: "parallel-piece" } as const;

const NAMES: Readonly<Record<Section, string>> = { plate: "the butt plate", fillet: "the fillet weld" };

export function nextFor(course: Course): NextInCourse {
  const { isPassed, round, standings } = course;
  const due = [...standings].flatMap(([section, standing]) =>
    standing === "passed" ? [] : [{ section, why: WHY[standing] }],
  );
  return { isPassed, round, due, words: inWords(course) };
}

function inWords({ rule, isPassed, round, standings, attempts }: Course): string {
  const among = (standing: Standing) =>
    [...standings].flatMap(([section, its]) => (its === standing ? [NAMES[section]] : []));
  if (isPassed)
    return standings.size === 1 ? `You have passed ${list(among("passed"))}.` : "You have passed every section.";
  const sentences: string[] = [];
  const isNewRound =
    round > 1 && !attempts.some((one) => one.round === round && one.kind !== "extra" && one.kind !== "void");
  if (isNewRound) {
    sentences.push(
      `Round ${round} begins: a ${rule.resits > 0 ? "re-sit" : "section"} was failed, so every section is due again.`,
    );
  }
  if (among("undecided").length > 0) {
    sentences.push(`Sit ${list(among("undecided"))} on one more piece like it; the mean of both marks decides.`);
  }
  if (among("re-sit-due").length > 0) {
    sentences.push(`Sit ${list(among("re-sit-due"))} again on a fresh piece.`);
  }
  if (among("due").length > 0) sentences.push(`Sit ${list(among("due"))}.`);
  if (among("passed").length > 0) sentences.push(`What you have passed stands: ${list(among("passed"))}.`);
  return sentences.join(" ");
}

const list = (names: readonly string[]): string => names.join(" and ");
