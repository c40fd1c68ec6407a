import { DEFAULT_PAPER, SECTIONS, type Section } from "../results";
import type { Paper, PaperSection } from "./paper";

/** No fillet has a blueprint of its own for papers yet: that for practice asks for as much. */
const BLUEPRINT: Readonly<Record<Section, string>> = { plate: "assessment", fillet: "practice" };
const CRITERIA = "iso-5817-2014-c";
const BREAK_MINUTES = 15;

function defaultSection(section: Section): PaperSection {
  const { minutes, passMark, weights, questions } = DEFAULT_PAPER[section];
  return {
    section,
    minutes,
    passMark,
    weights: { ...weights },
    piece: { blueprint: BLUEPRINT[section], process: "drawn", position: "drawn", thickness: "drawn" },
    criteriaId: CRITERIA,
    questionCount: questions,
    aids: { criteriaTable: "open", lens: true, asksReading: false },
  };
}

/** The paper a tutor starts from. Times, pass marks, one re-sit and no averaging of sections are common practice, no source. */
export const defaultPaper = (): Paper => ({
  version: 1,
  name: "Butt plate and fillet weld",
  sections: SECTIONS.map(defaultSection),
  forms: "own",
  feedback: "on-release",
  borderlinePiece: false,
  breakMinutes: BREAK_MINUTES,
  resits: 1,
});
