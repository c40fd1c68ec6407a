import { defaultPaper } from "@/lib/sittings";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";
import { listCriteria } from "./list-criteria";

/** The paper that a tutor starts from, with the pass marks of the workshop, and the criteria to choose from. Stores nothing. */
export async function beginPaper(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  const criteria = await listCriteria(caller);
  if (!criteria.ok) return criteria;
  const paper = defaultPaper();
  const sections = paper.sections.map((one) => ({ ...one, passMark: workshop.passMarks[one.section] }));
  return { ok: true, paper: { ...paper, sections }, criteria: criteria.groups } as const;
}
