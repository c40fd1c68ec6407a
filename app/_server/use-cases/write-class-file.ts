import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind } from "../permissions";
import { readClassResults } from "./read-class-results";

/** All marks of a class, practice and closed sittings, as a CSV file, learner by learner, for a tutor of it. */
export async function writeClassFile(caller: Caller, id: string, kind: string) {
  const read = await readClassResults(caller, id);
  if (!read.ok) return read;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const pieces = read.learners.flatMap((learner) => {
    const own = read.results.filter(({ learnerId }) => learnerId === learner.id);
    // a piece of two sections stands in the file once, with both
    const works = new Map(own.map(({ practiceId, work }) => [practiceId, work]));
    return [...works].map(([practiceId, work]) => ({ practiceId, learner, work }));
  });
  return { ok: true, name: `${known.kind}-of-class-${id}`, text: await fileOf(known.kind, pieces) } as const;
}
