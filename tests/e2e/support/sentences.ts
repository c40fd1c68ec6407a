import { expect, type Locator, type Page } from "@playwright/test";
import Database from "libsql";
import { DEFAULT_CRITERIA } from "../../../lib/criteria";
import { type Report, reportSchema, SENTENCE_NAMES, type WrittenSentence } from "../../../lib/report";
import { withSentences } from "../../../seed/demo/inspector/sentences";
import { readJoint } from "./truth";

/** The report as the server keeps it. */
function readReport(practiceId: string): Report {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database.prepare("SELECT report FROM Practice WHERE id = ?").get(practiceId) as { report: string };
  database.close();
  return reportSchema.parse(JSON.parse(row.report));
}

export const sentenceOn = (page: Page, what: number | "piece"): Locator =>
  page.getByRole("radiogroup", {
    name: what === "piece" ? "Sentence on the piece" : `Sentence on indication ${what}`,
    exact: true,
  });

/** By keyboard: with the focus on the group, Space or an arrow. */
export async function decide(group: Locator, sentence: WrittenSentence): Promise<void> {
  const radio = group.getByRole("radio", { name: SENTENCE_NAMES[sentence], exact: true });
  await radio.focus();
  await radio.press("Space");
  await expect(radio).toBeChecked();
}

/** Decides on every row of the saved report and on the piece, as follows from what stands there by the usual criteria. */
export async function sentenceEverything(page: Page, practiceId: string): Promise<void> {
  const { calls, pieceSentence } = withSentences(readReport(practiceId), readJoint(practiceId), DEFAULT_CRITERIA);
  for (const [n, { id, sentence }] of calls.entries()) {
    const row = page.locator(`[data-row="${id}"]`);
    if ((await row.getAttribute("aria-expanded")) !== "true") await row.click();
    await decide(sentenceOn(page, n + 1), sentence!);
  }
  await decide(sentenceOn(page, "piece"), pieceSentence!);
}
