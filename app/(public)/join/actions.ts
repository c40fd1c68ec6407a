"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { askAuth } from "@/app/_server/session";
import { joinWorkshop } from "@/app/_server/use-cases/join-workshop";

export async function join(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const input = textsOf(form);
  const joined = await joinWorkshop({ clock: () => new Date() }, input);
  if (!joined.ok) return problemOf(joined, input);
  await askAuth("/sign-in/username", { username: joined.signInName, password: input.password });
  redirect("/");
}
