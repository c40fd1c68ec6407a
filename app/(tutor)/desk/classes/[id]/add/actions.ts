"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type FormProblem, problemOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { enrolList, previewList } from "@/app/_server/use-cases/enrol-list";
import type { PlannedRow } from "@/lib/classes";
import type { SignInSlip } from "@/lib/workshop";

export type ListState =
  | { readonly step: "write"; readonly problem: FormProblem | null }
  /** `list` is what the rows were read from. */
  | {
      readonly step: "preview";
      readonly list: string;
      readonly rows: readonly PlannedRow[];
      readonly problem: FormProblem | null;
    }
  | { readonly step: "done"; readonly slips: readonly SignInSlip[]; readonly added: number };

const agreedRowSchema = z.object({ row: z.number(), outcome: z.string(), name: z.string(), signInName: z.string() });
const askedSchema = z.object({ classId: z.string(), list: z.string(), agreed: z.array(agreedRowSchema).optional() });

/** What is asked: to look at a list, or to do what was shown for it. */
export interface ListAsked {
  readonly classId: string;
  readonly list: string;
  readonly agreed?: readonly PlannedRow[];
}

export async function bringList(_before: ListState, asked: ListAsked): Promise<ListState> {
  const caller = await currentCaller();
  const { classId, list, agreed } = askedSchema.parse(asked);
  if (!agreed) {
    const preview = await previewList(caller, classId, list);
    if (!preview.ok) return { step: "write", problem: problemOf(preview) };
    return { step: "preview", list, rows: preview.rows, problem: null };
  }
  const done = await enrolList(caller, classId, list, agreed);
  if (done.ok) {
    revalidatePath("/desk", "layout");
    return { step: "done", slips: done.slips, added: done.added };
  }
  if ("rows" in done) {
    return { step: "preview", list, rows: done.rows as readonly PlannedRow[], problem: problemOf(done) };
  }
  return { step: "write", problem: problemOf(done) };
}
