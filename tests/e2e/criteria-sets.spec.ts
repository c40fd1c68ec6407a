import { readFileSync } from "node:fs";
import AxeBuilder from "@axe-core/playwright";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { LEARNER, TUTOR } from "./support/people";

test.use(TUTOR);

const tryIt = (page: Page): Locator => page.locator("[data-try]");
const tried = (page: Page): Locator =>
  tryIt(page)
    .getByRole("status")
    .filter({ hasText: /accept|reject|judged|limit/ });
const triedNumber = (page: Page, label: string) => tryIt(page).getByRole("textbox", { name: label, exact: true });

async function begin(page: Page, base: string): Promise<void> {
  await page.goto("/desk/criteria/new");
  await page.getByLabel("It builds on").selectOption({ value: base });
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(page.getByRole("heading", { name: "Rows of your own" })).toBeVisible();
}

/** A set with one row: undercut at most so deep on the cap. */
async function writeUndercut(page: Page, name: string, deepest: string): Promise<void> {
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("Document and edition").fill("Workshop sheet 4 of March 2026");
  await page.getByLabel("Search the catalogue").fill("undercut");
  await page.getByRole("checkbox", { name: "Continuous undercut" }).check();
  await page.getByRole("checkbox", { name: "Intermittent undercut" }).check();
  for (const face of ["root face", "Fillet weld"]) await page.getByLabel(face).uncheck();
  await page.getByLabel("Constant, mm").fill(deepest);
}

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
}

test("a tutor adds an in-house limit, sees it read back, tries it, and everybody sees it beside the standards", async ({
  page,
  browser,
}) => {
  await page.goto("/desk");
  await page.getByRole("link", { name: /Criteria of your own/ }).click();
  await expect(page.getByText("Judge real work by your own copy of the standard")).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("link", { name: "New set" }).click();
  await expect(page.getByText("Judge real work by your own copy of the standard")).toBeVisible();
  await expectAccessible(page);
  await begin(page, "iso-5817-2014-c");
  await writeUndercut(page, "Deck plates", "0,3");
  await expect(page.locator("[data-reads]")).toContainText("h ≤ 0.3 mm");
  await expect(page.locator("[data-reads]")).toContainText("Continuous undercut, intermittent undercut, on cap face");

  // under the workshop's limit, and over it: ISO 5817:2014 row 1.7 at level C would allow 0.5 mm here
  await triedNumber(page, "Depth, h").fill("0.3");
  await expect(tried(page)).toContainText("accept up to 0.3 mm, then reject");
  await expect(tried(page)).toContainText("measured 0.3 mm: accept");
  await triedNumber(page, "Depth, h").fill("0.45");
  await expect(tried(page)).toContainText("Row 1 Continuous undercut: h ≤ 0.3 mm: measured 0.45 mm: reject");
  // what the row does not speak of goes by ISO 5817:2014 row 1.10 at level C: 1 mm + 0.15 b
  await tryIt(page).getByLabel("Imperfection").selectOption({ label: "502 Excess weld metal" });
  await expect(tried(page)).toContainText("1 + 0.15 × 14 = 3.1 mm");
  await expectAccessible(page);

  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByText("Stored. Practices begun before keep")).toBeVisible();
  await expect(page).toHaveURL(/\/desk\/criteria\/in-house-[0-9a-f]{16}$/);
  const id = page.url().split("/").pop() as string;

  await page.reload();
  await expect(page.getByRole("heading", { name: "Deck plates", level: 1 })).toBeVisible();
  await page.getByRole("button", { name: "Change row 1" }).click();
  await expect(page.getByLabel("Constant, mm")).toHaveValue("0.3");
  await page.getByRole("link", { name: "Back to the sets" }).click();
  const row = page.locator(`tr[data-set="${id}"]`);
  await expect(row).toContainText("ISO 5817, quality level C");

  await row.getByRole("link", { name: "Compare Deck plates" }).click();
  await expect(page.locator("tr[data-set]")).toHaveCount(4);
  await expect(page.locator(`tr[data-set="${id}"]`)).toContainText("accept up to 0.3 mm, then reject");
  await expect(page.locator(`[data-bar="${id}"] rect`).first()).toHaveAttribute("data-to", "0.3");
  await expectAccessible(page);

  // a learner chooses it there
  const context = await browser.newContext(LEARNER);
  const learner = await context.newPage();
  await learner.goto("/limits");
  await expect(learner.locator("tr[data-set]")).toHaveCount(8);
  await learner.getByRole("checkbox", { name: "Deck plates, in-house" }).check();
  await expect(learner.locator(`tr[data-set="${id}"]`)).toContainText("h ≤ 0.3 mm");
  await expect(learner).toHaveURL(new RegExp(`sets=.*${id}`));
  await learner.goto("/desk/criteria");
  await expect(learner).toHaveURL("/");
  await context.close();
});

