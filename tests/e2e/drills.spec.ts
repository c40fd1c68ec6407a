import AxeBuilder from "@axe-core/playwright";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { DRILL_GAUGES, drawLargestTask, drawSeatTask, ROUND_LENGTH, type SeatTask } from "../../lib/drills";
import { randomStream } from "../../lib/random";
import { dragByTouch, gaugeSays, readByEye, slideOf, youRead } from "./support/gauge";
import { joinAs } from "./support/people";
import { send } from "./support/practice";

test.setTimeout(180_000);

const told = (page: Page): Locator => page.locator("[data-told]");
const plan = (page: Page): Locator => page.locator("[data-plan]");

/** Name of the random stream of the task at hand: a drill's answers are in the browser anyway. */
async function taskName(page: Page): Promise<string> {
  return (await page.locator("[data-task]").getAttribute("data-task")) ?? "";
}

/** On a busy machine a tap may last so long that the browser takes it for a press and hold: then it is tried again. */
async function tapUntil(target: Locator, seen: Locator): Promise<void> {
  await expect(async () => {
    await target.tap({ timeout: 3000 });
    await expect(seen).toBeVisible({ timeout: 3000 });
  }).toPass();
}

async function choose(page: Page, gauges: readonly string[]): Promise<void> {
  await expect(page.getByRole("button", { name: "Begin a round" })).toBeVisible();
  for (const box of await page.getByRole("checkbox").all()) await box.uncheck();
  for (const gauge of gauges) await page.getByRole("checkbox", { name: gauge }).check();
}

test("scales are read in a round by keyboard alone, and the round is kept", async ({ page }) => {
  await joinAs(page, "Hanne Roos", "hanne");
  await page.getByRole("link", { name: "To the drills" }).press("Enter");
  await expect(page.getByText("Begin with “Read the scale”")).toBeVisible();
  await page.getByRole("link", { name: "Begin: Read the scale" }).press("Enter");
  const begin = page.getByRole("button", { name: "Begin a round" });
  await expect(begin).toBeFocused();
  await choose(page, []);
  await begin.press("Enter");
  await expect(page.getByText("Choose at least one gauge to begin.")).toBeVisible();
  await choose(page, ["Butt-weld height gauge"]);
  await begin.press("Enter");

  let hasErred = false;
  for (let n = 1; n <= ROUND_LENGTH["read-scale"]; n++) {
    await expect(page.locator("[data-tally]")).toContainText(`${n} of 10`);
    await expect(youRead(page)).toBeFocused();
    const read = await readByEye(page);
    if (n === 1) {
      // nothing is taken for an answer that is none
      for (const [typed, problem] of [
        ["", "Type what the scale reads, for example 12.5."],
        ["abc", "“abc” is no number. Write a number, for example 12.5."],
        ["15.5", "From -5 to 15 mm."],
      ]) {
        await youRead(page).fill(typed);
        await page.keyboard.press("Enter");
        await expect(page.getByRole("alert").filter({ hasText: problem })).toBeVisible();
        await expect(told(page)).toHaveCount(0);
      }
      await youRead(page).fill("");
    }
    // from 2 mm up no other slip gives a reading one whole mm short
    const isWrong = !hasErred && read >= 2;
    if (isWrong) hasErred = true;
    const answer = isWrong ? read - 1 : read;
    // with a comma every other time, and a true minus sign where there is one
    const text = answer.toFixed(1).replace("-", "−");
    await page.keyboard.type(n % 2 === 0 ? text.replace(".", ",") : text);
    await page.keyboard.press("Enter");
    await expect(told(page)).toHaveAttribute("data-told", isWrong ? "wrong" : "right");
    await expect(told(page)).toContainText(`It reads ${String(read).replace("-", "−")}\u00a0mm`);
    if (isWrong) await expect(told(page)).toContainText("one whole mm out");
    await page.keyboard.press("Enter");
  }
  await expect(page.getByRole("heading", { name: "9 of 10 right" })).toBeVisible();
  await expect(page.getByText("Kept among your rounds.")).toBeVisible();
  await page.getByRole("link", { name: "To the drills" }).press("Enter");
  const rounds = page.getByRole("table", { name: "Your last rounds: Read the scale" });
  await expect(rounds).toContainText("9 of 10");
  await expect(rounds).toContainText("Height");
  await expect(page.getByText("Next is “Seat the gauge”")).toBeVisible();
});

