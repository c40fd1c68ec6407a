"use server";

import { redirect } from "next/navigation";
import { type FormProblem, problemOf, textsOf } from "@/app/_server/form-state";
import { askAuth, goHome } from "@/app/_server/session";
import { type DemoAccount, openDemoWorkshop } from "@/app/_server/use-cases/open-demo-workshop";
import { setUpWorkshop } from "@/app/_server/use-cases/set-up-workshop";

const clock = () => new Date();

export async function setUp(_before: FormProblem | null, form: FormData): Promise<FormProblem | null> {
  const input = textsOf(form);
  const done = await setUpWorkshop({ clock }, input);
  if (!done.ok) return problemOf(done, input);
  await askAuth("/sign-in/username", { username: done.signInName, password: input.password });
  return goHome();
}

export type { DemoAccount };

export type DemoState =
  | {
      readonly step: "opened";
      readonly workshop: string;
      readonly accounts: readonly DemoAccount[];
      readonly withPast: boolean;
    }
  | { readonly step: "refused"; readonly problem: FormProblem };

export async function openDemo(_before: DemoState | null, form: FormData): Promise<DemoState> {
  const withPast = textsOf(form).past !== "none";
  const opened = await openDemoWorkshop({ clock }, { withPast });
  if (!opened.ok) return { step: "refused", problem: problemOf(opened) };
  return { step: "opened", workshop: opened.workshop, accounts: opened.accounts, withPast };
}

export async function signInFromDemo(form: FormData): Promise<void> {
  const { username, password } = textsOf(form);
  const { status } = await askAuth("/sign-in/username", { username, password });
  if (status !== 200) redirect("/sign-in");
  return goHome();
}
