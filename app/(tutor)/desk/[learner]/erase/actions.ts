"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { eraseLearner } from "@/app/_server/use-cases/erase-learner";

/** Erases the learner whom the form names, once their sign-in name is typed. */
export async function erase(_before: FormProblem | null, form: FormData): Promise<FormProblem> {
  const { learner = "", signInName = "" } = textsOf(form);
  const erased = await eraseLearner(await currentCaller(), learner, { signInName });
  if (!erased.ok) return problemOf(erased, { signInName });
  revalidatePath("/desk", "layout");
  redirect("/desk/records?erased=yes");
}
