import { courseOf, courseRule, nextFor, timeline } from "@/lib/sittings";
import { listClassesWith, listMembers } from "@/prisma/stores/classes";
import { readPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireOwnClass, requireSignedIn } from "../permissions";
import { refuse } from "../refusal";
import { courseAsKnown, coursesOfClass } from "../sittings/courses-of-class";

/** Where every member of a class stands in a paper, for its tutors: rounds, attempts, and what is due next. */
export async function readCourse(caller: Caller, classId: string, paperId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const paper = await readPaper(paperId);
  if (!paper) return refuse("no-such-paper");
  const rule = courseRule(paper.current.paper);
  const [members, courses] = await Promise.all([listMembers(classId), coursesOfClass(classId, paperId, rule)]);
  return {
    ok: true,
    rule,
    members: members
      .filter(({ leftAt }) => leftAt === null)
      .map(({ person }) => {
        const course = courses.get(person.id) ?? courseOf([], rule);
        return { person, course, next: nextFor(course), rounds: timeline(course) };
      }),
  } as const;
}

/** Where the caller stands in a paper of a class of theirs, as far as marks are released. */
export async function readOwnCourse(caller: Caller, classId: string, paperId: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id } = signedIn.actor;
  if (!(await listClassesWith(id)).some((group) => group.id === classId)) return refuse("no-such-class");
  const paper = await readPaper(paperId);
  if (!paper) return refuse("no-such-paper");
  const course = await courseAsKnown(classId, paperId, id, courseRule(paper.current.paper), caller.clock());
  return { ok: true, course, next: nextFor(course), rounds: timeline(course) } as const;
}
