"use server";

import { revalidatePath } from "next/cache";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { addLearner } from "@/app/_server/use-cases/add-learner";
import { changeWorkshopSettings } from "@/app/_server/use-cases/change-workshop-settings";
import { renewPassword } from "@/app/_server/use-cases/renew-password";

/** Where on the desk a password was asked for. */
export type AccessAsked = "new-account" | "new-password";

/** An account and its password, which is told once. */
export interface NewAccess {
  readonly asked: AccessAsked;
  readonly name: string;
  readonly signInName: string;
  readonly password: string;
}

export interface AccessState {
  /** The one slip that lies on the desk; an older one may name a password that works no more. */
  readonly slip: NewAccess | null;
  readonly problem: (FormProblem & { readonly asked: AccessAsked }) | null;
}

/** A new account, or a new password for the learner whom the form names. */
export async function giveAccess({ slip }: AccessState, form: FormData): Promise<AccessState> {
  const input = textsOf(form);
  const caller = await currentCaller();
  const asked = input.learner === undefined ? "new-account" : "new-password";
  const given = asked === "new-account" ? await addLearner(caller, input) : await renewPassword(caller, input.learner);
  if (!given.ok) return { slip, problem: { ...problemOf(given, input), asked } };
  const { name, signInName, password } = given;
  revalidatePath("/desk");
  return { slip: { asked, name, signInName, password }, problem: null };
}

export type SettingsState = { readonly isStored: true } | { readonly isStored: false; readonly problem: FormProblem };

export async function changeSettings(_before: SettingsState | null, form: FormData): Promise<SettingsState> {
  const input = textsOf(form);
  const changed = await changeWorkshopSettings(await currentCaller(), {
    name: input.name,
    allowsOwnAccounts: input.allowsOwnAccounts === "on",
    passMarks: { plate: Number(input.plate), fillet: Number(input.fillet) },
  });
  if (!changed.ok) return { isStored: false, problem: problemOf(changed, input) };
  revalidatePath("/desk");
  return { isStored: true };
}
