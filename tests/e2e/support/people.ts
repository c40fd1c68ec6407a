import { readFileSync, writeFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";

/** Sessions of the demo workshop's people, signed in once by first-start.setup.ts; pass one to `test.use`. */
export const TUTOR = { storageState: "test-results/tutor.json" };
export const LEARNER = { storageState: "test-results/learner.json" };
export const OTHER_LEARNER = { storageState: "test-results/other-learner.json" };

const FILE = "test-results/people.json";

export interface Access {
  readonly signInName: string;
  readonly password: string;
}

export function rememberAccess(people: readonly Access[]): void {
  writeFileSync(FILE, JSON.stringify(people));
}

/** The sign-in of one of the demo workshop's people. */
export function accessOf(signInName: string): Access {
  const people = JSON.parse(readFileSync(FILE, "utf8")) as readonly Access[];
  const access = people.find((person) => person.signInName === signInName);
  if (!access) throw new Error(`nobody signs in as ${signInName}`);
  return access;
}

/** A new learner, so that the bench is empty. */
export async function joinAs(page: Page, name: string, signInName: string): Promise<void> {
  await page.goto("/join");
  await page.getByLabel("Your name").fill(name);
  await page.getByLabel("Sign-in name").fill(signInName);
  await page.getByLabel("Password", { exact: true }).fill("torch and mirror");
  await page.getByLabel("The same again").fill("torch and mirror");
  await page.getByRole("button", { name: "Make the account" }).click();
  await expect(page.getByRole("heading", { name: `Good to see you, ${name.split(" ")[0]}` })).toBeVisible();
}
