"use server";

import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { problemsByField } from "@/app/_server/input-problem";
import { refuse } from "@/app/_server/refusal";
import { askAuth } from "@/app/_server/session";
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
