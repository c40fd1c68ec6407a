import type { ClassGroup } from "@/lib/classes";
import { type Course, courseRule, isOpen, nextFor, type SittingState } from "@/lib/sittings";
import { listMembers } from "@/prisma/stores/classes";
import { readPaper } from "@/prisma/stores/papers";
import type { StoredSitting } from "@/prisma/stores/sittings";
import type { DueInClass, WhyDue } from "../sitting-views";
import { coursesIn } from "./courses-of-class";

const TO_COME: readonly SittingState[] = ["planned", "open", "running", "paused"];

/**
 * What members of a class have yet to pass of papers that they have sat something of, leaving out whoever has something of
 * the paper in a sitting that is planned or on. `sittings` are those of the class.
 */
export async function dueInClass(
  { id, name }: Pick<ClassGroup, "id" | "name">,
  sittings: readonly StoredSitting[],
): Promise<readonly DueInClass[]> {
  const paperIds = [...new Set(sittings.map(({ paperId }) => paperId))];
  if (paperIds.length === 0) return [];
  const members = (await listMembers(id)).filter(({ leftAt }) => leftAt === null);
  const found = await Promise.all(
    paperIds.map(async (paperId): Promise<readonly DueInClass[]> => {
      const kept = await readPaper(paperId);
      if (!kept || kept.archivedAt) return [];
      const { paper } = kept.current;
      const ofPaper = sittings.filter((sitting) => sitting.paperId === paperId);
      const courses = coursesIn(ofPaper, courseRule(paper));
      const busy = busyWith(ofPaper);
      const learners = members.flatMap(({ person }) => {
        const course = courses.get(person.id);
        if (!course || course.isPassed || busy.has(person.id)) return [];
        const sections = sectionsDue(course);
        return sections.length > 0 ? [{ id: person.id, name: person.name, sections }] : [];
      });
      return learners.length > 0 ? [{ classId: id, className: name, paperId, paperName: paper.name, learners }] : [];
    }),
  );
  return found.flat();
}

function sectionsDue(course: Course): DueInClass["learners"][number]["sections"] {
  const why = (kind: "first" | "re-sit"): WhyDue =>
    kind === "re-sit" ? "re-sit" : course.round > 1 ? "new-round" : "not-sat";
  return nextFor(course).due.flatMap((one) =>
    one.why === "parallel-piece" ? [] : [{ section: one.section, why: why(one.why) }],
  );
}

/** Who has something to sit, or is at something, in these sittings. */
export const busyWith = (sittings: readonly StoredSitting[]): ReadonlySet<string> =>
  new Set(
    sittings
      .filter(({ sitting }) => TO_COME.includes(sitting.state))
      .flatMap(({ runs }) => runs.map(({ run }) => run))
      .filter((run) => isOpen(run) || run.state === "waiting")
      .map(({ userId }) => userId),
  );
