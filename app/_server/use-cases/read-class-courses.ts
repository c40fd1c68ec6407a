import { courseOf, courseRule, nextFor, timeline } from "@/lib/sittings";
import { listMembers } from "@/prisma/stores/classes";
import { readPaper } from "@/prisma/stores/papers";
import { listSittingsOf } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";
import { coursesIn } from "../sittings/courses-of-class";

/**
 * Where every member of a class stands in each paper that was set for it, the latest first, for its tutors: rounds, attempts
 * with the practice that holds their mark sheet, and what is due next.
 */
export async function readClassCourses(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const [everybody, sittings] = await Promise.all([listMembers(classId), listSittingsOf(classId)]);
  const members = everybody.filter(({ leftAt }) => leftAt === null);
  const practiceOf = new Map(sittings.flatMap(({ runs }) => runs.map(({ run, practiceId }) => [run.id, practiceId])));
  const papers = await Promise.all(
    [...new Set(sittings.map(({ paperId }) => paperId))].map(async (paperId) => {
      const kept = await readPaper(paperId);
      if (!kept) return [];
      const rule = courseRule(kept.current.paper);
      const courses = coursesIn(
        sittings.filter((sitting) => sitting.paperId === paperId),
        rule,
      );
      return [
        {
          paperId,
          paperName: kept.current.paper.name,
          sections: rule.sections,
          members: members.map(({ person }) => {
            const course = courses.get(person.id) ?? courseOf([], rule);
            return { person, next: nextFor(course), rounds: timeline(course) };
          }),
        },
      ];
    }),
  );
  return { ok: true, papers: papers.flat(), practiceOf } as const;
}
