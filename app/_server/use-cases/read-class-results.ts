import type { Caller } from "../caller";
import { classResults } from "../class-results";
import { satInClass } from "../sittings/sat-sections";
import { readClass } from "./read-class";

/** Everything marked in a class, for a tutor of it: who is in it now, and their results, in closed sittings included. */
export async function readClassResults(caller: Caller, id: string) {
  const read = await readClass(caller, id);
  if (!read.ok) return read;
  const { group, members } = read;
  const at = caller.clock();
  return {
    ok: true,
    group,
    learners: members.map(({ person }) => person),
    results: classResults(members, await satInClass(id, at)),
    at,
  } as const;
}
