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

/**
 * Takes a piece for the section of the button that was pressed, the one that was chosen or any, with the marks that are needed in
 * it, to be sentenced by the criteria chosen.
 */
export async function takeFreshPiece(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const typed = textsOf(form);
  const { any, chosen, criteriaId, book } = typed;
  const section = any ?? chosen ?? "";
  const piece = any === undefined ? "chosen" : "any";
  const wanted = { section, passMark: Number(typed[section]), criteriaId, book, piece };
  const started = await startPractice(await currentCaller(), wanted, specimens);
  if (!started.ok) return problemOf(started, typed);
  redirect(`/practice/${started.id}`);
}
