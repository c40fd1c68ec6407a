import { courseRule, nextFor, timeline } from "@/lib/sittings";
import { listClassesWith } from "@/prisma/stores/classes";
import { readPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";
import { courseAsKnown } from "../sittings/courses-of-class";

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
