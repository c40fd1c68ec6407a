import { expect, type Page } from "@playwright/test";
import Database from "libsql";
import type { Question } from "../../../lib/questions";

/** The questions with their keys, as the server keeps them. */
export function readQuestions(practiceId: string): readonly Question[] {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database.prepare("SELECT questions FROM Practice WHERE id = ?").get(practiceId) as { questions: string };
  database.close();
  return JSON.parse(row.questions) as readonly Question[];
}

/** From the report through its closing to the first question. */
export async function closeReport(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Hand in" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Close the report and go on to the questions" }).click();
  await expect(page.locator("[data-stem]")).toBeVisible();
}

/** Answers every question by keyboard as its key says, from the first one on. */
export async function answerEverything(page: Page, practiceId: string): Promise<void> {
  const questions = readQuestions(practiceId);
  for (const [n, { stem, key }] of questions.entries()) {
    const group = page.locator(`[data-question="${n + 1}"]`);
    await expect(page.locator("[data-stem]")).toHaveText(stem);
    await expect(group.getByRole("radio").first()).toBeFocused();
    await page.keyboard.press(String(key + 1));
    await expect(group.getByRole("radio").nth(key)).toBeChecked();
    await page.keyboard.press("ArrowRight");
  }
  await expect(page.getByText(`${questions.length} of ${questions.length} answered`)).toBeVisible();
}
