import AxeBuilder from "@axe-core/playwright";
import { type Browser, expect, type Locator, type Page, test } from "@playwright/test";
import { EMPTY_REPORT, type Report } from "../../lib/report";
import { defaultPaper } from "../../lib/sittings";
import { joinAs, TUTOR } from "./support/people";

test.use(TUTOR);

/** On a machine that makes other pieces as well. */
const MADE_WITHIN_MS = 150_000;
const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
];

async function expectAccessible(page: Page): Promise<void> {
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
}

async function expectNothingCut(page: Page): Promise<void> {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide, `the page is no wider than ${size.width}`).toBeLessThanOrEqual(0);
  }
}

/**
 * A paper of one fillet weld, the same for all, so that one piece has to be made. Nothing but its dimensions and statements
 * counts, a dozen or so at most: each of them is worth more than the 5 marks to pass.
 */
async function makePaper(page: Page, name: string): Promise<void> {
  const paper = defaultPaper();
  const sections = paper.sections
    .filter(({ section }) => section === "fillet")
    .map((one) => ({
      ...one,
      passMark: 5,
      questionCount: 0,
      weights: { indications: 0, dimensions: 100, sentences: 0, questions: 0 },
    }));
  const made = await page.request.post("/api/papers", {
    data: { paper: { ...paper, name, sections, forms: "same" }, seen: null },
  });
  expect(made.status(), await made.text()).toBe(201);
}

/** A class with a learner who is signed in on a page of their own, and one who never comes. */
async function makeClass(page: Page, browser: Browser, name: string): Promise<Page> {
  await page.goto("/desk/classes");
  await page.getByLabel("Name of the class").fill(name);
  await page.getByRole("button", { name: "Make the class" }).click();
  await page.getByRole("button", { name: "Make a code" }).click();
  const code = (await page.locator("[data-join-code]").textContent()) ?? "";
  const own = await (await browser.newContext({ storageState: undefined })).newPage();
  await joinAs(own, "Wanda Prior", "wanda.prior");
  await own.goto("/join");
  await own.getByLabel("Join code").fill(code);
  await own.getByRole("button", { name: "Join the class" }).click();
  await expect(own.getByText(`You are in the class ${name}.`)).toBeVisible();
  await page.getByRole("link", { name: "Add learners from a list" }).click();
  await page.getByLabel("One learner a line").fill("Anselm Away");
  await page.getByRole("button", { name: "Check the list" }).click();
  await page.getByRole("button", { name: "Add one learner" }).click();
  await expect(page.getByRole("region", { name: "One sign-in slip" })).toBeVisible();
  return own;
}

async function post(page: Page, path: string, data: object = {}) {
  const response = await page.request.post(path, { data });
  expect(response.ok(), `${path}: ${await response.text()}`).toBe(true);
  return response.json();
}

/** Seconds on a clock such as 39:58. */
const secondsOf = async (timer: Locator): Promise<number> =>
  ((await timer.textContent()) ?? "").split(":").reduce((sum, part) => sum * 60 + Number(part), 0);

