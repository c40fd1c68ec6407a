"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { refuse } from "@/app/_server/refusal";
import { askAuth, currentCaller } from "@/app/_server/session";
import { endOwnSessions } from "@/app/_server/use-cases/own-sessions";

/** Signs somebody in with the code of a slip, and whoever was signed in on this device before out. */
export async function signInWithSlip(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const { username = "", password = "" } = textsOf(form);
  const before = await currentCaller();
  const { status } = await askAuth("/sign-in/username", { username: username.trim(), password: password.trim() });
  if (status === 429) return problemOf(refuse("too-many-tries"), { username });
  if (status !== 200) return problemOf(refuse("slip-used"), { username });
  if (before.sessionId) await endOwnSessions(before, before.sessionId);
  redirect("/own-password");
}
