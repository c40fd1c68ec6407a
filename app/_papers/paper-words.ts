import { SECTION_PARTS, type Section, type SectionPart } from "@/lib/results";
import type { Paper, PaperSection } from "@/lib/sittings";
import { POSITION_NAMES, PROCESS_NAMES } from "@/lib/weld";

export const PART_NAMES: Readonly<Record<SectionPart, string>> = {
  indications: "indications",
  dimensions: "dimensions",
  sentences: "sentences",
  questions: "questions",
};

/** What a learner does for each part of a section. */
const PART_TASKS: Readonly<Record<SectionPart, Readonly<Record<Section, string>>>> = {
  indications: {
    plate:
      "Inspect both faces. Report every indication: face, what it is, where it starts and ends, how far from the weld's centre line, and its size.",
    fillet:
      "Inspect the weld and both plates. Report every indication: what it is, where it starts and ends, and its size.",
  },
  dimensions: {
    plate: "Measure the dimensions that the report asks for, with the gauges on the tray.",
    fillet:
      "Measure legs and throat at the marked stations and where they are smallest, and state profile, legs and size.",
  },
  sentences: {
    plate: "Sentence each indication and the plate by the criteria: accept or reject.",
    fillet: "Sentence each indication and the fillet weld by the criteria: accept or reject.",
  },
  questions: { plate: "Answer the questions on this plate.", fillet: "Answer the questions on this fillet weld." },
};

/** What is asked for in a section, in the order of the report: a sentence for each part that carries marks. */
export function tasksOf({ section, weights }: Pick<PaperSection, "section" | "weights">): readonly string[] {
  return SECTION_PARTS.filter((part) => weights[part] > 0).map((part) => PART_TASKS[part][section]);
}

/** What the section's piece is, as far as the paper fixes it: "a butt-welded plate 12 mm thick, process 135 (...)". */
export function pieceWords({ section, piece }: Pick<PaperSection, "section" | "piece">): string {
  const { process, position, thickness } = piece;
  const what = section === "plate" ? "a butt-welded plate" : "a fillet-welded T-joint";
  const thick = section === "plate" ? "thick" : "thick in the base plate";
  return [
    thickness === "drawn" ? what : `${what} ${thickness} mm ${thick}`,
    ...(process === "drawn" ? [] : [`welded by process ${process} (${PROCESS_NAMES[process]})`]),
    ...(position === "drawn" ? [] : [`in position ${position} (${POSITION_NAMES[position]})`]),
  ].join(", ");
}

/** What may be used at the bench, one sentence each. */
export function aidWords({ criteriaTable, lens, asksReading }: PaperSection["aids"]): readonly string[] {
  return [
    criteriaTable === "open"
      ? "The table of criteria lies open at the bench."
      : "The table of criteria stays closed: you work from memory.",
    lens ? "You have a lens." : "You have no lens.",
    asksReading
      ? "“What does it read?” explains the scale of a gauge as it stands."
      : "You read the gauges yourself: nothing explains their scales.",
  ];
}

export const minutesWords = (minutes: number): string => (minutes === 1 ? "1 minute" : `${minutes} minutes`);

/** The rules of a paper as its learner has to know them. */
export function rulesOf({
  sections,
  forms,
  feedback,
  borderlinePiece,
  breakMinutes,
  resits,
}: Paper): readonly string[] {
  const several = sections.length > 1;
  const times = resits === 1 ? "once" : `up to ${resits === 2 ? "twice" : `${resits} times`}`;
  return [
    several
      ? "Each section has its own time and its own pass mark, and they are never averaged. You may sit them in any order, one at a time."
      : "The time starts when you start the section.",
    forms === "own"
      ? "Your piece is yours alone: everybody has another one, made to the same plan."
      : "Everybody in the sitting has the same piece.",
    "Your time runs on the workshop's server. What you write is saved as you go, and when the time is over the last save is handed in for you.",
    "Nothing can be added after you have handed in. A call where nothing is there costs marks; so does an indication that you pass over.",
    ...(several && breakMinutes > 0
      ? [`Between two sections you may rest for up to ${minutesWords(breakMinutes)}; nobody has to.`]
      : []),
    feedback === "at-once"
      ? "You see your mark sheet of a section as soon as it is closed."
      : "You see your mark sheets when the tutor releases them.",
    resits === 0
      ? `A section that you do not pass is not sat again by itself: the whole paper is due again${several ? ", all sections of it" : ""}.`
      : `A section that you do not pass is sat again by itself, on a fresh piece, ${times}. If that does not pass it either, the whole paper is due again.`,
    ...(borderlinePiece
      ? [
          "You may be given a second piece of a section in the same sitting; then the mean of both marks decides. Why is told with the marks.",
        ]
      : []),
  ];
}
