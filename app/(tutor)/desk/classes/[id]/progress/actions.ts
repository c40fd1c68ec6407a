"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { problemOf, textsOf } from "@/app/_server/form-state";
import { specimens } from "@/app/_server/generation";
import { currentCaller } from "@/app/_server/session";
import { setClassPaper } from "@/app/_server/use-cases/set-class-paper";
import { setDrill, withdrawDrill } from "@/app/_server/use-cases/set-drill";
import type { Told } from "../../told-form";

/** Makes a paper of the types that the form names, and leads to it. */
export async function setAsPaper(_before: Told | null, form: FormData): Promise<Told> {
  const types = form.getAll("types");
  const made = await setClassPaper(await currentCaller(), String(form.get("class")), { types });
  if (!made.ok) return { problem: problemOf(made) };
  revalidatePath("/desk/papers");
  redirect(`/desk/papers/${made.id}?from=class`);
}

/** Sets a class the drill that the form names, about the imperfections that are ticked. */
export async function setClassDrill(_before: Told | null, form: FormData): Promise<Told> {
  const { class: id = "", drill } = textsOf(form);
  const set = await setDrill(await currentCaller(), id, { drill, types: form.getAll("type") }, specimens);
  if (!set.ok) return { problem: problemOf(set) };
  revalidatePath("/desk", "layout");
  return { done: "Set. Your learners find it on Today and under Drills until they have done it.", problem: null };
}

/** Takes a drill off the Today of everybody in the class. */
export async function withdrawClassDrill(_before: Told | null, form: FormData): Promise<Told> {
  const { class: id = "", set = "" } = textsOf(form);
  const withdrawn = await withdrawDrill(await currentCaller(), id, set);
  if (!withdrawn.ok) return { problem: problemOf(withdrawn) };
  revalidatePath("/desk", "layout");
  return { done: "Withdrawn. What was done of it is kept.", problem: null };
}
