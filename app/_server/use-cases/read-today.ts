import { MAX_OPEN_PRACTICES } from "@/lib/practice";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { refuse } from "../refusal";
import { listOwnPractices } from "./list-own-practices";

/** What the caller has unfinished, their marks, and what a fresh plate would ask for. */
export async function readToday(caller: Caller) {
  const practices = await listOwnPractices(caller);
  if (!practices.ok) return practices;
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  const canStart = practices.open.length < MAX_OPEN_PRACTICES;
  return { ...practices, passMarks: workshop.passMarks, canStart } as const;
}
