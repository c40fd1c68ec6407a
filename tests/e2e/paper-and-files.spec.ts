import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import Papa from "papaparse";
import { handInPiece } from "./support/handed-in";
import { joinAs, TUTOR } from "./support/people";
import { send, takeFreshPlate } from "./support/practice";

test.setTimeout(420_000);

const FOLDER = "test-results/prints";
/** A4 in points, ISO 216 at 72 to the inch. */
const A4 = { short: (210 / 25.4) * 72, long: (297 / 25.4) * 72 };

interface Printed {
  readonly pages: number;
  readonly isAcross: boolean;
}

/** Prints what is open to a PDF once it is whole; every page must be A4, and nothing on it wider than the paper. */
async function print(page: Page, name: string): Promise<Printed> {
  await expect(page.locator("[data-ready]")).toHaveAttribute("data-ready", "true", { timeout: 300_000 });
  await page.emulateMedia({ media: "print" });
  const cut = await page.locator(".paper").evaluate((paper) => {
    const edge = paper.getBoundingClientRect();
    const isOut = (element: Element) => {
      const box = element.getBoundingClientRect();
      return box.width > 0 && (box.right > edge.right + 1 || box.left < edge.left - 1);
    };
    const isCut = (element: Element) => element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0;
    // text of a drawing may stand over its edge, and is never cut there
    return [...paper.querySelectorAll("*:not(svg *)")]
      .filter((element) => isOut(element) || (isCut(element) && getComputedStyle(element).overflowX !== "visible"))
      .map((element) => `${element.tagName} ${element.textContent?.slice(0, 40)}`);
  });
  expect(cut).toEqual([]);
  await page.emulateMedia({ media: null });
  mkdirSync(FOLDER, { recursive: true });
  const pdf = await page.pdf({ preferCSSPageSize: true });
  writeFileSync(`${FOLDER}/${name}.pdf`, pdf);
  const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(
    ([, width, height]) => [Number(width), Number(height)],
  );
  const isAcross = boxes[0][0] > boxes[0][1];
  for (const [width, height] of boxes) {
    expect(Math.abs(width - (isAcross ? A4.long : A4.short)), `width of a page of ${name}`).toBeLessThan(1);
    expect(Math.abs(height - (isAcross ? A4.short : A4.long)), `height of a page of ${name}`).toBeLessThan(1);
  }
  return { pages: boxes.length, isAcross };
}

async function expectAccessible(page: Page): Promise<void> {
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
}