test("gauges are seated in a round by keyboard alone", async ({ page }) => {
  await joinAs(page, "Onno Lind", "onno");
  await page.goto("/drills/seat-gauge");
  await page.getByRole("button", { name: "Begin a round" }).press("Enter");
  for (let n = 1; n <= ROUND_LENGTH["seat-gauge"]; n++) {
    await expect(page.locator("[data-tally]")).toContainText(`${n} of 5`);
    const task = drawSeatTask(randomStream(await taskName(page)), DRILL_GAUGES["seat-gauge"]);
    const done = page.getByRole("button", { name: "It sits right" });
    if (n > 1) await seatByKeys(page, task);
    await done.press("Enter");
    await expect(told(page), task.kind).toHaveAttribute("data-told", n === 1 ? "wrong" : "right");
    if (n === 1) {
      await expect(told(page)).toContainText("The moving part stands beside the place that was asked for.");
      await expect(told(page)).toContainText("The gauge is not square to the weld: turn it.");
      await page.getByRole("button", { name: "Show a right seat" }).press("Enter");
      await expect(told(page)).toContainText("The gauge now stands in a seat that is right.");
      await expect.poll(() => shownBy(page, "Along")).toBe(task.solution.x);
    } else {
      await expect(told(page)).toContainText("as it does when it is seated right");
    }
    await page.getByRole("button", { name: n === 5 ? "See the round" : "Go on" }).press("Enter");
  }
  await expect(page.getByRole("heading", { name: "4 of 5 right" })).toBeVisible();
  await expect(page.getByText("Kept among your rounds.")).toBeVisible();
});

/** What a pair of buttons shows between them. */
async function shownBy(page: Page, label: string): Promise<number> {
  const more = page.getByRole("button", { name: `${label}: more` });
  return Number.parseFloat((await more.locator("xpath=preceding-sibling::output").textContent()) ?? "");
}

/** Moves, turns and sets the gauge by the keys of the plan until it stands as the task's solution has it. */
async function seatByKeys(page: Page, { solution }: SeatTask): Promise<void> {
  await plan(page).focus();
  const press = async (label: string, wanted: number, less: string, more: string, step: number) => {
    for (let n = 0; n < 400; n++) {
      const off = wanted - (await shownBy(page, label));
      if (Math.abs(off) < step / 2) return;
      await page.keyboard.press(off > 0 ? more : less);
    }
  };
  if ("stance" in solution) {
    const stance = solution.stance === "straddling" ? "Both sides" : "One side";
    if (!(await page.getByRole("radio", { name: stance }).isChecked())) await page.keyboard.press("x");
    await press("Feet apart", solution.spacing, ",", ".", 1);
    await press("Nearest foot", solution.near, "j", "k", 0.5);
    await press("Feet apart", solution.spacing, ",", ".", 1);
  } else {
    await press("Slide to sole", "reach" in solution ? solution.reach : 0, "j", "k", 1);
  }
  await press("Along", solution.x, "ArrowLeft", "ArrowRight", 1);
  await press("Along", solution.x, "Alt+ArrowLeft", "Alt+ArrowRight", 0.1);
  await press("Across", solution.y, "ArrowDown", "ArrowUp", 1);
  await press("Across", solution.y, "Alt+ArrowDown", "Alt+ArrowUp", 0.1);
  await press("Turned", solution.turn, "e", "q", 15);
  await press("Turned", solution.turn, "Shift+e", "Shift+q", 1);
}

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true });

  test("the largest is found in a round by touch", async ({ page }) => {
    await joinAs(page, "Marit Eck", "marit");
    await page.goto("/drills/find-largest");
    await page.getByRole("button", { name: "Begin a round" }).tap();
    for (let n = 1; n <= ROUND_LENGTH["find-largest"]; n++) {
      await expect(page.locator("[data-tally]")).toContainText(`${n} of 3`);
      const task = drawLargestTask(randomStream(await taskName(page)), DRILL_GAUGES["find-largest"]);
      const { x0, x1, y1 } = task.heights.extent;
      const box = await plan(page).boundingBox();
      if (!box) throw new Error("no plan on the screen");
      const perMm = box.width / (x1 - x0);
      // beside the gauge the plate is tapped, and the gauge comes there
      await page.touchscreen.tap(box.x + (task.truth.at - x0) * perMm, box.y + (y1 - task.line) * perMm);
      await expect.poll(async () => Math.abs((await shownBy(page, "Along")) - task.truth.at)).toBeLessThan(1);
      const slide = await slideOf(page).boundingBox();
      if (!slide) throw new Error("no gauge on the screen");
      const from = { x: slide.x + 60, y: slide.y + 30 };
      await dragByTouch(page, from, { ...from, y: from.y + 220 });
      await expect(gaugeSays(page)).toContainText("It touches the metal.");
      await expect(page.locator("[data-read]")).toHaveCount(1);
      await expect(page.getByText("Read at 1 place.")).toBeVisible();

      const done = page.getByRole("button", { name: "That is the largest" });
      await tapUntil(done, page.getByText("Type where it was, in mm from the datum, for example 45."));
      // the last one where it is not
      const at = n === 3 ? (task.truth.at > 75 ? task.truth.at - 40 : task.truth.at + 40) : task.truth.at;
      await page.getByLabel(/^Largest/).fill(task.truth.value.toFixed(1).replace(".", ","));
      await page.getByLabel("Where, from the datum").fill("200");
      await tapUntil(done, page.getByRole("alert").filter({ hasText: "From 0 to 150 mm." }));
      await page.getByLabel("Where, from the datum").fill(String(at));
      await tapUntil(done, told(page));
      await expect(told(page)).toHaveAttribute("data-told", n === 3 ? "wrong" : "right");
      await expect(told(page)).toContainText("You had the peak under the gauge.");
      if (n === 3) await expect(told(page)).toContainText("40\u00a0mm beside the place");
      const goOn = page.getByRole("button", { name: n === 3 ? "See the round" : "Go on" });
      await tapUntil(goOn, n === 3 ? page.getByRole("heading", { name: "2 of 3 right" }) : done);
    }
    await expect(page.getByText("Kept among your rounds.")).toBeVisible();
  });
});

