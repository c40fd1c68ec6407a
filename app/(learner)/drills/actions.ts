"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { specimens } from "@/app/_server/generation";
import { currentCaller } from "@/app/_server/session";
import { beginEyeRound } from "@/app/_server/use-cases/begin-eye-round";

/** Begins a round of the drill of the button that was pressed, as the form has chosen it, and goes there. */
export async function beginRound(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const { drill = "", naming = "four", clock = "", set = "" } = textsOf(form);
  const choice = { drill, naming, isTimed: clock === "on" };
  const begun = await beginEyeRound(await currentCaller(), choice, set === "" ? null : set, specimens);
  if (!begun.ok && begun.code === "book-closed") redirect("/book-closed");
  if (!begun.ok) return problemOf(begun);
  redirect(`/drills/eye/${begun.id}`);
}
