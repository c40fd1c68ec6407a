import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { CAUTION } from "../../lib/criteria";
import { fillOpenRow, plateOf, waitForPicture } from "./support/bench";
import { joinAs } from "./support/people";
import { send, takeFreshFillet, takeFreshPlate } from "./support/practice";
import { closeReport, readQuestions } from "./support/questions";
import { decide, sentenceOn } from "./support/sentences";
import { readTruth } from "./support/truth";

test.setTimeout(240_000);

const saved = (page: Page) => page.locator('[data-save="saved"]');
const stem = (page: Page) => page.locator("[data-stem]");
const radios = (page: Page, number: number) => page.locator(`[data-question="${number}"]`).getByRole("radio");

test("a report is closed for good, its questions are answered by keyboard, kept, handed in and explained", async ({
  page,
}) => {
  await joinAs(page, "Runa Okafor", "runa.okafor");
  const id = await takeFreshPlate(page);
  await waitForPicture(page);
  const found = readTruth(id).filter(({ neutral, face }) => !neutral && face === "cap");
  for (const [n, item] of found.slice(0, 2).entries()) {
    await plateOf(page).focus();
    await page.keyboard.press("p");
    await fillOpenRow(page, item);
    await decide(sentenceOn(page, n + 1), "reject");
    await page.keyboard.press("Escape");
  }
  await page.getByRole("button", { name: "Hand in" }).click();
  await expect(page.getByRole("dialog")).toContainText("10 questions come next");
  await expect(page.getByRole("dialog")).toContainText("their marks are lost");
  await page.keyboard.press("Escape");
  await closeReport(page);

  // nothing of the report can be changed any more, by key or by hand
  const report = page.getByRole("button", { name: "Report, closed" });
  await report.press("Enter");
  await plateOf(page).focus();
  for (const key of ["p", "i", "Delete", "Control+z"]) await page.keyboard.press(key);
  await expect(page.locator("[data-report] h2")).toContainText("2 indications");
  await page.locator("[data-row]").first().click();
  await expect(page.getByRole("group", { name: "Indication 1" }).getByLabel(/^Across/)).toBeDisabled();
  await expect(sentenceOn(page, "piece").getByRole("radio").first()).toBeDisabled();
  await expect(page.getByRole("button", { name: "Mark", exact: true })).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Add a row at the cursor" })).toHaveCount(0);
  // torch and lens still are at hand
  await plateOf(page).focus();
  await page.keyboard.press("l");
  await expect(page.getByRole("button", { name: "Lens" })).toHaveAttribute("aria-pressed", "true");

  // by keyboard: a number chooses, another one changes it, arrows go on and back
  await page.getByRole("button", { name: "Questions", exact: true }).press("Enter");
  await plateOf(page).focus();
  await page.keyboard.press("r");
  await expect(radios(page, 1).first()).toBeFocused();
  const questions = readQuestions(id);
  const wrong = (questions[0].key + 1) % 4;
  await page.keyboard.press(String(questions[0].key + 1));
  await page.keyboard.press(String(wrong + 1));
  await expect(radios(page, 1).nth(wrong)).toBeChecked();
  await expect(radios(page, 1).nth(wrong)).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(stem(page)).toHaveText(questions[1].stem);
  await page.keyboard.press(String(questions[1].key + 1));
  await page.keyboard.press("ArrowLeft");
  await expect(stem(page)).toHaveText(questions[0].stem);
  await expect(page.getByText("2 of 10 answered")).toBeVisible();
  await expect(page.locator("[data-questions]")).toContainText(CAUTION);
  const asking = await new AxeBuilder({ page }).include("main").analyze();
  expect(asking.violations.map(({ id: rule, nodes }) => `${rule} ${nodes[0].html}`)).toEqual([]);

  // away and back: the first question without an answer
  await expect(saved(page)).toHaveText(/Saved \d/);
  await page.reload();
  await expect(stem(page)).toHaveText(questions[2].stem);
  await expect(page.getByText("2 of 10 answered")).toBeVisible();

  await page.getByRole("button", { name: "Hand in" }).click();
  const dialog = page.getByRole("dialog");
  await expect(dialog).toContainText("Not answered: question No. 3, No. 4, No. 5, No. 6, No. 7, No. 8, No. 9, No. 10.");
  await dialog.getByRole("button", { name: "No. 10", exact: true }).click();
  await expect(stem(page)).toHaveText(questions[9].stem);
  await page.getByRole("button", { name: "Hand in" }).click();
  await dialog.getByRole("button", { name: "Hand in" }).click();
  await expect(page).toHaveURL(`/practice/${id}/marks`);

  // each with what was answered, what is right and why, and where on the piece
  const list = page.getByRole("heading", { name: "Questions", exact: true }).locator("xpath=following-sibling::ol[1]");
  await expect(list.locator("> li")).toHaveCount(10);
  await expect(page.getByText("1 of 10 answered rightly.")).toBeVisible();
  await expect(list.getByText("not answered")).toHaveCount(8);
  const first = list.locator("> li").first();
  await first.getByRole("button").click();
  await expect(first).toContainText(questions[0].explanation);
  await expect(first.locator("li").nth(questions[0].key)).toContainText(
    `${questions[0].options[questions[0].key]}✓ right`,
  );
  await expect(first.locator("li").nth(wrong)).toContainText("yours, wrong");
  const placed = questions.findIndex(({ place }) => place !== null);
  expect(placed, "a question about a place of the piece").toBeGreaterThanOrEqual(0);
  if (placed > 0) await list.locator("> li").nth(placed).getByRole("button").click();
  await expect(list.locator("> li").nth(placed)).toContainText("Shown on the piece:");
  await expect(page.getByRole("img", { name: /^Section at/ })).toBeVisible({ timeout: 60_000 });
  const sheet = await new AxeBuilder({ page }).include("main").analyze();
  expect(sheet.violations.map(({ id: rule, nodes }) => `${rule} ${nodes[0].html}`)).toEqual([]);
});

