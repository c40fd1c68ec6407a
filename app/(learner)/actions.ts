"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { specimens } from "@/app/_server/generation";
import { askAuth, currentCaller } from "@/app/_server/session";
import { startPractice } from "@/app/_server/use-cases/start-practice";

export async function signOut(): Promise<void> {
  await askAuth("/sign-out", {});
  redirect("/sign-in");
}

export async function takeFreshPlate(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const typed = textsOf(form);
  const started = await startPractice(await currentCaller(), { passMark: Number(typed.passMark) }, specimens);
  if (!started.ok) return problemOf(started, typed);
  redirect(`/practice/${started.id}`);
}
