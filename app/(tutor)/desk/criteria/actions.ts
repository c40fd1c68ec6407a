"use server";

import { revalidatePath } from "next/cache";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { archiveCriteria } from "@/app/_server/use-cases/archive-criteria";

async function archive(form: FormData, isArchived: boolean): Promise<void> {
  const done = await archiveCriteria(await currentCaller(), String(form.get("set")), isArchived);
  if (!done.ok) await showRefusal(done);
  revalidatePath("/desk/criteria");
}

/** Puts the set that the form names away. */
export async function putAway(form: FormData): Promise<void> {
  await archive(form, true);
}

/** Takes it back. */
export async function takeBack(form: FormData): Promise<void> {
  await archive(form, false);
}
