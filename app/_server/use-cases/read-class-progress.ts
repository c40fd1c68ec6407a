import { EMPTY_OVERVIEW, type MarksBySection } from "@/lib/progress";
import { SECTIONS, type Section } from "@/lib/results";
import { listMembers } from "@/prisma/stores/classes";
import { type LatestMark, listLatestMarks, readOverviews } from "@/prisma/stores/progress";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";
import { refuse } from "../refusal";

const NONE = { overview: EMPTY_OVERVIEW, isCurrent: true };

/** With a half-life of four marks, what comes before weighs less than an eighth together. */
const LATEST_MARKS = 12;

/**
 * How everybody in a class gets on, for its tutors: the extract of each learner's tallies, and the marks of their latest sections,
 * the newest last, and nothing else, so that it opens as fast after years. Whose tallies are being built anew is counted in
 * `beingBuilt` and empty meanwhile.
 */
export async function readClassProgress(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const ids = members.map(({ person }) => person.id);
  const [kept, marks] = await Promise.all([readOverviews(ids), listLatestMarks(ids, LATEST_MARKS)]);
  const learners = members.map(({ person: { id, name } }) => ({
    person: { id, name },
    ...(kept.get(id) ?? NONE),
    marks: marksOf(id, marks),
  }));
  return {
    ok: true,
    group: own.group,
    passMarks: workshop.passMarks,
    learners,
    beingBuilt: learners.filter(({ isCurrent }) => !isCurrent).length,
    at: caller.clock(),
  } as const;
}

function marksOf(id: string, all: readonly LatestMark[]): MarksBySection {
  const own = all.filter(({ userId }) => userId === id);
  const ofSection = (name: Section) => own.filter(({ section }) => section === name);
  return Object.fromEntries(SECTIONS.map((name) => [name, ofSection(name).map(({ thousandths }) => thousandths)]));
}
