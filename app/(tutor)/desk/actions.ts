"use server";

import { revalidatePath } from "next/cache";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { currentCaller } from "@/app/_server/session";
import { addLearner, addTutor } from "@/app/_server/use-cases/add-person";
import { changeWorkshopSettings } from "@/app/_server/use-cases/change-workshop-settings";
import { makeCodes } from "@/app/_server/use-cases/make-codes";
import { signOutLearner } from "@/app/_server/use-cases/sign-out-learner";
import type { SignInSlip } from "@/lib/workshop";

/** Where on the desk a one-time code was asked for. */
export type AccessAsked = "new-learner" | "new-tutor" | "new-code";

export interface AccessState {
  /** The one slip that lies on the desk; an older one may name a code that works no more. */
  readonly given: { readonly asked: AccessAsked; readonly slip: SignInSlip } | null;
  readonly problem: (FormProblem & { readonly asked: AccessAsked }) | null;
}

/** A new account, or a new code for the learner whom the form names. */
export async function giveAccess({ given }: AccessState, form: FormData): Promise<AccessState> {
  const input = textsOf(form);
  const caller = await currentCaller();
  const asked = input.learner !== undefined ? "new-code" : input.asked === "new-tutor" ? "new-tutor" : "new-learner";
  const made = await (asked === "new-code"
    ? makeCodes(caller, [input.learner])
    : asked === "new-tutor"
      ? addTutor(caller, input)
      : addLearner(caller, input));
  if (!made.ok) return { given, problem: { ...problemOf(made, input), asked } };
  revalidatePath("/desk", "layout");
  return { given: { asked, slip: "slips" in made ? made.slips[0] : made.slip }, problem: null };
}

export type SignOutState = { readonly told: string } | { readonly problem: FormProblem };

/** Signs a learner out everywhere. */
export async function signOutEverywhere(_before: SignOutState | null, form: FormData): Promise<SignOutState> {
  const { learner = "" } = textsOf(form);
  const done = await signOutLearner(await currentCaller(), learner);
  if (!done.ok) return { problem: problemOf(done) };
  const devices = done.ended === 1 ? "one device" : `${done.ended || "no"} devices`;
  return { told: `${done.learner.name} was signed in on ${devices} and is signed out now. The password still works.` };
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
