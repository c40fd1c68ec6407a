import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { rememberAsWeak } from "./support/known-learner";
import { joinAs } from "./support/people";

test.setTimeout(300_000);

/** Until one is chosen and made, behind whatever other tests have ordered. */
const MADE_WITHIN_MS = 180_000;

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).include("main").analyze();
  expect(violations.map(({ id, nodes }) => `${id} ${nodes[0].html}`)).toEqual([]);
}

test("Today leads to the piece that was chosen, and its mark sheet says why once that is asked for, all by keyboard", async ({
  page,
}) => {
  await joinAs(page, "Vida Morrow", "vida");
  const next = page.getByRole("button", { name: "Inspect your next plate" });
  await expect(next, "nobody has to wait for the choice").toBeEnabled();
  await expect(page.getByText("It is kept for you alone.")).toBeVisible({ timeout: MADE_WITHIN_MS });
  await expect(page.getByText(/^Nothing is known of you yet/)).toBeVisible();
  await expectAccessible(page);
  await next.press("Enter");
  await expect(page).toHaveURL(/\/practice\/[\w-]+$/);
  const handIn = page.getByRole("button", { name: "Hand in", exact: true });
  await expect(handIn.first()).toBeVisible({ timeout: MADE_WITHIN_MS });
  const id = new URL(page.url()).pathname.split("/")[2];
  const count = rememberAsWeak(id);

  // nothing is reported, so everything is missed
  await handIn.first().press("Enter");
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Close the report and go on to the questions" }).press("Enter");
  await expect(page.locator("[data-stem]")).toBeVisible();
  await handIn.first().press("Enter");
  await dialog.getByRole("button", { name: "Hand in" }).press("Enter");
  await expect(page).toHaveURL(`/practice/${id}/marks`);
  await expect(page.getByText(`None of the ${count} indications was called.`)).toBeVisible();

  const reason = page.getByText(/^This piece was chosen because you found .+ too seldom\.$/);
  await expect(reason, "it names what was missed").toBeHidden();
  await expectAccessible(page);
  const why = page.locator("summary", { hasText: "Why this piece was chosen (tells what you missed)" });
  await page.getByRole("heading", { level: 1 }).click();
  for (let n = 0; n < 30 && !(await why.evaluate((summary) => summary === document.activeElement)); n++) {
    await page.keyboard.press("Tab");
  }
  await expect(why).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(reason).toBeVisible();
  await expectAccessible(page);

  await page.getByRole("link", { name: "On to the next piece" }).press("Enter");
  await expect(page).toHaveURL("/");
  await expect(next).toBeEnabled();
});
