import { readFileSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { accessOf, TUTOR } from "./support/people";

test("the passwords of the demo are gone once the page is left", async ({ page }) => {
  await page.goto("/setup");
  await expect(page.getByText("This workshop is set up already")).toBeVisible();
  await expect(page.getByRole("button", { name: "Open the demo workshop" })).toHaveCount(0);
});

test("somebody not signed in is asked to sign in, whatever they came for", async ({ page }) => {
  for (const path of ["/", "/history", "/desk", "/account", "/rule", "/limits", "/practice/no-such-id"]) {
    await page.goto(path);
    await expect(page, path).toHaveURL(path === "/" ? "/sign-in" : `/sign-in?to=${encodeURIComponent(path)}`);
  }
});

test("signing in leads on to the page somebody came for, and never off the site", async ({ page }) => {
  const { signInName, password } = accessOf("bruno");
  const signIn = async () => {
    await page.getByLabel("Sign-in name").fill(signInName);
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in" }).click();
  };
  await page.goto("/history");
  await signIn();
  await expect(page).toHaveURL("/history");
  await page.goto("/sign-in?to=%2Faccount");
  await expect(page, "signed in already").toHaveURL("/account");
  await page.getByRole("button", { name: "Sign out", exact: true }).click();
  await expect(page).toHaveURL("/sign-in");
  await page.goto("/sign-in?to=//elsewhere.example");
  await signIn();
  await expect(page).toHaveURL("/");
});

test("a learner makes an account, changes its password, signs out and in again", async ({ page }) => {
  await page.goto("/join");
  await page.getByLabel("Your name").fill("Robin Achterberg");
  await page.getByLabel("Sign-in name").fill("Robin");
  await page.getByLabel("Password", { exact: true }).fill("first password");
  await page.getByLabel("The same again").fill("another password");
  await page.getByRole("button", { name: "Make the account" }).click();
  await expect(page.getByText("The two passwords are not the same.")).toBeVisible();
  await expect(page.getByLabel("Your name")).toHaveValue("Robin Achterberg");
  await page.getByLabel("Password", { exact: true }).fill("first password");
  await page.getByLabel("The same again").fill("first password");
  await page.getByRole("button", { name: "Make the account" }).click();
  await expect(page.getByRole("heading", { name: "Good to see you, Robin" })).toBeVisible();

  await page.getByRole("link", { name: "Robin Achterberg" }).click();
  await page.getByLabel("Present password").fill("not my password");
  await page.getByLabel("New password").fill("second password");
  await page.getByLabel("The same again").fill("second password");
  await page.getByRole("button", { name: "Change it" }).click();
  await expect(page.getByText("The present password is not right")).toBeVisible();
  await page.getByLabel("Present password").fill("first password");
  await page.getByLabel("New password").fill("second password");
  await page.getByLabel("The same again").fill("second password");
  await page.getByRole("button", { name: "Change it" }).click();
  await expect(page.getByText("Your password is changed")).toBeVisible();

  await page.getByRole("button", { name: "Save the whole record" }).click();
  const saving = page.waitForEvent("download");
  await page.getByRole("link", { name: "Everything, as JSON" }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe("toeline-record-of-robin.json");
  expect(JSON.parse(readFileSync(await file.path(), "utf8"))).toMatchObject({ person: { name: "Robin Achterberg" } });
  await page.getByRole("button", { name: "Close" }).click();
  await page.getByRole("button", { name: "Ask to be erased" }).click();
  await page.getByRole("button", { name: "Ask for it" }).click();
  await expect(page.getByText("You asked to be erased on")).toBeVisible();
  await page.getByRole("button", { name: "Take that back" }).click();
  await expect(page.getByText("Taken back: nothing is erased.")).toBeVisible();

  await page.getByRole("button", { name: "Sign out" }).click();
  await expect(page).toHaveURL("/sign-in");
  await page.getByLabel("Sign-in name").fill("ROBIN");
  await page.getByLabel("Password").fill("first password");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByText("The sign-in name or the password is not right")).toBeVisible();
  await page.getByLabel("Password").fill("second password");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByRole("heading", { name: "Good to see you, Robin" })).toBeVisible();

  await page.goto("/desk");
  await expect(page, "a learner has no desk").toHaveURL("/");
});

