import { withoutAskedTypes } from "@/lib/sittings";
import { listMembers } from "@/prisma/stores/classes";
import { readPaperVersion } from "@/prisma/stores/papers";
import { listPresences } from "@/prisma/stores/presences";
import { readSitting, type StoredSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";
import { ownView } from "../sittings/own-view";
import { readOwnCourse } from "./read-own-course";

/**
 * The front page of a sitting for one of its learners: its paper, with what the criteria of each section are called, how
 * their sections stand, whether they have come in, and once marks are released what is due next. Of a paper that they sit
 * only in part, as for a re-sit, it has their sections.
 */
export async function readOwnSitting(caller: Caller, id: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const { id: userId } = signedIn.actor;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const hasSections = stored.runs.some(({ run }) => run.userId === userId);
  // whoever has no business with it learns nothing of it
  if (!hasSections && !(await mayStillCome(stored, userId))) return refuse("no-such-sitting");
  const version = await readPaperVersion(stored.paperVersionId);
  if (!version) return refuse("no-such-sitting");
  const now = caller.clock();
  const sitting = ownView(stored, userId, now);
  const { paper, criteria } = version;
  const sections = hasSections
    ? paper.sections.filter(({ section }) => sitting.sections.some((own) => own.section === section))
    : paper.sections;
  const presences = await listPresences(id);
  const course = sitting.sections.some(({ mayKnowMarks }) => mayKnowMarks)
    ? await readOwnCourse(caller, stored.groupId, stored.paperId)
    : null;
  return {
    ok: true,
    now,
    sitting,
    paper: withoutAskedTypes({ ...paper, sections }),
    criteriaNames: Object.fromEntries(
      sections.flatMap(({ section }) => {
        const set = criteria[section];
        return set ? [[section, `${set.name}, ${set.edition}`]] : [];
      }),
    ),
    isIn: presences.some((one) => one.userId === userId),
    /** What is due next in the paper, to the learner. */
    standing: course?.ok ? course.next.words : null,
  } as const;
}

async function mayStillCome({ sitting, groupId, isForWholeClass }: StoredSitting, userId: string): Promise<boolean> {
  if (!isForWholeClass || !["planned", "open", "running", "paused"].includes(sitting.state)) return false;
  return (await listMembers(groupId)).some(({ person, leftAt }) => person.id === userId && leftAt === null);
}