test("what is wrong is said at its field, and nothing is stored before it is put right", async ({ page }) => {
  await begin(page, "");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByRole("alert").filter({ hasText: "nothing was stored" })).toBeVisible();
  await expect(page.getByLabel("Name", { exact: true })).toBeFocused();
  await expect(page.getByLabel("Name", { exact: true })).toHaveAccessibleDescription("A text of 1 to 120 characters.");
  await expectAccessible(page);

  await writeUndercut(page, "Pipe supports", "deep");
  const constant = page.getByLabel("Constant, mm");
  await constant.blur();
  await expect(constant).toHaveAttribute("aria-invalid", "true");
  await expect(constant).toHaveAccessibleDescription("A number of 0 or more.");
  await constant.fill("");
  await page.getByLabel("+ coefficient").fill("0.05");
  await page.getByLabel("× symbol").focus();
  await page.getByLabel("× symbol").blur();
  await expect(page.getByLabel("× symbol")).toHaveAccessibleDescription(/go together, like 0.1 and t/);
  await page.getByLabel("× symbol").selectOption({ value: "t" });
  await page.getByLabel("Capped at, mm").fill("0.4");
  await expect(page.locator("[data-reads]")).toContainText("h ≤ 0.05 t, at most 0.4 mm");
  await page.getByRole("button", { name: "Add a range of thickness" }).click();
  await page.getByLabel("Least, mm").fill("12");
  await page.getByLabel("Most, mm").fill("6");
  await page.getByLabel("Most, mm").blur();
  await expect(page.getByLabel("Most, mm")).toHaveAccessibleDescription("More than the lower edge, 12 mm.");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByLabel("Most, mm")).toBeFocused();
  await page.getByLabel("Most, mm").fill("20");

  await page.getByRole("button", { name: "Add a rule for several together" }).click();
  await page.getByLabel("At most, mm").fill("30");
  await page.getByLabel("In any, mm").fill("200");
  await expect(page.locator("[data-reads]")).toContainText("summed length at most 30 mm in any 200 mm");
  await expect(page.locator("[data-reads]")).toContainText("t over 12 up to 20 mm");
  // a thickness that the row leaves out has no limit, and is not accepted
  await expect(tried(page)).toContainText("Pipe supports speaks of it only for t over 12 up to 20 mm");
  await triedNumber(page, "Thickness of the thinner plate or of the wall, t").fill("16");
  await expect(tried(page)).toContainText("0.05 × 16 = 0.8, capped at 0.4 mm");

  // a row that is removed comes back where it was
  await page.getByRole("button", { name: "Add a row" }).click();
  await expect(page.locator("[data-row]")).toHaveCount(2);
  await page.getByRole("button", { name: "Remove row 1" }).click();
  await expect(page.locator("[data-row]")).toHaveCount(1);
  await page.getByRole("button", { name: "Put it back" }).press("Enter");
  await expect(page.locator("[data-reads]").first()).toContainText("at most 0.4 mm");
  await page.getByRole("button", { name: "Remove row 2" }).click();
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByText("Stored. Practices begun before keep")).toBeVisible();
});

