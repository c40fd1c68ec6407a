import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { imperfection } from "../../lib/imperfections";
import type { TruthItem } from "../../lib/specimen";
import { DIMENSION_FACTS } from "../../lib/weld";
import { fillOpenRow, moveCursor, onScreen, plateOf, waitForPicture } from "./support/bench";
import { joinAs } from "./support/people";
import { takeFreshPlate } from "./support/practice";
import { answerEverything } from "./support/questions";
import { sentenceEverything } from "./support/sentences";
import { readDimensions, readTruth } from "./support/truth";

test.setTimeout(300_000);

const isLine = (item: TruthItem) => imperfection(item.type).extent === "line" && item.end - item.start >= 6;
const openRow = (page: Page) => page.getByRole("group", { name: /^Indication \d+$/ });
const saved = (page: Page) => page.locator('[data-save="saved"]');

test("an apprentice inspects a fresh plate, writes the report, and goes through its marks", async ({ page }) => {
  await joinAs(page, "Tove Lindqvist", "tove");
  const id = await takeFreshPlate(page);
  await waitForPicture(page);
  const truth = readTruth(id).filter((item) => !item.neutral);
  const cap = truth.filter((item) => item.face === "cap");
  const root = truth.filter((item) => item.face === "root");
  const line = cap.find((item) => isLine(item) && item.type !== "linear-misalignment") ?? cap[0];

  // by pointer: drag along an indication, and read in the row what was drawn
  await page.getByRole("button", { name: "Mark", exact: true }).click();
  const from = await onScreen(page, "cap", line.start, line.across);
  const to = await onScreen(page, "cap", Math.max(line.end, line.start + 8), line.across);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, to.y, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
  const drawn = Number(await openRow(page).getByLabel("From", { exact: true }).inputValue());
  expect(Math.abs(drawn - line.start), "the row holds what was drawn, to a screen pixel").toBeLessThan(0.6);
  await fillOpenRow(page, line);
  await expect(page.locator("[data-report] h2")).toContainText("1 indication");

  // a second one by mistake, taken back and brought again
  await page.keyboard.press("Escape");
  await plateOf(page).focus();
  await page.keyboard.press("p");
  await expect(page.locator("[data-report] h2")).toContainText("2 indications");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.locator("[data-report] h2")).toContainText("1 indication");

  // by keyboard alone: every other indication of the cap, then turn the plate and write those of the root
  let cursor = await cursorOf(page);
  for (const item of [...cap.filter((other) => other !== line), ...root]) {
    if ((await plateOf(page).getAttribute("data-aspect")) !== item.face) {
      await plateOf(page).focus();
      await page.keyboard.press("f");
      await expect(plateOf(page)).toHaveAttribute("data-aspect", item.face);
      await waitForPicture(page);
      cursor = await cursorOf(page);
    }
    const up = item.face === "cap" ? item.across : -item.across;
    const start = { x: Math.round(item.start), up: Math.round(up) };
    await moveCursor(page, cursor, start);
    if (isLine(item)) {
      await page.keyboard.press("i");
      const end = { x: Math.round(item.end), up: start.up };
      await moveCursor(page, start, end);
      await page.keyboard.press("i");
      cursor = end;
    } else {
      await page.keyboard.press("p");
      cursor = start;
    }
    await fillOpenRow(page, item);
    await page.keyboard.press("Escape");
    cursor = await cursorOf(page);
  }
  await expect(page.locator("[data-report] h2")).toContainText(`${truth.length} indications`);
  await expect(saved(page)).toHaveText(/Saved \d/);

  // the dimensions of the whole plate, as a careful inspector would have measured them
  for (const { dimension, value, at } of readDimensions(id)) {
    const form = page.getByRole("group", { name: DIMENSION_FACTS[dimension].name, exact: true });
    await form.getByLabel(/^Largest|^Measured$/).fill(value.toFixed(1));
    // plates are as thick everywhere
    if (at !== null) await form.getByLabel("Measured at").fill(at.toFixed(1));
  }
  await expect(page.locator("[data-dimensions] h3")).toContainText("6 of 6 measured");
  await expect(saved(page)).toHaveText(/Saved \d/);

  // each of them sentenced, and the plate
  await sentenceEverything(page, id);
  await expect(saved(page)).toHaveText(/Saved \d/);

  // a closer look, long enough to be noted; it outlasts the window as well
  await plateOf(page).focus();
  for (let n = 0; n < 4; n++) await page.keyboard.press("+");
  await page.waitForTimeout(4_000);

  // the browser is closed and opened again: everything is still there
  await page.reload();
  await expect(page.locator("[data-report] h2")).toContainText(`${truth.length} indications`);

  await page.getByRole("button", { name: "Hand in" }).click();
  const dialog = page.getByRole("dialog");
  await expect(dialog).toContainText(`It has ${truth.length} indications`);
  await expect(dialog, "everything is filled in").not.toContainText("Still blank");
  await expect(dialog).not.toContainText("Not sentenced");
  await dialog.getByRole("button", { name: "Close the report and go on to the questions" }).click();

  // the questions on the piece, by keyboard
  await expect(page.locator("[data-stem]")).toBeVisible();
  await answerEverything(page, id);
  await expect(saved(page)).toHaveText(/Saved \d/);
  await page.getByRole("button", { name: "Hand in" }).click();
  await expect(dialog).toContainText("All 10 questions are answered.");
  await dialog.getByRole("button", { name: "Hand in" }).click();
  await expect(page).toHaveURL(`/practice/${id}/marks`);

  // exact calls and dimensions to a tenth of a millimetre: the plate is passed with (nearly) full marks
  const verdict = page.getByText("The butt plate is passed:");
  await expect(verdict).toBeVisible();
  expect(Number(/passed: ([\d.]+) marks/.exec((await verdict.textContent()) ?? "")?.[1])).toBeGreaterThanOrEqual(99.5);
  await expect(page.getByText(`You found ${truth.length} of ${truth.length} indications`)).toBeVisible();

  // the lines of indications, sentences and questions add up to the sums that stand under them
  const section = page.getByRole("region", { name: /^Butt plate/ });
  const lines = await section.locator("ol > li > button span.font-semibold").allInnerTexts();
  const sum = lines.reduce((total, text) => total + Number(text), 0);
  const parts = await Promise.all(
    ["All indications", "All sentences", "All questions"].map(async (name) => {
      const text = await section.getByText(name).locator("..").textContent();
      return Number(/([\d.]+) of/.exec(text ?? "")?.[1]);
    }),
  );
  const total = parts.reduce((together, part) => together + part, 0);
  expect(Math.abs(sum - total)).toBeLessThan(0.005 * lines.length + 0.006);

  // choosing a line goes to its place under the light, with the weld cut across there
  const { name, number } = imperfection(root[0].type);
  await page
    .getByRole("button", { name: new RegExp(`${name} \\(${number}\\)`) })
    .last()
    .click();
  await expect(page.getByRole("img", { name: /^Section at/ })).toBeVisible({ timeout: 60_000 });
  await waitForPicture(page);

  // and what the bench noted of where it was looked at
  const looked = page.getByRole("region", { name: "Where you looked" });
  await expect(looked).toContainText(/: [1-9]\d* of 300 mm of weld looked at close up/);
  await expect(looked).toContainText("It gives no marks and changes none.");

  // what the standards would have said of it, each with its limit
  await page.getByText("How would standards judge this piece?").click();
  const judged = page.getByRole("table").filter({ hasText: "The piece as a whole" });
  await expect(judged.getByRole("row")).toHaveCount(truth.length + 2);
  await judged
    .getByRole("button", { name: /^ISO 5817/ })
    .first()
    .click();
  await expect(page.getByText("For training only.").last()).toBeVisible();

  // history, what it tells of progress, and a new plate
  await page.goto("/history");
  await expect(page.getByRole("row")).toHaveCount(2);
  await page.getByRole("link", { name: "Progress" }).click();
  await expect(page.getByRole("heading", { name: "Your progress" })).toBeVisible();
  await expect(page.getByText(`Of everything there was to find: ${truth.length} of ${truth.length}`)).toBeVisible();
  await expect(page.getByRole("img", { name: /^Butt plate: 1 of 1 passed/ })).toBeVisible();
  await page.getByText("The figures as a table").first().click();
  const file = page.waitForEvent("download");
  await page.getByRole("link", { name: "Save as CSV" }).first().click();
  expect((await file).suggestedFilename()).toBe("marks-plate.csv");
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  const next = await takeFreshPlate(page);
  expect(next).not.toBe(id);
});

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true });

  test("an indication is marked by touch, corrected, and bad input is told and not kept", async ({ page }) => {
    await joinAs(page, "Amadou Keller", "amadou");
    await takeFreshPlate(page);
    await waitForPicture(page);
    await page.getByRole("button", { name: "Mark", exact: true }).tap();
    const at = await onScreen(page, "cap", 120, 3);
    await page.touchscreen.tap(at.x, at.y);
    const form = openRow(page);
    await expect(form).toBeVisible();
    const along = form.getByLabel("At, from the datum");
    expect(Math.abs(Number(await along.inputValue()) - 120)).toBeLessThan(1);

    await along.fill("far left");
    await expect(form).toContainText("Write a number, for example 12.5.");
    await along.fill("301");
    await expect(form).toContainText("From 0 to 300 mm.");
    await along.fill("121,5");
    await along.blur();
    await expect(along).toHaveValue(/^121[.,]5$/);
    await expect(saved(page)).toHaveText(/Saved \d/);

    await page.getByRole("button", { name: "Hand in" }).tap();
    await expect(page.getByRole("dialog")).toContainText("what it is");
    await page.getByRole("dialog").getByRole("button", { name: "Go on inspecting" }).tap();
    await page.reload();
    await expect(page.locator("[data-report] h2")).toContainText("1 indication");
  });
});

/** The cursor as the bench tells it: "150.0 mm · 3.0 A". */
async function cursorOf(page: Page): Promise<{ x: number; up: number }> {
  await page.mouse.move(5, 5);
  const text = (await plateOf(page).locator("p").first().textContent()) ?? "";
  const [, x, y, plate] = /([\d.]+) mm · ([\d.]+) ([AB])/.exec(text) ?? [];
  const face = await plateOf(page).getAttribute("data-aspect");
  const towardsA = plate === "A" ? Number(y) : -Number(y);
  return { x: Number(x), up: face === "cap" ? towardsA : -towardsA };
}
