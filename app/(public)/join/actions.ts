"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { askAuth, currentCaller } from "@/app/_server/session";
import { joinClass } from "@/app/_server/use-cases/join-class";
import { joinWorkshop } from "@/app/_server/use-cases/join-workshop";

export async function join(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const input = textsOf(form);
  const joined = await joinWorkshop(await currentCaller(), input);
  if (!joined.ok) return problemOf(joined, input);
  await askAuth("/sign-in/username", { username: joined.signInName, password: input.password });
  redirect("/");
}

export type JoinClassState =
  | { readonly joined: string; readonly problem: null }
  | { readonly joined: null; readonly problem: FormProblem };

/** Puts whoever is signed in into the class of a code. */
export async function enterClass(_before: JoinClassState | null, form: FormData): Promise<JoinClassState> {
  const input = textsOf(form);
  const joined = await joinClass(await currentCaller(), input.joinCode);
  return joined.ok ? { joined: joined.name, problem: null } : { joined: null, problem: problemOf(joined, input) };
}
