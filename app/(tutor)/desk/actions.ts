"use server";

import { revalidatePath } from "next/cache";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { addLearner } from "@/app/_server/use-cases/add-learner";
import { changeWorkshopSettings } from "@/app/_server/use-cases/change-workshop-settings";
import { renewPassword } from "@/app/_server/use-cases/renew-password";

/** An account and its password, which is told once. */
export interface NewAccess {
  readonly name: string;
  readonly signInName: string;
  readonly password: string;
}
export type AccessState =
  | { readonly isGiven: true; readonly access: NewAccess }
  | { readonly isGiven: false; readonly problem: FormProblem };

export async function add(_before: AccessState | null, form: FormData): Promise<AccessState> {
  const input = textsOf(form);
  const added = await addLearner(await currentCaller(), input);
  if (!added.ok) return { isGiven: false, problem: problemOf(added, input) };
  const { name, signInName, password } = added;
  revalidatePath("/desk");
  return { isGiven: true, access: { name, signInName, password } };
}

export async function renew(_before: AccessState | null, form: FormData): Promise<AccessState> {
  const renewed = await renewPassword(await currentCaller(), textsOf(form).learner ?? "");
  if (!renewed.ok) return { isGiven: false, problem: problemOf(renewed) };
  const { name, signInName, password } = renewed;
  return { isGiven: true, access: { name, signInName, password } };
}

export type SettingsState = { readonly isStored: true } | { readonly isStored: false; readonly problem: FormProblem };

export async function changeSettings(_before: SettingsState | null, form: FormData): Promise<SettingsState> {
  const input = textsOf(form);
  const changed = await changeWorkshopSettings(await currentCaller(), {
    name: input.name,
    allowsOwnAccounts: input.allowsOwnAccounts === "on",
    passMarks: { cap: Number(input.cap), root: Number(input.root) },
  });
  if (!changed.ok) return { isStored: false, problem: problemOf(changed, input) };
  revalidatePath("/desk");
  return { isStored: true };
}