test("rows are taken over from the standard; the set goes out and comes back as text", async ({ page }) => {
  await begin(page, "iso-5817-2014-c");
  await page.getByRole("button", { name: "Remove row 1" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Taken over");
  await page.getByLabel("Document and edition").fill("Workshop sheet 5");
  await page.getByLabel(/Or take rows over from ISO 5817/).selectOption({ value: "1.7" });
  await page.getByRole("button", { name: "Take over" }).click();
  await expect(page.locator("[data-reads]").first()).toContainText("t from 0.5 up to 3 mm");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByText("Stored. Practices begun before keep")).toBeVisible();

  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save your rows as a file" }).click();
  const file = await (await download).path();
  const text = readFileSync(file, "utf8");

  await page.goto("/desk/criteria/new");
  await page.getByLabel("Or the text itself").fill(text.replace('"name": "Taken over"', '"name": ""'));
  await page.getByRole("button", { name: "Read the text" }).click();
  const told = page.getByRole("alert").filter({ hasText: "Nothing was taken" });
  await expect(told).toContainText("name: a text of 1 to 120 characters");
  await page.getByLabel("Or the text itself").fill("{");
  await page.getByRole("button", { name: "Read the text" }).click();
  await expect(told).toContainText("the whole text: JSON text, as criteria are saved");
  await expectAccessible(page);
  await page.getByLabel("File", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Read the text" }).click();
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Taken over");
  await expect(page.locator("[data-reads]").first()).toContainText("t from 0.5 up to 3 mm");
});

test("of two who change a set at once the later one is told, and loses nothing", async ({ page, context }) => {
  await begin(page, "iso-5817-2014-b");
  await writeUndercut(page, "Both at once", "0.2");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByText("Stored. Practices begun before keep")).toBeVisible();
  const other = await context.newPage();
  await other.goto(page.url());
  await other.getByLabel("Notes").first().fill("From the other window");
  await other.getByRole("button", { name: "Store", exact: true }).click();
  await expect(other.getByText("Stored. Practices begun before keep")).toBeVisible();

  const notes = page.getByLabel("Notes").first();
  await notes.fill("From this window");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await expect(page.getByRole("alert").filter({ hasText: "stored from another window" })).toBeVisible();
  await expect(notes).toHaveValue("From this window");
  await expectAccessible(page);
  // leaving without storing keeps it in this window
  await page.getByRole("link", { name: "Back to the sets" }).click();
  await page.getByRole("link", { name: "Both at once", exact: true }).click();
  await expect(notes).toHaveValue("From the other window");
  await page.getByRole("button", { name: "Take it up again" }).click();
  await expect(notes).toHaveValue("From this window");
  await page.getByRole("button", { name: "Store", exact: true }).click();
  await page.getByRole("button", { name: "Store mine in their place" }).click();
  await expect(page.getByText("Stored. Practices begun before keep")).toBeVisible();
  await other.reload();
  await expect(other.getByLabel("Notes").first()).toHaveValue("From this window");

  await page.getByRole("link", { name: "Back to the sets" }).click();
  await page.getByRole("button", { name: "Put away: Both at once" }).click();
  await expect(page.getByRole("button", { name: "Take back: Both at once" })).toBeVisible();
  await page.getByRole("button", { name: "Take back: Both at once" }).click();
  await expect(page.getByRole("button", { name: "Put away: Both at once" })).toBeVisible();
});

test("targets are 44 px high", async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await begin(page, "iso-5817-2014-c");
  await page.getByRole("button", { name: "Add a range of thickness" }).click();
  await page.getByRole("button", { name: "Add a rule for several together" }).click();
  await expectAccessible(page);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("#main input, #main select, #main button, #main textarea")]
      .map((element) => (element.closest("label") ?? element).getBoundingClientRect())
      .filter(({ height }) => height > 0 && height < 44)
      .map(({ x, y, height }) => [x, y, height]),
  );
  expect(small).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1024);
});