test("a gauge is dragged on the plan, turned by its knob, and set by buttons", async ({ page }) => {
  await joinAs(page, "Jara Moll", "jara");
  await page.goto("/drills/seat-gauge");
  await choose(page, ["Butt-weld height gauge"]);
  await page.getByRole("button", { name: "Begin a round" }).click();
  await expect(plan(page)).toBeVisible();
  const task = drawSeatTask(randomStream(await taskName(page)), ["height-gauge"]);
  const { x0, x1, y1 } = task.heights.extent;
  const box = await plan(page).boundingBox();
  if (!box) throw new Error("no plan on the screen");
  const perMm = box.width / (x1 - x0);
  const onPlan = (x: number, y: number) => ({ x: box.x + (x - x0) * perMm, y: box.y + (y1 - y) * perMm });
  const drag = async (from: { x: number; y: number }, to: { x: number; y: number }) => {
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
    await page.mouse.move(to.x, to.y);
    await page.mouse.up();
  };
  await drag(onPlan(task.first.x, 0), onPlan(55, 2));
  const comesTo = (label: string, wanted: number, within: number) =>
    expect.poll(async () => Math.abs((await shownBy(page, label)) - wanted), label).toBeLessThan(within);
  await comesTo("Along", 55, 0.5);
  await comesTo("Across", 2, 0.5);
  const knob = await plan(page).locator('circle[r="13"]').first().boundingBox();
  if (!knob) throw new Error("no knob on the plan");
  const spot = onPlan(55, 2);
  await drag({ x: knob.x + knob.width / 2, y: knob.y + knob.height / 2 }, { x: spot.x, y: spot.y - 150 });
  await comesTo("Turned", 90, 2);
  await page.getByRole("button", { name: "Nearest foot: more" }).click();
  await comesTo("Nearest foot", 18.5, 0.1);
  await page.getByText("One side", { exact: true }).click();
  await expect(page.getByRole("radio", { name: "One side" })).toBeChecked();
});

test("a round that does not reach the server can be sent again", async ({ page }) => {
  await joinAs(page, "Signe Hald", "signe");
  await page.goto("/drills/read-scale");
  await page.getByRole("button", { name: "Begin a round" }).click();
  await page.route("**/api/drills", (route) => route.abort());
  for (let n = 1; n <= ROUND_LENGTH["read-scale"]; n++) {
    await youRead(page).fill("5");
    await page.keyboard.press("Enter");
    await expect(told(page)).toBeVisible();
    await page.keyboard.press("Enter");
  }
  await expect(page.getByRole("alert").filter({ hasText: "did not reach the server" })).toBeVisible();
  await page.unroute("**/api/drills");
  await page.getByRole("button", { name: "Send it again" }).click();
  await expect(page.getByText("Kept among your rounds.")).toBeVisible();
});

test("the drills have nothing that axe finds fault with, and refuse what is no round", async ({ page }) => {
  await page.goto("/drills/seat-gauge");
  await expect(page).toHaveURL("/sign-in?to=%2Fdrills%2Fseat-gauge");
  await joinAs(page, "Pia Storm", "pia");
  const check = async (where: string) => {
    const { violations } = await new AxeBuilder({ page }).include("main").analyze();
    expect(violations.map(({ id, nodes }) => `${where}: ${id} ${nodes[0].html}`)).toEqual([]);
  };
  await page.goto("/drills");
  await check("drills");
  for (const drill of ["read-scale", "seat-gauge", "find-largest"] as const) {
    await page.goto(`/drills/${drill}`);
    await page.getByRole("button", { name: "Begin a round" }).click();
    await expect(page.locator("[data-task]")).toBeVisible();
    await check(drill);
    if (drill === "read-scale") await youRead(page).fill("1");
    if (drill === "find-largest") {
      await page.getByLabel(/^Largest/).fill("1");
      await page.getByLabel("Where, from the datum").fill("60");
    }
    await page.getByRole("button", { name: /^(Check|It sits right|That is the largest)$/ }).click();
    await expect(told(page)).toBeVisible();
    await check(`${drill}, told`);
  }
  expect((await page.goto("/drills/juggling"))?.status()).toBe(404);
  const refused = await send(page, "POST", "/api/drills", { drill: "read-scale", asked: 10, right: 99 });
  expect(refused).toMatchObject({ status: 422, body: { code: "invalid-input" } });
});