test("a plate on paper and in files: by keyboard from the mark sheet, page by page on A4", async ({
  page,
  browser,
}) => {
  await joinAs(page, "Rosalind Paperworth-Okonkwo", "rosalind");
  const open = await takeFreshPlate(page);
  await page.goto(`/practice/${open}/paper/piece`);
  expect(await print(page, "plate-before")).toEqual({ pages: 4, isAcross: true });
  expect((await page.goto(`/practice/${open}/paper/piece?answers=yes`))?.status()).toBe(404);
  expect((await page.goto(`/practice/${open}/paper/marks`))?.status()).toBe(404);
  expect(await send(page, "POST", `/api/practice/${open}/hand-in`)).toMatchObject({ status: 200 });

  const id = await handInPiece(page, "butt");
  await page.goto(`/practice/${id}/marks`);
  const shown = /: ([\d.]+) marks/.exec((await page.getByText(/^The butt plate is/).textContent()) ?? "")?.[1];

  // by keyboard: open the choices, go to the first, choose it
  await page.getByRole("button", { name: "Print", exact: true }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("link", { name: "Mark sheet", exact: true })).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("link", { name: "Mark sheet", exact: true })).toBeHidden();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(`/practice/${id}/paper/marks`);
  const marks = await print(page, "plate-marks");
  expect(marks.pages).toBeGreaterThanOrEqual(3);
  await expect(page.getByText(`shown as ${shown}`)).toBeVisible();
  expect(await page.locator(".paper-entry img").count()).toBeGreaterThan(3);
  await expect(page.getByText("You chose").first()).toBeVisible();
  await expectAccessible(page);

  await page.goto(`/practice/${id}/paper/report`);
  await expect(page.getByText("Learner: signature and date")).toBeVisible();
  expect((await print(page, "plate-report")).pages).toBeLessThanOrEqual(2);
  await expectAccessible(page);

  await page.goto(`/practice/${id}/paper/piece?answers=yes`);
  const answers = await print(page, "plate-answers");
  expect(answers.pages).toBeGreaterThanOrEqual(5);
  await expect(page.getByRole("heading", { name: "What is there" })).toBeVisible();
  await expectAccessible(page);

  // true scale: a strip of 155 mm takes 155 mm of paper, 96 px to the inch
  const strip = await page.getByRole("img", { name: "Cap face, 0 to 155 mm" }).boundingBox();
  expect(Math.abs(strip!.width - (155 / 25.4) * 96)).toBeLessThan(0.5);
  expect(Math.abs(strip!.height - (150 / 25.4) * 96)).toBeLessThan(0.5);

  // the file has the mark of the screen
  await page.goto(`/practice/${id}/marks`);
  await page.getByRole("button", { name: "Save as CSV" }).click();
  const coming = page.waitForEvent("download");
  await page.getByRole("link", { name: "One row a section" }).click();
  const text = readFileSync(await (await coming).path(), "utf8");
  expect(text.charCodeAt(0)).toBe(0xfeff);
  const [row] = Papa.parse<Record<string, string>>(text.slice(1), { header: true, skipEmptyLines: true }).data;
  expect(row["Mark, of 100"]).toBe(String(Number(shown)));
  expect(row.Learner).toBe("Rosalind Paperworth-Okonkwo");

  await page.goto("/history");
  await page.getByRole("button", { name: "Save as CSV" }).click();
  const all = page.waitForEvent("download");
  await page.getByRole("link", { name: "One row an indication" }).click();
  expect((await all).suggestedFilename()).toBe("toeline-indications-of-rosalind.csv");

  // nobody else comes to it
  const visitor = await browser.newContext();
  expect((await visitor.request.get(`/api/practice/${id}/files/sections`)).status()).toBe(401);
  await visitor.close();
});

test("a fillet on paper", async ({ page }) => {
  await joinAs(page, "Filipa Paperworth", "filipa");
  const id = await handInPiece(page, "fillet");
  await page.goto(`/practice/${id}/paper/piece`);
  expect(await print(page, "fillet-piece")).toEqual({ pages: 2, isAcross: true });
  await page.goto(`/practice/${id}/paper/marks`);
  await print(page, "fillet-marks");
});

test.describe("a class", () => {
  test.use({ ...TUTOR, viewport: { width: 1024, height: 768 }, hasTouch: true });

  test("has its result list on paper and its files, by touch", async ({ page }) => {
    await page.goto("/desk/classes");
    await page.getByLabel("Name of the class").fill("Paper and files");
    await page.getByRole("button", { name: "Make the class" }).tap();
    await expect(page.getByRole("heading", { name: "Paper and files", level: 1 })).toBeVisible();
    const save = page.getByRole("button", { name: "Save as CSV" });
    await save.tap();
    const links = page.getByRole("link", { name: /^One row/ });
    for (const link of await links.all()) expect((await link.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    const coming = page.waitForEvent("download");
    await links.first().tap();
    await coming;
    await page.keyboard.press("Escape");
    await page.getByRole("link", { name: "Print the result list" }).tap();
    await expect(page.getByText("Nobody is in this class.")).toBeVisible();
    expect(await print(page, "class")).toEqual({ pages: 1, isAcross: false });
    await expectAccessible(page);

    await page.getByRole("link", { name: "Back to the class" }).tap();
    await page.getByRole("link", { name: "What the class still misses" }).tap();
    await expect(page.getByText("What to teach this class comes here")).toBeVisible();
    await expectAccessible(page);
  });
});
