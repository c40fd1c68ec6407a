"use server";

import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { refuse } from "@/app/_server/refusal";
import { askAuth, goHome } from "@/app/_server/session";

export async function signIn(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const { username = "", password = "", to } = textsOf(form);
  const { status } = await askAuth("/sign-in/username", { username: username.trim(), password });
  if (status === 429) return problemOf(refuse("too-many-tries"), { username });
  if (status !== 200) return problemOf(refuse("wrong-sign-in"), { username });
  return goHome(to);
}