test("a sitting from planning to release on its board, and the re-sit that follows", async ({ page, browser }) => {
  test.setTimeout(300_000);
  await makePaper(page, "Short fillet");
  const own = await makeClass(page, browser, "Sitting bay");

  await page.goto("/desk");
  await page.getByRole("navigation", { name: "On your desk" }).getByRole("link", { name: "Sittings" }).click();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Plan a sitting" }).click();
  await page.getByLabel("Class", { exact: true }).selectOption({ label: "Sitting bay" });
  await page.getByLabel("Paper", { exact: true }).selectOption({ label: "Short fillet" });
  const outlook = page.getByRole("region", { name: "What will happen" });
  await expect(outlook).toContainText("2 learners are expected, with 2 sections in all");
  await expect(outlook).toContainText("one fresh piece is made from now on: the same for everybody");
  await page.getByRole("button", { name: "Plan the sitting" }).click();
  await expect(outlook.getByRole("alert")).toContainText("Fill in the day and the time");
  await page.getByLabel("Day and time").fill("2030-03-04T09:00");
  await expectAccessible(page);
  await expectNothingCut(page);
  await page.getByRole("button", { name: "Plan the sitting" }).click();
  await expect(page.getByRole("heading", { name: "Short fillet", level: 1 })).toBeVisible();
  const id = new URL(page.url()).pathname.split("/")[3];

  const row = page.getByRole("rowgroup").filter({ hasText: "Wanda Prior" });
  const step = page.getByRole("region", { name: "Next step" });
  await expect(page.getByText("Live: the board changes by itself.")).toBeVisible();
  await expect(row).toContainText("not in");
  await page.getByRole("button", { name: "Open the sitting" }).click();
  await expect(page.getByText("The sitting is open: learners can come in.")).toBeVisible();
  await expect(step).toContainText("1 of 1 piece is ready", { timeout: MADE_WITHIN_MS });

  // the learner comes in; nobody reloads the board
  const { sitting } = await post(own, `/api/sittings/${id}/enter`);
  const [{ runId, practiceId }] = sitting.sections;
  await expect(row.getByText("in", { exact: true })).toBeVisible();
  await expect(step).toContainText("1 of 2 learners in");
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(step).toContainText("The sitting is running");
  const window = "sittingdesk01";
  const { run } = await post(own, `/api/runs/${runId}/start`, { windowId: window });
  await expect(row).toContainText("inspecting");

  // the board's clock against the deadline that the server has told; both run on one machine. Begun seconds count whole, and
  // what is shown was so some time between asking and hearing
  const timer = row.getByRole("timer");
  const leftNow = () => (Date.parse(run.clock.deadline) - Date.now()) / 1000;
  const before = leftNow();
  const shown = await secondsOf(timer);
  expect(shown).toBeGreaterThanOrEqual(leftNow() - 1);
  expect(shown).toBeLessThanOrEqual(Math.ceil(before) + 1);

  const call = { face: "fillet", type: null, start: 50, end: 60, across: null, size: null, sentence: null } as const;
  const report: Report = { ...EMPTY_REPORT, calls: ["a", "b", "c"].map((name) => ({ ...call, id: name })) };
  const save = { sequence: 1, report, window: { id: window, base: 0 }, madeAt: new Date().toISOString() };
  const saved = await own.request.put(`/api/practice/${practiceId}/report`, { data: save });
  expect(saved.ok(), await saved.text()).toBe(true);
  await expect(row.getByRole("cell", { name: "3", exact: true })).toBeVisible();
  await expectAccessible(page);
  await expectNothingCut(page);

  // on one: more time, which needs a reason
  const act = async (button: string, fill?: (dialog: Locator) => Promise<void>) => {
    await page.getByRole("button", { name: "Act on Wanda Prior, fillet weld" }).click();
    const dialog = page.getByRole("dialog", { name: "Wanda Prior: fillet weld" });
    await fill?.(dialog);
    await dialog.getByRole("button", { name: button }).click();
  };
  const more = page.getByRole("dialog").getByRole("region", { name: "More time" });
  await act("Give the minutes", async (dialog) => {
    await expectAccessible(page);
    await dialog.getByRole("button", { name: "Give the minutes" }).click();
    await expect(more.getByText("Needed: 1 to 200 characters.")).toBeVisible();
    await more.getByLabel("Reason").fill("the lamp had to be changed");
  });
  await expect(page.getByText("Wanda Prior has 10 minutes more in this section.")).toBeVisible();
  await expect(row).toContainText("10 min on top");
  await expect.poll(() => secondsOf(timer)).toBeGreaterThan(shown + 9 * 60);
  await act("Pause this section");
  await expect(row).toContainText("stands");
  await act("Resume this section");
  await expect(row).toContainText("inspecting");

  // on all
  await page.getByRole("button", { name: "Pause everybody" }).click();
  await expect(row).toContainText("paused with everybody");
  await page.getByRole("button", { name: "Resume", exact: true }).click();
  await expect(row).toContainText("inspecting");

  // closed, opened again with minutes of its own, and closed with everybody
  await act("Close this section");
  await expect(row).toContainText("closed by a tutor");
  await act("Open this section again", (dialog) =>
    dialog.getByRole("region", { name: "Open again" }).getByLabel("Reason").fill("closed by mistake"),
  );
  await expect(row).toContainText("opened again");
  await page.getByRole("button", { name: "Close the sitting" }).click();
  const question = page.getByRole("dialog", { name: "Close the sitting?" });
  await expect(question).toContainText("Wanda Prior is still at it");
  await question.getByRole("button", { name: "Close the sitting" }).click();
  const results = page.getByRole("region", { name: "Table of results" });
  const result = results.getByRole("rowgroup").filter({ hasText: "Wanda Prior" });
  await expect(result).toContainText("not passed", { timeout: 40_000 });
  await expect(result).toContainText("of 5 needed");
  await expect(result).toContainText("re-sit due: fillet weld");
  await expect(results.getByRole("rowgroup").filter({ hasText: "Anselm Away" })).toContainText("not sat");
  await expectAccessible(page);
  await expectNothingCut(page);
  // no marks yet: the page of the sitting says when they come
  expect(new URL((await own.request.get(`/practice/${practiceId}/marks`)).url()).pathname).toBe(`/sitting/${id}`);

  await page.getByRole("button", { name: "Release the marks" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Release the marks for good" }).click();
  await expect(page.getByText("The marks are released.", { exact: true })).toBeVisible();
  const log = page.getByRole("region", { name: "What was done" });
  await expect(log).toContainText("Maren Okafor: gave more time: 10 min, Wanda Prior, fillet weld");
  await expect(log).toContainText("The lamp had to be changed");
  const released = await own.request.get(`/practice/${practiceId}/marks`);
  expect(new URL(released.url()).pathname).toBe(`/practice/${practiceId}/marks`);
  expect(released.ok()).toBe(true);

  // the re-sit: only who needs it, only what they need
  await page.getByRole("link", { name: "Plan the re-sits" }).click();
  await expect(page.getByLabel("Those with a section due again")).toBeChecked();
  await expect(page.getByText("re-sit of fillet weld")).toBeVisible();
  await expect(outlook).toContainText("one learner is expected, with one section in all");
  await page.getByLabel("Day and time").fill("2030-03-05T09:00");
  await page.getByRole("button", { name: "Plan the sitting" }).click();
  await expect(page.getByRole("button", { name: "Open the sitting" })).toBeVisible();
  await expect(page.getByRole("rowgroup").filter({ hasText: "Anselm Away" })).toHaveCount(0);
  await page.getByRole("button", { name: "Make the sitting void" }).click();
  const voiding = page.getByRole("dialog", { name: "Make the whole sitting void?" });
  await voiding.getByLabel("Reason").fill("set for the wrong day");
  await voiding.getByRole("button", { name: "Make the sitting void for good" }).click();
  await expect(step).toContainText("This sitting is void");

  await page.goto("/desk");
  const needs = page.getByRole("region", { name: "What needs you now" });
  await expect(needs.getByRole("link", { name: "Plan what is due again: Sitting bay, Short fillet" })).toBeVisible();
  await page.goto("/desk/classes");
  await page.getByRole("link", { name: "Sitting bay", exact: true }).click();
  const standing = page.getByRole("region", { name: "Where everybody stands: Short fillet" });
  await expect(standing.getByRole("link", { name: /^Mark sheet of Wanda Prior, fillet weld/ })).toBeVisible();
  await expectAccessible(page);
  await expectNothingCut(page);

  // a line overruled after the release: the fail is a pass at once, with both marks, for the learner as for the tutor
  await page.goto(`/desk/sittings/${id}`);
  await result.getByRole("link", { name: "Mark sheet of Wanda Prior, fillet weld" }).click();
  await expect(page.getByRole("heading", { name: "Mark sheet of Wanda Prior", level: 1 })).toBeVisible();
  const review = new URL(page.url()).pathname;
  await page
    .getByRole("button", { name: /^Overrule: / })
    .first()
    .click();
  const overruling = page.getByRole("dialog", { name: "Overrule a line" });
  await expectAccessible(page);
  await overruling.getByRole("button", { name: "Overrule this line" }).click();
  await expect(overruling.getByText("Needed: 1 to 300 characters.")).toBeVisible();
  await overruling.getByLabel("Reason").fill("her gauge was bent");
  await overruling.getByRole("button", { name: "Overrule this line" }).click();
  await expect(page.getByText("The computed marks stay beside yours.")).toBeVisible();
  await expect(page.getByRole("region", { name: "Reviewed by a tutor" })).toContainText("her gauge was bent");
  await expectAccessible(page);
  await expectNothingCut(page);

  expect(await (await own.request.get(review)).text()).not.toContain("her gauge was bent");
  await own.goto(`/sitting/${id}`);
  await expect(own.getByText("Your mark was changed by a tutor on")).toBeVisible();
  await expect(own.getByText("You have passed the fillet weld.")).toBeVisible();
  await own.getByRole("link", { name: "Mark sheet" }).click();
  const seen = own.getByRole("region", { name: "Reviewed by a tutor" });
  await expect(seen).toContainText(/Computed mark\s*0\.0\s*not passed/);
  await expect(seen).toContainText(/Maren Okafor, .*: her gauge was bent/);
  await expect(own.getByRole("button", { name: /^Overrule/ })).toHaveCount(0);
  await expectAccessible(own);

  await page.getByRole("link", { name: "Back to the sitting" }).click();
  await expect(result).toContainText("reviewed; computed 0.0");
  await expect(result).toContainText("passed every section");
  await expect(log).toContainText(
    /Maren Okafor: overruled a line: Wanda Prior, fillet weld, .*mark 0\.0 not passed → .* passed/,
  );
  await expect(page.getByRole("link", { name: "Plan the re-sits" })).toHaveCount(0);
  await expectAccessible(page);
  await expectNothingCut(page);
  await page.getByRole("link", { name: "Print results and what was done" }).click();
  await expect(page.getByRole("heading", { name: "Results of a sitting" })).toBeVisible();
  await expect(page.getByRole("table").filter({ hasText: "Computed" })).toContainText("Wanda Prior");
  await own.context().close();
});