test("a window left open while another one closes the report says so and goes on to the questions", async ({
  page,
}) => {
  await joinAs(page, "Ottilie Brand", "ottilie");
  const id = await takeFreshPlate(page);
  const at = `/api/practice/${id}`;
  const call = { id: "a", face: "cap", type: "surface-pore", start: 120, end: null, across: 0, size: 1.5 };
  const report = { version: 1, calls: [call] };
  const questionsOf = async (body?: object) => (await send(page, "POST", `${at}/close-report`, body)).body.questions;

  // the other window, by the routes that it uses
  expect(
    await send(page, "PUT", `${at}/report`, { sequence: 1, report: { ...report, answers: { q1: 0 } } }),
  ).toMatchObject({
    status: 409,
    body: { code: "report-open" },
  });
  expect(await send(page, "POST", `${at}/close-report`, { sequence: "one", report })).toMatchObject({
    status: 422,
    body: { code: "malformed-report", problem: { path: "sequence" } },
  });
  const asked = await questionsOf({ sequence: 1, report });
  expect(asked).toHaveLength(10);
  expect(await questionsOf()).toEqual(asked);
  expect(await questionsOf({ sequence: 1, report })).toEqual(asked);
  expect(
    await send(page, "PUT", `${at}/report`, { sequence: 2, report: { ...report, answers: { q11: 0 } } }),
  ).toMatchObject({ status: 422, body: { problem: { path: "report.answers.q11" } } });
  expect(await send(page, "PUT", `${at}/report`, { sequence: 2, report: { version: 1, calls: [] } })).toMatchObject({
    status: 409,
    body: { code: "report-closed", sequence: 1, report },
  });
  expect((await send(page, "POST", "/api/practice/no-such-id/close-report")).status).toBe(404);
  expect((await send(page, "POST", `${at}/close-report`, { report: "x".repeat(300_000) })).status).toBe(413);

  // this window has not heard of it
  await waitForPicture(page);
  await plateOf(page).focus();
  await page.keyboard.press("p");
  await expect(page.getByText("Another window closed this report.")).toBeVisible();
  await page.getByRole("button", { name: "Go on to the questions" }).click();
  await expect(stem(page)).toHaveText(asked[0].stem);
  await page.getByRole("button", { name: "Report, closed" }).click();
  await expect(page.locator("[data-report] h2")).toContainText("1 indication");
});

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true });

  test("questions on a fillet weld are answered by touch", async ({ page }) => {
    await joinAs(page, "Pavel Quist", "pavel");
    const id = await takeFreshFillet(page);
    await waitForPicture(page);
    await page.getByRole("button", { name: "Hand in" }).tap();
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("button", { name: "Close the report and go on to the questions" }).tap();
    await expect(stem(page)).toBeVisible();
    const questions = readQuestions(id);
    expect(questions).toHaveLength(5);
    for (const [n, { key }] of questions.entries()) {
      await page
        .locator(`[data-question="${n + 1}"] label`)
        .nth(key)
        .tap();
      await expect(radios(page, n + 1).nth(key)).toBeChecked();
      for (const target of await page.locator("[data-questions] :is(button, label):visible").all()) {
        const box = await target.boundingBox();
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
      }
      if (n < 4) await page.getByRole("button", { name: "Next" }).tap();
    }
    await page.getByRole("button", { name: "Put the questions aside" }).tap();
    await page.getByRole("button", { name: "Questions: 5 of 5 answered" }).tap();
    await page.getByRole("button", { name: "Hand in" }).tap();
    await expect(dialog).toContainText("All 5 questions are answered.");
    await dialog.getByRole("button", { name: "Hand in" }).tap();
    await expect(page).toHaveURL(`/practice/${id}/marks`);
    await expect(page.getByText("5 of 5 answered rightly.")).toBeVisible();
  });
});
