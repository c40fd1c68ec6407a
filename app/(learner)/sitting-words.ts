import type { OwnSection, OwnSitting } from "@/app/_server/sitting-views";
import { SECTION_WORDS } from "@/app/_ui/section-names";

/** How a sitting stands for its learner: one word for a list, and what comes next. */
export interface SittingStanding {
  readonly state: string;
  /** What is so, and what to do. */
  readonly next: string;
  /** Whether the learner has something to do in it now. */
  readonly isOn: boolean;
}

const isOpen = ({ state }: OwnSection) => state === "running" || state === "paused";
const isToCome = ({ state }: OwnSection) => state === "waiting";

/** How a sitting stands. `isIn` where it is known whether the learner has come in. */
export function standingOf({ state, wasClosed, sections, voidReason }: OwnSitting, isIn = true): SittingStanding {
  const open = sections.find(isOpen);
  const toCome = sections.filter(isToCome);
  switch (state) {
    case "planned":
      return { state: "planned", next: "You can come in as soon as your tutor opens it.", isOn: false };
    case "open":
      return {
        state: "open",
        next: isIn
          ? "You are in. Your tutor begins it when everybody is there; read the paper until then."
          : "Come in now: your tutor begins it when everybody is there.",
        isOn: true,
      };
    case "running":
    case "paused": {
      const stands = state === "paused" ? "The sitting is paused, and every clock stands. " : "";
      if (open) return { state, next: `${stands}Your ${SECTION_WORDS[open.section]} is on the bench.`, isOn: true };
      if (toCome.length > 0 && !wasClosed) {
        const next = isIn
          ? `Start ${toCome.length > 1 ? "the section you want to sit first" : `the ${SECTION_WORDS[toCome[0].section]}`}; its clock goes from then on.`
          : "It has begun. Come in, then start a section.";
        return { state, next: stands + next, isOn: true };
      }
      if (sections.length === 0)
        return { state, next: `${stands}It has begun. Come in, then start a section.`, isOn: true };
      return { state, next: afterwards(sections), isOn: false };
    }
    case "closed":
      return { state: "closed", next: afterwards(sections), isOn: false };
    case "released":
      return { state: "marks released", next: "Your marks are there: open the mark sheets.", isOn: false };
    case "void":
      return {
        state: "void",
        next: `It does not count${voidReason ? `: ${voidReason}` : "."} What you wrote is kept.`,
        isOn: false,
      };
  }
}

function afterwards(sections: readonly OwnSection[]): string {
  const isSeen = sections.some(({ mayKnowMarks }) => mayKnowMarks);
  if (isSeen) return "There is nothing left to sit. Your mark sheets are there.";
  const isSat = sections.some(({ state }) => state === "handed-in" || state === "expired");
  return isSat
    ? "There is nothing left to sit. Your marks come when your tutor releases them."
    : "You have sat nothing in it. Ask your tutor what comes next.";
}
