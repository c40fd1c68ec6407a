"use server";

import { revalidatePath } from "next/cache";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { problemsByField } from "@/app/_server/input-problem";
import { sentenceFor } from "@/app/_server/messages";
import { refuse } from "@/app/_server/refusal";
import { askAuth, currentCaller } from "@/app/_server/session";
import { askForErasure, takeBackErasure } from "@/app/_server/use-cases/own-record";
import { endOwnSessions } from "@/app/_server/use-cases/own-sessions";
import { newPasswordSchema } from "@/lib/workshop";

export type PasswordState = { readonly isChanged: true } | { readonly isChanged: false; readonly problem: FormProblem };

export async function changePassword(_before: PasswordState | null, form: FormData): Promise<PasswordState> {
  const input = textsOf(form);
  const parsed = newPasswordSchema.safeParse(input);
  if (!parsed.success) {
    const problem = problemOf(refuse("invalid-input", { fields: problemsByField(parsed.error) }));
    return { isChanged: false, problem };
  }
  const { status } = await askAuth("/change-password", {
    currentPassword: input.currentPassword ?? "",
    newPassword: parsed.data.password,
    revokeOtherSessions: true,
  });
  if (status === 200) return { isChanged: true };
  const code = status === 429 ? "too-many-tries" : status === 401 ? "not-signed-in" : "wrong-password";
  return { isChanged: false, problem: problemOf(refuse(code)) };
}

export interface EndedState {
  readonly isGood: boolean;
  readonly told: string;
}

/** Signs out on the device that the form names, or on all but this one. */
export async function endSessions(_before: EndedState | null, form: FormData): Promise<EndedState> {
  const { session } = textsOf(form);
  const ended = await endOwnSessions(await currentCaller(), session ?? null);
  if (!ended.ok) return { isGood: false, told: sentenceFor(ended.code) };
  revalidatePath("/account");
  return { isGood: true, told: session ? "You are signed out there." : "You are signed out everywhere but here." };
}

export interface AskedState {
  readonly isGood: boolean;
  readonly told: string;
}

/** Asks to be erased, or takes that back. */
export async function changeErasureRequest(_before: AskedState | null, form: FormData): Promise<AskedState> {
  const isAsking = textsOf(form).to === "erase";
  const caller = await currentCaller();
  const done = await (isAsking ? askForErasure(caller) : takeBackErasure(caller));
  if (!done.ok) return { isGood: false, told: sentenceFor(done.code) };
  revalidatePath("/account");
  return { isGood: true, told: isAsking ? "Your tutor has been asked." : "Taken back: nothing is erased." };
}
