"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { chooseOwnPassword } from "@/app/_server/use-cases/choose-own-password";

export async function chooseOwn(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const caller = await currentCaller();
  const chosen = await chooseOwnPassword(caller, textsOf(form));
  if (!chosen.ok) return problemOf(chosen);
  redirect(caller.actor?.role === "tutor" ? "/desk" : "/");
}