test.describe("the tutor", () => {
  test.use(TUTOR);

  test("adds a learner and decides who may make accounts", async ({ page, browser }) => {
    await page.goto("/desk");
    const form = page.getByRole("region", { name: "Add a learner" });
    await form.getByLabel("Name", { exact: true }).fill("Noor Beck");
    await form.getByLabel("Sign-in name").fill("noor");
    await form.getByRole("button", { name: "Make the account" }).click();
    const slip = page.getByRole("region", { name: "One sign-in slip" });
    await expect(form.getByText("Noor Beck signs in as noor.")).toBeVisible();
    await expect(slip).toBeFocused();
    const learners = page.getByRole("region", { name: "Learners in no class" });
    await expect(learners.getByRole("rowheader", { name: "Noor Beck" })).toContainText("no own password yet");

    // a new code is given after a question only, and its slip replaces the first one
    await page.getByRole("button", { name: "New code for Noor Beck" }).click();
    const question = page.getByRole("dialog", { name: "A new one-time code for Noor Beck?" });
    await expect(question).toContainText("Noor's present password stops working at once");
    await question.getByRole("button", { name: "Keep the present password" }).click();
    await expect(question).toBeHidden();
    await expect(form.getByText("Noor Beck signs in as noor."), "nothing was changed").toBeVisible();
    await page.getByRole("button", { name: "New code for Noor Beck" }).click();
    await question.getByRole("button", { name: "Make a new code" }).click();
    await expect(learners.getByText("Noor Beck signs in as noor.")).toBeVisible();
    await expect(slip, "one slip at a time").toHaveCount(1);
    await expect(slip).toBeFocused();

    await page.getByRole("link", { name: "Noor Beck" }).click();
    await expect(page.getByRole("heading", { name: "Noor Beck" })).toBeVisible();
    await expect(page.getByText("no pieces handed in, none unfinished")).toBeVisible();
    await page.getByRole("link", { name: "Back to the desk" }).click();

    await page.getByLabel("Learners may make their own accounts").uncheck();
    await page.getByRole("button", { name: "Store" }).click();
    await expect(page.getByText("Plates taken from now on go by it.")).toBeVisible();
    const visitor = await (await browser.newContext({ storageState: undefined })).newPage();
    await visitor.goto("/join");
    await expect(visitor.getByText("The tutor makes the accounts in this workshop")).toBeVisible();
    await visitor.getByLabel("Join code").fill("KMT-4RW");
    await visitor.getByLabel("Your name").fill("Noor Becker");
    await visitor.getByLabel("Sign-in name").fill("noor.becker");
    await visitor.getByLabel("Password", { exact: true }).fill("torch and mirror");
    await visitor.getByLabel("The same again").fill("torch and mirror");
    await visitor.getByRole("button", { name: "Make the account" }).click();
    await expect(visitor.getByText("No class takes that join code now")).toBeVisible();
    await visitor.context().close();

    await page.getByLabel("Learners may make their own accounts").check();
    await page.getByRole("button", { name: "Store" }).click();
    await expect(page.getByText("Plates taken from now on go by it.")).toBeVisible();
  });
});

test("a request from another site changes nothing", async ({ request }) => {
  const foreign = { origin: "http://elsewhere.example" };
  expect((await request.post("/api/practice", { data: {}, headers: foreign })).status()).toBe(403);
  const signIn = await request.post("/api/auth/sign-in/username", {
    data: { username: "ilse", password: "guess guess" },
    headers: { ...foreign, cookie: "any=1" },
  });
  expect(signIn.status()).toBe(403);
});

test("the sign-in library makes no accounts and tells nothing about names", async ({ request }) => {
  for (const path of ["sign-up/email", "is-username-available", "sign-in/email", "list-sessions"]) {
    expect((await request.post(`/api/auth/${path}`, { data: {} })).status(), path).toBe(404);
  }
});
