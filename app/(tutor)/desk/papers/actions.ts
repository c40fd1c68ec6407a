"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { archivePaper } from "@/app/_server/use-cases/archive-paper";
import { copyPaper } from "@/app/_server/use-cases/copy-paper";

async function archive(form: FormData, isArchived: boolean): Promise<void> {
  const done = await archivePaper(await currentCaller(), String(form.get("paper")), isArchived);
  if (!done.ok) await showRefusal(done);
  revalidatePath("/desk/papers");
}

/** Puts the paper that the form names away. */
export async function putAway(form: FormData): Promise<void> {
  await archive(form, true);
}

/** Takes it back. */
export async function takeBack(form: FormData): Promise<void> {
  await archive(form, false);
}

/** Makes a copy of the paper that the form names, and leads to it. */
export async function copy(form: FormData): Promise<void> {
  const copied = await copyPaper(await currentCaller(), String(form.get("paper")));
  if (!copied.ok) await showRefusal(copied);
  else redirect(`/desk/papers/${copied.id}`);
}
