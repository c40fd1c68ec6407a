import { countingMark } from "@/lib/practice";
import { type MarkedSection, type Section, shownMark } from "@/lib/results";
import { type AttemptKind, courseRule } from "@/lib/sittings";
import { readPaper } from "@/prisma/stores/papers";
import { listPractices } from "@/prisma/stores/practices";
import { listSittingsFor, type StoredSitting } from "@/prisma/stores/sittings";
import { coursesIn } from "../sittings/courses-of-class";

/** One mark of a learner that counts, against what it needed. */
export interface HistoryMark {
  readonly id: string;
  readonly practiceId: string;
  readonly section: MarkedSection;
  readonly at: Date;
  /** The mark that counts, as shown, at most one decimal. */
  readonly mark: number;
  readonly passMark: number;
  readonly isPassed: boolean;
  /** What it was: for practice, or what it stands for in the rounds of its paper. */
  readonly kind: "practice" | Exclude<AttemptKind, "void">;
  /** Round of the paper; null for practice. */
  readonly round: number | null;
  /** Id of the mark that a re-sit repeats, or that a parallel piece goes with. */
  readonly repeats: string | null;
  /** Name of the paper; null for practice. */
  readonly paperName: string | null;
}

/** Marks of practice and of released sittings, without what is void, the earliest first. */
export async function historyOf(userId: string): Promise<readonly HistoryMark[]> {
  const [practices, sittings] = await Promise.all([listPractices(userId), listSittingsFor(userId)]);
  const released = sittings.filter(({ sitting }) => sitting.state === "released");
  const sat = await Promise.all(coursesAmong(released).map((course) => marksInCourse(course, userId)));
  return [...practices.flatMap(marksOfPractice), ...sat.flat()].sort(
    (a, b) => a.at.getTime() - b.at.getTime() || (a.id < b.id ? -1 : 1),
  );
}

const marksOfPractice = ({
  id,
  handedInAt,
  marks,
}: Awaited<ReturnType<typeof listPractices>>[number]): readonly HistoryMark[] =>
  marks.flatMap((marked) =>
    handedInAt
      ? [
          {
            id: `${id}/${marked.section}`,
            practiceId: id,
            section: marked.section,
            at: handedInAt,
            mark: shownMark(countingMark(marked).markThousandths),
            passMark: marked.passMark,
            isPassed: countingMark(marked).isPassed,
            kind: "practice" as const,
            round: null,
            repeats: null,
            paperName: null,
          },
        ]
      : [],
  );

/** Sittings of one paper in one class, together. */
function coursesAmong(sittings: readonly StoredSitting[]): readonly (readonly StoredSitting[])[] {
  const courses = new Map<string, StoredSitting[]>();
  for (const one of sittings) {
    const key = `${one.groupId} ${one.paperId}`;
    courses.set(key, [...(courses.get(key) ?? []), one]);
  }
  return [...courses.values()];
}

async function marksInCourse(sittings: readonly StoredSitting[], userId: string): Promise<readonly HistoryMark[]> {
  const [{ paperId, sitting: latest }] = sittings;
  const paper = await readPaper(paperId);
  const rule = courseRule(paper?.current.paper ?? latest.paper);
  const runs = new Map(sittings.flatMap(({ sitting, runs: own }) => own.map((one) => [one.run.id, { one, sitting }])));
  const placed = coursesIn(sittings, rule).get(userId)?.attempts ?? [];
  return placed.flatMap(({ attempt, kind, round, repeats }) => {
    const found = runs.get(attempt.id);
    const counting = found?.one.marks[0];
    if (kind === "void" || !found || !counting) return [];
    const { id, at, mark, passMark } = attempt;
    const section: Section = attempt.section;
    return [
      {
        id,
        practiceId: found.one.practiceId,
        section,
        at,
        mark,
        passMark,
        isPassed: countingMark(counting).isPassed,
        kind,
        round,
        repeats,
        paperName: found.sitting.paper.name,
      },
    ];
  });
}
