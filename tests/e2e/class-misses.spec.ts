import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { OwnServer, PASSWORD } from "./support/own-server";

// of its own: nobody is erased while a sitting is on, and on the shared server one may be
const server = new OwnServer(Number(process.env.PORT ?? 3213) + 1002, `${process.cwd()}/test-results/class-misses.db`);

test.setTimeout(120_000);
test.beforeAll(async () => {
  server.seed(["tests/support/seed-missed.ts", PASSWORD]);
  await server.start();
});
test.afterAll(() => server.kill());

async function signIn(page: Page, name: string): Promise<void> {
  await page.goto(`${server.address}/sign-in`);
  await page.getByLabel("Sign-in name").fill(name);
  await page.getByLabel("Password").fill(PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).not.toHaveURL(/sign-in/);
}

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id} ${nodes[0].html}`)).toEqual([]);
}

test("what a class misses is set as a paper with one press, looked over and saved", async ({ page }) => {
  await signIn(page, "maren");
  await page.goto(`${server.address}/desk/classes/class/progress`);
  const teach = page.getByRole("region", { name: "What to teach next" });
  await expect(teach).toContainText("From 20 sections of practice");
  await expect(teach).toContainText(/surface pore and root concavity|root concavity and surface pore/);
  await expectAccessible(page);
  await teach.getByRole("button", { name: "Set as a paper" }).press("Enter");

  await expect(page).toHaveURL(/\/desk\/papers\/[\w-]{10,}\?from=class$/);
  const chips = page.locator("[data-types=plate]").getByRole("list", { name: "Must be on it" });
  await expect(chips.getByRole("listitem")).toHaveCount(2);
  for (const type of ["Surface pore", "Root concavity"]) await expect(chips).toContainText(type);
  await expect(page.locator("[data-blueprint=plate]")).toContainText("Yes: 8 of 8 pieces");
  await expectAccessible(page);
  await page.getByLabel("Name of the paper").fill("Pores and hollow roots");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await expect(page.getByText(/^Saved as version \d\.$/)).toBeVisible();
  await page.goto(`${server.address}/desk/papers`);
  await expect(page.getByRole("row", { name: /Pores and hollow roots/ })).toBeVisible();
});

test("a learner is erased once their sign-in name is typed, and is nobody from then on", async ({ page, browser }) => {
  const own = await (await browser.newContext({ storageState: undefined })).newPage();
  await signIn(own, "pia");
  await expect(own.getByRole("heading", { name: "Good to see you, Pia" })).toBeVisible();

  await signIn(page, "maren");
  await page.goto(`${server.address}/desk/pia`);
  await page.getByRole("link", { name: /^Erase/ }).click();
  await expect(page.getByRole("heading", { name: "Erase Pia Lund" })).toBeVisible();
  await expect(page.getByText("20 practice pieces, with reports, marks and where they looked")).toBeVisible();
  await expectAccessible(page);
  const name = page.getByLabel("Type pia to confirm");
  await name.fill("jon");
  await name.press("Enter");
  await expect(name).toHaveAttribute("aria-invalid", "true");
  await expect(name).toHaveValue("jon");
  await name.fill("Pia");
  await name.press("Enter");

  await expect(page).toHaveURL(`${server.address}/desk/records?erased=yes`);
  await expectAccessible(page);
  expect((await page.goto(`${server.address}/desk/pia`))?.status()).toBe(404);
  await page.goto(`${server.address}/desk/classes/class`);
  await expect(page.getByRole("rowheader", { name: "Jon Adeyemi" })).toBeVisible();
  await expect(page.locator("main")).not.toContainText("Pia");
  await page.goto(`${server.address}/desk/classes/class/progress`);
  await expect(page.getByText("What to teach this class comes here")).toBeVisible();

  await own.goto(`${server.address}/`);
  await expect(own, "the device is signed out").toHaveURL(/\/sign-in/);
  await own.getByLabel("Sign-in name").fill("pia");
  await own.getByLabel("Password").fill(PASSWORD);
  await own.getByRole("button", { name: "Sign in" }).click();
  await expect(own.getByText("The sign-in name or the password is not right")).toBeVisible();
  await own.context().close();
});
