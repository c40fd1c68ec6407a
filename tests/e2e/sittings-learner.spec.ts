import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { defaultPaper } from "../../lib/sittings";
import { plateOf, waitForPicture } from "./support/bench";
import { OwnServer, PASSWORD, type Session } from "./support/own-server";

const server = new OwnServer(Number(process.env.PORT ?? 3213) + 1001, `${process.cwd()}/test-results/learner.db`);
const MADE_WITHIN_MS = 150_000;
/** A live view looks once a second, on a machine that may be busy. */
const TOLD_WITHIN_MS = 15_000;
/** How long the network is gone in the middle of a section. */
const GAP_MS = 60_000;

// a minute of it is the gap, and a machine that is busy takes its time for the rest
test.setTimeout(480_000);
test.beforeAll(async () => {
  server.seed();
  await server.start();
});
test.afterAll(() => server.kill());

const saveNote = (page: Page) => page.locator("[data-save]");
const cover = (page: Page, kind: string) => page.locator(`[data-cover="${kind}"]`);
const rows = (page: Page) => page.locator("[data-report] h2");

async function signInAt(context: BrowserContext, signInName: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${server.address}/sign-in`);
  await page.getByLabel("Sign-in name").fill(signInName);
  await page.getByLabel("Password").fill(PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page.getByRole("heading", { name: "Good to see you" })).toBeVisible();
  return page;
}

/** A point indication at the cursor, by key. */
async function writeRow(page: Page): Promise<void> {
  await plateOf(page).focus();
  await page.keyboard.press("p");
}

/** Comes in, starts the fillet as soon as its piece is made, and waits until it lies on the bench. */
async function start(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Start the fillet weld" }).click({ timeout: MADE_WITHIN_MS });
  await expect(page).toHaveURL(/\/practice\//);
  await waitForPicture(page);
}

/** By how much the time on the screen is off from the server's, s. */
async function clockError(page: Page, learner: Session, runId: string): Promise<number> {
  const shown = page.locator("[data-seconds-left]");
  const sentAt = Date.now();
  const { body } = await learner.send("GET", `/api/runs/${runId}`);
  const seconds = Number(await shown.getAttribute("data-seconds-left"));
  const took = (Date.now() - sentAt) / 1000;
  const left = (Date.parse(body.run.clock.deadline) - Date.parse(body.now)) / 1000;
  // the screen rounds up to the next second and was read some time after the server's answer
  return Math.max(0, seconds - Math.ceil(left), left - took - seconds);
}

test("a learner sits a section: time, gaps, windows, a killed browser, an expired clock, and marks when they are released", async ({
  browser,
}) => {
  const tutor = await server.signIn("maren");
  const ilse = await server.signIn("ilse");
  const [fillet] = defaultPaper().sections.filter(({ section }) => section === "fillet");
  const section = {
    ...fillet,
    minutes: 8,
    piece: { ...fillet.piece, blueprint: "clean" },
    aids: { criteriaTable: "closed", lens: false, asksReading: false },
  };
  const paper = { ...defaultPaper(), name: "Fillet by heart", sections: [section] };
  const { body: kept } = await tutor.send("POST", "/api/papers", { paper, seen: null });
  const plan = { classId: "class", paperId: kept.id, plannedAt: new Date().toISOString(), who: "class" };
  const { body: planned } = await tutor.send("POST", "/api/sittings", plan);
  const at = `/api/sittings/${planned.id}`;
  const act = async (path: string, body?: object) => expect((await tutor.send("POST", path, body)).status).toBe(200);

  // before it is open: the paper can be read, and nothing else
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: "en-GB" });
  const today = await signInAt(context, "ilse");
  await expect(today.getByText("Fillet by heart, Monday class.")).toBeVisible();
  await today.getByRole("link", { name: "Read the paper" }).click();
  await expect(today.getByRole("heading", { name: "Fillet by heart" })).toBeVisible();
  await expect(today.getByText("8 minutes", { exact: true })).toBeVisible();
  await expect(today.getByText("You have no lens.")).toBeVisible();
  await expect(today.getByText("You see your mark sheets when the tutor releases them.")).toBeVisible();
  await expect(today.getByRole("button", { name: "Come in" })).toHaveCount(0);
  expect((await new AxeBuilder({ page: today }).analyze()).violations).toEqual([]);

  // the page hears by itself that it is open, and that it has begun
  await act(`${at}/open`);
  await today.getByRole("button", { name: "Come in" }).click({ timeout: 30_000 });
  await expect(today.getByRole("heading", { name: "You are in" })).toBeVisible();
  await expect(today.getByRole("button", { name: "Start the fillet weld" })).toHaveCount(0);
  await act(`${at}/begin`);
  await start(today);
  let page = today;
  const practiceId = new URL(page.url()).pathname.split("/")[2];
  const { body: entered } = await ilse.send("POST", `${at}/enter`);
  const { runId } = entered.sitting.sections[0];
  const stored = async () => (await ilse.send("GET", `/api/runs/${runId}`)).body.run;

  // aids as the paper has them, by hand and by key
  await expect(page.getByRole("button", { name: "Lens" })).toHaveCount(0);
  await plateOf(page).focus();
  await page.keyboard.press("l");
  await expect(page.getByRole("button", { name: "Turn" })).toBeVisible();
  expect(await clockError(page, ilse, runId)).toBeLessThanOrEqual(1);

  await test.step("the time can be hidden, and a key tells it", async () => {
    await page.getByRole("button", { name: "Hide the time" }).click();
    await expect(page.locator("[data-seconds-left]")).toHaveCount(0);
    await plateOf(page).focus();
    await page.keyboard.press("u");
    await expect(page.locator("[data-time-said]")).toHaveText(/\d minutes?( \d+ seconds?)? left\./);
    await page.getByRole("button", { name: "Show the time" }).click();
    await expect(page.locator("[data-seconds-left]")).toBeVisible();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  });

  await test.step("a closed book is closed everywhere: no limits in another tab, and no piece with an open book", async () => {
    const other = await context.newPage();
    await other.goto(`${server.address}/limits`);
    await expect(other.getByRole("heading", { name: "The book is closed" })).toBeVisible();
    await expect(other.locator("body")).not.toContainText("ISO 5817");
    expect((await new AxeBuilder({ page: other }).analyze()).violations).toEqual([]);
    await expect(other.getByRole("link", { name: "To your sitting" })).toHaveAttribute(
      "href",
      `/sitting/${planned.id}`,
    );
    await other.close();
    const taken = await ilse.send("POST", "/api/practice", { book: "open" });
    expect([taken.status, taken.body.code]).toEqual([409, "book-closed"]);
    expect((await tutor.fetchBytes("/limits")).status).toBe(200);
  });

  await test.step("a gap of a minute in the network: what is written is kept, and sent when it is back", async () => {
    await writeRow(page);
    await expect(saveNote(page)).toHaveText(/^Saved \d\d:\d\d/);
    await context.setOffline(true);
    const gone = Date.now();
    await writeRow(page);
    await expect(page.locator("[data-offline]")).toContainText(/No connection since \d\d:\d\d/);
    await expect(saveNote(page)).toContainText("Not saved");
    await page.waitForTimeout(gone + GAP_MS / 2 - Date.now());
    await writeRow(page);
    await page.waitForTimeout(gone + GAP_MS - Date.now());
    // the clock goes on from what is known of the server's, and nothing has come there
    expect(await clockError(page, ilse, runId)).toBeLessThanOrEqual(1);
    expect((await stored()).sequence).toBe(1);
    await context.setOffline(false);
    await expect(page.locator("[data-offline]")).toHaveCount(0, { timeout: TOLD_WITHIN_MS });
    await expect(saveNote(page)).toHaveText(/^Saved/, { timeout: 30_000 });
    expect((await stored()).sequence).toBe(3);
  });

  await test.step("a pause covers the bench, and extra time is told", async () => {
    await act(`${at}/pause`);
    await expect(cover(page, "paused")).toContainText("Your tutor has paused the sitting", { timeout: TOLD_WITHIN_MS });
    await expect(cover(page, "paused")).toContainText("Everything you wrote is saved");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect(cover(page, "paused")).toBeVisible();
    await act(`${at}/resume`);
    await expect(cover(page, "paused")).toHaveCount(0, { timeout: TOLD_WITHIN_MS });
    await act(`/api/runs/${runId}/add-time`, { minutes: 3, reason: "the lamp went out" });
    await expect(page.locator("[data-time-said]")).toContainText("Your tutor gave you 3 minutes more", {
      timeout: TOLD_WITHIN_MS,
    });
    expect(await clockError(page, ilse, runId)).toBeLessThanOrEqual(1);
  });

  await test.step("a second window takes over, with its own clock wrong by an hour; and the first one takes back", async () => {
    const second = await context.newPage();
    await second.clock.install({ time: new Date(Date.now() + 3_600_000) });
    await second.goto(`${server.address}/practice/${practiceId}`);
    await expect(cover(page, "elsewhere")).toContainText("another window", { timeout: 30_000 });
    await expect(rows(second)).toContainText("3 indications");
    await expect(second.locator("[data-seconds-left]")).toBeVisible();
    expect(await clockError(second, ilse, runId)).toBeLessThanOrEqual(1);
    await cover(page, "elsewhere").getByRole("button", { name: "Go on in this window" }).click();
    await expect(cover(second, "elsewhere")).toBeVisible({ timeout: 30_000 });
    await waitForPicture(page);
    await expect(cover(page, "elsewhere")).toHaveCount(0);
    await second.close();
    await writeRow(page);
    await expect(rows(page)).toContainText("4 indications");
    await expect.poll(async () => (await stored()).sequence).toBe(4);
  });

  await test.step("a browser that is killed comes back with everything", async () => {
    await context.setOffline(true);
    await writeRow(page);
    await expect(rows(page)).toContainText("5 indications");
    await page.close();
    await context.setOffline(false);
    expect((await stored()).sequence).toBe(4);
    page = await context.newPage();
    await page.goto(`${server.address}/practice/${practiceId}`);
    await expect(rows(page)).toContainText("5 indications", { timeout: 30_000 });
    await expect.poll(async () => (await stored()).sequence, { timeout: 30_000 }).toBe(5);
    await waitForPicture(page);
  });

  await test.step("hands in early, in a window of another learner's", async () => {
    const other = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true, locale: "en-GB" });
    const bruno = await signInAt(other, "bruno");
    await bruno.getByRole("link", { name: "To the sitting" }).tap();
    await bruno.getByRole("button", { name: "Come in" }).tap();
    await start(bruno);
    await bruno.getByRole("button", { name: "Hand in" }).tap();
    await bruno.getByRole("dialog").getByRole("button", { name: "Hand in without the questions" }).tap();
    await expect(bruno).toHaveURL(`${server.address}/sitting/${planned.id}`);
    await expect(bruno.locator('[data-section="fillet"]')).toContainText("Handed in");
    await expect(bruno.locator('[data-section="fillet"]')).toContainText("when your tutor releases them");
    await expect(bruno.getByRole("link", { name: "Mark sheet" })).toHaveCount(0);
    await other.close();
  });

  await test.step("the clock runs out: what was written in time is in it", async () => {
    const { clock } = await stored();
    server.letTimePass(Date.parse(clock.deadline) - Date.now() - 12_000);
    await expect.poll(async () => (await stored()).clock.deadline).not.toBe(clock.deadline);
    await expect
      .poll(async () => Number(await page.locator("[data-seconds-left]").getAttribute("data-seconds-left")))
      .toBeLessThan(12);
    await writeRow(page);
    await expect(cover(page, "time-is-up")).toContainText("Everything you wrote is in it", { timeout: 40_000 });
    await expect.poll(async () => (await stored()).shut).toBe("time-is-up");
    expect((await stored()).sequence).toBe(6);
    await cover(page, "time-is-up").getByRole("link", { name: "To the sitting" }).click();
    await expect(page.locator('[data-section="fillet"]')).toContainText("Time was over");
    await expect(page.locator('[data-section="fillet"]')).toContainText("when your tutor releases them");
  });

  await test.step("no marks before they are released, and marks then", async () => {
    // neither bench nor mark sheet: both lead to the page that says when
    for (const path of [`/practice/${practiceId}/marks`, `/practice/${practiceId}`]) {
      await page.goto(server.address + path);
      await expect(page).toHaveURL(`${server.address}/sitting/${planned.id}`);
    }
    await expect(page.locator("body")).not.toContainText("not passed");
    expect((await tutor.send("POST", `${at}/close`)).status).toBeLessThan(500);
    await expect.poll(async () => (await tutor.send("POST", `${at}/release`)).status, { timeout: 30_000 }).toBe(200);
    await page.goto(server.address);
    await expect(page.getByText("Your marks are there: open the mark sheets.")).toBeVisible();
    await page.getByRole("link", { name: "See the sitting" }).click();
    await expect(page.locator('[data-section="fillet"]')).toContainText(/(not )?passed, needed 70/);
    await expect(page.getByText("Sit the fillet weld again on a fresh piece.")).toBeVisible();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.getByRole("link", { name: "Mark sheet" }).click();
    await expect(page.getByRole("heading", { name: "Mark sheet" })).toBeVisible();
    await expect(page.getByRole("link", { name: "Back to the sitting" })).toBeVisible();
    await page.goto(`${server.address}/history`);
    const row = page.getByRole("row", { name: /Fillet by heart/ });
    await expect(row).toContainText("first time");
    await expect(row).toContainText("not passed");
  });
});

test("a paper of two sections is sat one after the other, each on its own clock", async ({ browser }) => {
  const tutor = await server.signIn("maren");
  const bruno = await server.signIn("bruno");
  const paper = {
    ...defaultPaper(),
    name: "Plate, then fillet",
    sections: defaultPaper().sections.map((one) => ({ ...one, piece: { ...one.piece, blueprint: "clean" } })),
  };
  const { body: kept } = await tutor.send("POST", "/api/papers", { paper, seen: null });
  const plan = { classId: "class", paperId: kept.id, plannedAt: new Date().toISOString(), who: "class" };
  const { body: planned } = await tutor.send("POST", "/api/sittings", { ...plan, learnerIds: ["bruno"] });
  const at = `/api/sittings/${planned.id}`;
  for (const act of ["open", "begin"]) expect((await tutor.send("POST", `${at}/${act}`)).status).toBe(200);
  const sections = async () => (await bruno.send("POST", `${at}/enter`)).body.sitting.sections;

  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: "en-GB" });
  const page = await signInAt(context, "bruno");
  await page.goto(`${server.address}/sitting/${planned.id}`);
  await page.getByRole("button", { name: "Come in" }).click();
  await page.getByRole("button", { name: "Start the butt plate" }).click({ timeout: MADE_WITHIN_MS });
  await waitForPicture(page);
  await writeRow(page);
  await expect(saveNote(page)).toHaveText(/^Saved/);

  // one is sat at a time, and the clock of the other one stands
  await expect.poll(async () => (await sections())[1].piece, { timeout: MADE_WITHIN_MS }).toBe("ready");
  const [plate, fillet] = await sections();
  expect([plate.state, fillet.state, fillet.clock.state]).toEqual(["running", "waiting", "not-started"]);
  const early = await bruno.send("POST", `/api/runs/${fillet.runId}/start`, { windowId: "window01" });
  expect([early.status, early.body.code]).toEqual([409, "other-section-open"]);
  await page.getByRole("button", { name: "Hand in" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Hand in without the questions" }).click();
  await expect(page).toHaveURL(`${server.address}/sitting/${planned.id}`);
  await expect(page.locator('[data-section="plate"]')).toContainText("Handed in");

  await start(page);
  expect(await clockError(page, bruno, fillet.runId)).toBeLessThanOrEqual(1);
  const seconds = Number(await page.locator("[data-seconds-left]").getAttribute("data-seconds-left"));
  expect(seconds, "the whole time of the fillet").toBeGreaterThan(29 * 60);
  await expect(rows(page)).not.toContainText("1 indication");
  await writeRow(page);
  await expect(saveNote(page)).toHaveText(/^Saved/);
  await page.getByRole("button", { name: "Hand in" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Hand in without the questions" }).click();
  await expect(page.locator('[data-section="fillet"]')).toContainText("Handed in");
  await expect(page.getByRole("button", { name: /^Start the/ })).toHaveCount(0);
  expect((await sections()).map(({ state }: { state: string }) => state)).toEqual(["handed-in", "handed-in"]);
  expect((await tutor.send("POST", `${at}/close`)).status).toBe(200);
  await expect.poll(async () => (await tutor.send("POST", `${at}/release`)).status, { timeout: 30_000 }).toBe(200);
  await expect(page.locator('[data-section="plate"]')).toContainText(/passed, needed 70/, { timeout: TOLD_WITHIN_MS });
  await expect(page.locator('[data-section="fillet"]')).toContainText(/passed, needed 70/);
  await context.close();
});
