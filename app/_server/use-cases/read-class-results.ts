import type { Caller } from "../caller";
import { classResults } from "../class-results";
import { readClass } from "./read-class";

/** Everything marked in a class, for a tutor of it: who is in it now, and their results. */
export async function readClassResults(caller: Caller, id: string) {
  const read = await readClass(caller, id);
  if (!read.ok) return read;
  const { group, members } = read;
  return {
    ok: true,
    group,
    learners: members.map(({ person }) => person),
    results: classResults(members),
    at: caller.clock(),
  } as const;
}
