import { countingMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import { type Course, type CourseAttempt, type CourseRule, courseOf, mayShowMarks } from "@/lib/sittings";
import { listSittingsOf, readCourseTrace, type StoredRun, type StoredSitting } from "@/prisma/stores/sittings";

/** Where every learner stands in a paper of a class who has sat something of it, by learner. */
export const coursesOfClass = async (
  classId: string,
  paperId: string,
  rule: CourseRule,
): Promise<ReadonlyMap<string, Course>> => coursesIn(await listSittingsOf(classId, paperId), rule);

interface ClassCourses {
  readonly sittings: readonly StoredSitting[];
  /** By learner. */
  readonly courses: ReadonlyMap<string, Course>;
}

interface Remembered extends ClassCourses {
  readonly trace: string;
}

/** The last courses of this process by class, paper and rule, for views that ask once a second. */
const remembered = new Map<string, Remembered>();
/** More classes than anybody looks at in one workshop at a time. */
const MOST_REMEMBERED = 50;

/** The same with the sittings that they come from, worked out anew only once something in them has changed. */
export async function coursesOfClassAgain(classId: string, paperId: string, rule: CourseRule): Promise<ClassCourses> {
  const key = JSON.stringify([classId, paperId, rule]);
  // before the sittings: what changes in between is found the next time
  const trace = await readCourseTrace(classId, paperId);
  const known = remembered.get(key);
  if (known?.trace === trace) return known;
  const sittings = await listSittingsOf(classId, paperId);
  const again: Remembered = { trace, sittings, courses: coursesIn(sittings, rule) };
  remembered.delete(key);
  remembered.set(key, again);
  for (const oldest of [...remembered.keys()].slice(0, -MOST_REMEMBERED)) remembered.delete(oldest);
  return again;
}

/** The same from the sittings of one paper and one class. */
export function coursesIn(sittings: readonly StoredSitting[], rule: CourseRule): ReadonlyMap<string, Course> {
  const attempts = attemptsIn(sittings, () => true);
  const learners = new Set(attempts.map(({ userId }) => userId));
  return new Map(
    Array.from(learners, (userId) => [
      userId,
      courseOf(
        attempts.filter((one) => one.userId === userId),
        rule,
      ),
    ]),
  );
}

/** Where one learner stands, as far as they may know their marks. */
export async function courseAsKnown(
  classId: string,
  paperId: string,
  userId: string,
  rule: CourseRule,
  now: Date,
): Promise<Course> {
  const attempts = attemptsIn(await listSittingsOf(classId, paperId), ({ run }, { sitting }) =>
    run.state === "void" ? sitting.state === "released" : mayShowMarks(run, sitting, now),
  );
  return courseOf(
    attempts.filter((one) => one.userId === userId),
    rule,
  );
}

type Attempt = CourseAttempt & { readonly userId: string };

/** Every marked section of sittings as an attempt. */
function attemptsIn(
  sittings: readonly StoredSitting[],
  isCounted: (stored: StoredRun, sitting: StoredSitting) => boolean,
): readonly Attempt[] {
  return sittings.flatMap((sitting) =>
    sitting.runs
      .filter((stored) => isCounted(stored, sitting))
      .flatMap((stored) => {
        const { run, marks } = stored;
        const [mark] = marks;
        if (!mark || run.closedAt === null) return [];
        return [
          {
            id: run.id,
            userId: run.userId,
            section: run.section,
            sittingId: sitting.sitting.id,
            at: run.closedAt,
            // what is due goes by the mark as reviewed
            mark: shownMark(countingMark(mark).markThousandths),
            passMark: mark.passMark,
            isVoid: run.state === "void",
            isBorderline: run.isBorderline,
            awaitsPiece: !run.isBorderline && awaitsPiece(stored, sitting),
          },
        ];
      }),
  );
}

/** Whether a parallel piece was given that can still be sat, or is being sat. */
function awaitsPiece({ run }: StoredRun, { sitting, runs }: StoredSitting): boolean {
  const isOn = sitting.state === "running" || sitting.state === "paused";
  return (
    isOn &&
    runs.some(
      ({ run: other, isMarked }) =>
        other.isBorderline &&
        other.userId === run.userId &&
        other.section === run.section &&
        other.state !== "void" &&
        !isMarked,
    )
  );
}
