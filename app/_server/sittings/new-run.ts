import { JOINT_OF, type Section } from "@/lib/results";
import { newRun, type Paper, type PaperSection } from "@/lib/sittings";
import type { WholePaperVersion } from "@/prisma/stores/papers";
import type { NewRun } from "@/prisma/stores/sitting-changes";
import type { SpecimenSource } from "../generation/specimen-source";
import { randomId } from "../random-id";

/** Somebody's section that is to be sat. */
export interface Expected {
  readonly userId: string;
  readonly section: Section;
  readonly factor: number;
  readonly isBorderline: boolean;
}

/** A run with its practice on a piece, everything else as the paper has it. */
export function runOn(
  { userId, section, factor, isBorderline }: Expected,
  { paper, criteria }: WholePaperVersion,
  specimenId: string,
  now: Date,
): NewRun {
  const { minutes, passMark, aids } = sectionOf(paper, section);
  return {
    run: newRun({ id: randomId(), userId, section, minutes, factor, isBorderline }),
    practice: {
      id: randomId(),
      userId,
      specimenId,
      section,
      passMark,
      criteria: criteria[section] ?? null,
      book: aids.criteriaTable,
      startedAt: now,
    },
  };
}

/** Orders a piece as the paper asks for it. */
export async function orderPiece(
  paper: Paper,
  section: Section,
  specimens: SpecimenSource,
  isAwaited: boolean,
): Promise<string> {
  const kind = JOINT_OF[section];
  const { piece } = sectionOf(paper, section);
  const { specimenId } = await (isAwaited ? specimens.requestOne(kind, piece) : specimens.orderAhead(kind, piece));
  return specimenId;
}

/** What a paper says of a section that it has. */
export function sectionOf({ sections }: Paper, section: Section): PaperSection {
  const found = sections.find((one) => one.section === section);
  if (!found) throw new Error(`the paper has no section ${section}`);
  return found;
}
