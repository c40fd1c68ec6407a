import { expect, type Page, test } from "@playwright/test";
import { LEARNER, OTHER_LEARNER, rememberAccess, TUTOR } from "./support/people";

const SIGNED_IN = [
  { name: "Maren", session: TUTOR, lands: "/desk" },
  { name: "Ilse", session: LEARNER, lands: "/" },
  { name: "Bruno", session: OTHER_LEARNER, lands: "/" },
];

test("the first visitor opens the demo workshop and notes down its passwords", async ({ page, browser }) => {
  await page.goto("/");
  await expect(page).toHaveURL("/setup");
  await page.getByRole("button", { name: "Open it with people only" }).click();
  await expect(page.getByText("They are not shown again")).toBeVisible();
  const people = await readPasswords(page);
  expect(people).toHaveLength(5);
  rememberAccess(people);

  for (const { name, session, lands } of SIGNED_IN) {
    const access = people.find(({ signInName }) => signInName === name.toLowerCase());
    if (!access) throw new Error(`${name} is not in the demo workshop`);
    const context = await browser.newContext();
    const own = await context.newPage();
    await own.goto("/sign-in");
    await own.getByLabel("Sign-in name").fill(access.signInName);
    await own.getByLabel("Password").fill(access.password);
    await own.getByRole("button", { name: "Sign in" }).click();
    await expect(own).toHaveURL(lands);
    await context.storageState({ path: session.storageState });
    await context.close();
  }

  await page.getByRole("button", { name: "Begin as Sana" }).click();
  await expect(page.getByRole("heading", { name: "Good to see you, Sana" })).toBeVisible();
});

async function readPasswords(page: Page) {
  const signInNames = await page.locator("tbody td:nth-of-type(1)").allTextContents();
  const passwords = await page.locator("tbody td:nth-of-type(2)").allTextContents();
  return signInNames.map((signInName, i) => ({ signInName, password: passwords[i] }));
}
