"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { problemOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { setClassPaper } from "@/app/_server/use-cases/set-class-paper";
import type { Told } from "../../told-form";

/** Makes a paper of the types that the form names, and leads to it. */
export async function setAsPaper(_before: Told | null, form: FormData): Promise<Told> {
  const types = form.getAll("types");
  const made = await setClassPaper(await currentCaller(), String(form.get("class")), { types });
  if (!made.ok) return { problem: problemOf(made) };
  revalidatePath("/desk/papers");
  redirect(`/desk/papers/${made.id}?from=class`);
}
