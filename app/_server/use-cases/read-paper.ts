import type { CriteriaEntry } from "@/lib/criteria";
import { readPaper as readKeptPaper, readPaperVersion } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";
import { listCriteria } from "./list-criteria";

/** One paper as it stands, for a tutor, with the criteria to choose from; those that it has and that are put away come last. */
export async function readPaper(caller: Caller, id: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const kept = await readKeptPaper(id);
  const version = kept && (await readPaperVersion(kept.current.id));
  if (!version) return refuse("no-such-paper");
  const list = await listCriteria(caller);
  if (!list.ok) return list;
  const offered = new Set(list.groups.flatMap(({ sets }) => sets.map((set) => set.id)));
  const away = Object.values(version.criteria)
    .filter((set) => !offered.has(set.id))
    .map((set): CriteriaEntry => ({ id: set.id, name: set.name, edition: set.edition, origin: "in-house" }));
  const sets = [...new Map(away.map((set) => [set.id, set])).values()];
  const criteria = sets.length > 0 ? [...list.groups, { title: "Put away", sets }] : list.groups;
  return { ok: true, kept, criteria } as const;
}
