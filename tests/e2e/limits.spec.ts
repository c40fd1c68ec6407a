import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { LEARNER } from "./support/people";

test.use(LEARNER);

const rowOf = (page: Page, set: string) => page.locator(`tr[data-set="${set}"]`);
const number = (page: Page, label: string) => page.getByRole("textbox", { name: label, exact: true });
const slider = (page: Page, label: string) => page.getByRole("slider", { name: `${label}, slider` });
const THICKNESS = "Thickness of the thinner plate or of the wall, t";

/** What the bar of every set shows where the line of the measured size stands, and the outcome in its row of the table. */
const pictureAndTable = (page: Page) =>
  page.evaluate(() => {
    const line = document.querySelector("[data-measured] path") as SVGPathElement;
    const x = line.getBBox().x;
    return [...document.querySelectorAll<HTMLElement>("tr[data-set]")].map((row) => {
      const stretches = [...document.querySelectorAll<SVGRectElement>(`[data-bar="${row.dataset.set}"] rect`)];
      const under = stretches.find((rect) => {
        const box = rect.getBBox();
        return x > box.x && x <= box.x + box.width;
      });
      return { set: row.dataset.set, inTable: row.dataset.outcome, inPicture: under?.dataset.outcome };
    });
  });

async function expectAgreement(page: Page): Promise<void> {
  const sets = await pictureAndTable(page);
  expect(sets).toHaveLength(8);
  for (const { set, inTable, inPicture } of sets) expect(inPicture, set).toBe(inTable);
}

test("limits grow with the thickness under the arrow keys, and the address follows", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Limits", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Limits side by side" })).toBeVisible();
  await expect(page.getByText("Judge real work by your own copy of the standard")).toBeVisible();
  await expect(page.getByText("Practice only.")).toBeVisible();
  await expectAgreement(page);

  // ISO 5817:2014, table 1, row 1.7, level B: 0.05 t and 0.5 mm at most
  const levelB = rowOf(page, "iso-5817-2014-b");
  await expect(levelB).toContainText("0.05 × 8 = 0.4 mm");
  await expect(levelB).toContainText("reject");
  await slider(page, THICKNESS).focus();
  for (let n = 0; n < 12; n++) await page.keyboard.press("ArrowRight");
  await expect(number(page, THICKNESS)).toHaveValue("14");
  await expect(levelB).toContainText("0.05 × 14 = 0.7, capped at 0.5 mm");
  await expect(levelB).toHaveAttribute("data-outcome", "accept");
  await expectAgreement(page);
  await expect(page).toHaveURL(/[?&]t=14(&|$)/);

  await number(page, "Depth, h").fill("0,7");
  await expect(levelB).toHaveAttribute("data-outcome", "reject");
  await expect(rowOf(page, "iso-5817-2014-d")).toHaveAttribute("data-outcome", "accept");
  await expectAgreement(page);
  await expect(page).toHaveURL(/depth=0\.7/);
  await page.reload();
  await expect(number(page, "Depth, h")).toHaveValue("0.7");
  await expect(number(page, THICKNESS)).toHaveValue("14");
});

test("a number that is none is not taken, and the field says what would be right", async ({ page }) => {
  await page.goto("/limits");
  const thickness = number(page, THICKNESS);
  for (const [typed, problem] of [
    ["thick", "write a number, for example 12.5."],
    ["", "write a number, for example 12.5."],
    ["61", "from 0.5 to 60 mm."],
  ]) {
    await thickness.fill(typed);
    await expect(page.getByText(`${THICKNESS}: ${problem}`)).toBeVisible();
    await expect(thickness).toHaveAttribute("aria-invalid", "true");
    await expect(rowOf(page, "iso-5817-2014-b")).toContainText("0.05 × 8 = 0.4 mm");
  }
  await thickness.blur();
  await expect(page.getByText("“61” was not taken. From 0.5 to 60 mm. It stays at 8 mm.")).toBeVisible();
  await expect(thickness).toHaveValue("8");
  // on the border between the two rows of thin and thick plates
  await thickness.fill("3.01");
  await expect(rowOf(page, "iso-5817-2014-b")).toContainText("0.05 × 3.01");
  await thickness.fill("3");
  await expect(rowOf(page, "iso-5817-2014-b")).toContainText("not permitted");
  await expectAgreement(page);
});

test("an address is read, and what is wrong with it is named", async ({ page }) => {
  await page.goto("/limits?weld=fillet&type=excessive-convexity&t=12&b=20&height=2.5");
  await expect(page.getByLabel("Imperfection", { exact: true })).toHaveValue("excessive-convexity");
  await expect(rowOf(page, "iso-5817-2014-c")).toContainText("1 + 0.15 × 20 = 4.0 mm");
  await expectAgreement(page);

  await page.goto("/limits?weld=side&type=rust&t=thick&depth=99&length=5&length=6&aws=both");
  const problems = page.getByRole("alert").filter({ hasText: "In the address" });
  await expect(problems).toHaveCount(6);
  for (const [n, name] of [
    "type: “rust”",
    "weld: “side”",
    "aws: “both”",
    "t: “thick”",
    "depth: “99”",
    "length: it stands",
  ].entries()) {
    const order = await problems.allTextContents();
    expect(
      order.some((text) => text.includes(`In the address: ${name}`)),
      `${n} ${name}`,
    ).toBe(true);
  }
  await expectAgreement(page);
});

test("nothing in the page is out of reach: axe, and targets of 44 px", async ({ page }) => {
  for (const query of ["", "?weld=cap&type=longitudinal-crack", "?weld=fillet&type=surface-pore&t=abc"]) {
    await page.goto(`/limits${query}`);
    await expect(page.locator("[data-picture]")).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    const targets = page.locator("#main input, #main select");
    for (const target of await targets.all()) {
      expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    }
  }
});
