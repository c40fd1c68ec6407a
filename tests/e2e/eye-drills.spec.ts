import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { judge, targetOf } from "../../lib/eye-tasks";
import { readEyeTask } from "./support/eye-truth";
import { joinAs } from "./support/people";

test.setTimeout(300_000);

/** Until there is a plate that windows can be cut from. */
const MADE_WITHIN_MS = 180_000;
const TASKS = 10;

test("a mixed round is taken by keyboard alone, goes on after a reload, and tells nothing before an answer", async ({
  page,
}) => {
  const early: string[] = [];
  page.on("response", async (response) => {
    const url = response.url();
    if (/\/drills|\/api\/eye\/rounds/.test(url)) early.push(await response.text().catch(() => ""));
  });
  await joinAs(page, "Tilda Voss", "tilda");
  await page.goto("/drills");
  await page.getByRole("button", { name: "Begin: Mixed round" }).press("Enter");
  await expect(page).toHaveURL(/\/drills\/eye\/[\w-]+$/);
  const task = page.locator("[data-task]");
  const told = page.locator("[data-told]");
  await expect(task).toBeVisible({ timeout: MADE_WITHIN_MS });
  await expect(page.locator("[data-painted=true]").first()).toBeVisible({ timeout: 60_000 });
  await carryTorchByKeys(page);
  const seen = new Set<string>();
  for (let n = 1; n <= TASKS; n++) {
    await expect(page.locator("[data-tally]")).toContainText(`${n} of ${TASKS}`);
    const kind = (await task.getAttribute("data-kind")) ?? "";
    if (!seen.has(kind)) await check(page, kind);
    const isWrong = n === 3;
    await answerByKeys(page, (await task.getAttribute("data-task")) ?? "", isWrong);
    await expect(told, kind).toHaveAttribute("data-told", isWrong ? "wrong" : "right");
    if (!seen.has(kind)) await check(page, `${kind}, told`);
    seen.add(kind);
    if (n === 4) {
      await page.reload();
      await expect(task).toBeVisible();
    } else await page.keyboard.press("Enter");
  }
  expect(seen.size).toBeGreaterThan(1);
  await expect(page.getByRole("heading", { name: "9 of 10 right" })).toBeVisible();
  await check(page, "end");
  expect(early.some((text) => text.includes("asking"))).toBe(true);
  for (const text of early) expect(text).not.toMatch(/isTarget|specimenId|"outline"|isTurned/);
  await page.getByRole("link", { name: "To the drills" }).press("Enter");
  await expect(page.getByRole("table", { name: "Your last rounds, by kind of task" })).toBeVisible();
  await check(page, "drills with a record");
  await page.goto("/progress");
  await expect(page.getByText("9 of 10 answers were right. Drills are in none of the figures here.")).toBeVisible();
});

async function check(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).include("main").analyze();
  expect(violations.map(({ id, nodes }) => `${where}: ${id} ${nodes[0].html}`)).toEqual([]);
}

/** From the question back to the torch, once round by an eighth, and to the question again, whatever of it had the focus. */
async function carryTorchByKeys(page: Page): Promise<void> {
  const question = await page.evaluateHandle(() => document.activeElement);
  const torch = page.getByRole("button", { name: /^Torch: light from the top left/ }).first();
  await torch.focus();
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByRole("button", { name: /^Torch: light from the left/ }).first()).toBeVisible();
  await question.asElement()?.focus();
}

/** Answers a task by its truth, right or not, by the keys that its kind has. */
async function answerByKeys(page: Page, id: string, isWrong: boolean): Promise<void> {
  const kept = readEyeTask(id);
  const target = targetOf(kept);
  if (kept.kind === "ends" || kept.kind === "size") return measureByKeys(page, id, isWrong);
  const number = {
    spot: target?.thing.what === "imperfection" ? 1 : 2,
    pair: (target?.window ?? 0) + 1,
    name: 1 + (kept.options ?? []).map(String).indexOf(target?.thing.name ?? ""),
  }[kept.kind];
  await page.keyboard.press(String(isWrong ? (number % 2) + 1 : number));
}

async function measureByKeys(page: Page, id: string, isWrong: boolean): Promise<void> {
  const kept = readEyeTask(id);
  if (kept.kind === "size") {
    const { right } = judge(kept, { kind: "size", value: 0 });
    const value = right.kind === "size" ? right.value : Number.NaN;
    await expect(page.getByLabel("You estimate")).toBeFocused();
    await page.keyboard.type(String(isWrong ? 50 : value).replace(".", ","));
    return page.keyboard.press("Enter");
  }
  const { right } = judge(kept, { kind: "ends", from: 0, to: 1 });
  if (right.kind !== "ends") throw new Error("ends are answered with ends");
  await expect(page.getByRole("slider", { name: "Start" })).toBeFocused();
  // where it ends is no place for it to start
  if (isWrong) await toPlace(page, "Start", right.to - 1);
  else {
    await toPlace(page, "Start", right.from);
    await page.getByRole("slider", { name: "End" }).focus();
    await toPlace(page, "End", right.to);
  }
  await page.getByRole("button", { name: "Check" }).press("Enter");
}

/** Ten, one, or a tenth of a millimetre a press, until the mark is within a millimetre of where it should be. */
async function toPlace(page: Page, name: string, wanted: number): Promise<void> {
  const slider = page.getByRole("slider", { name });
  for (let n = 0; n < 60; n++) {
    const off = wanted - Number(await slider.getAttribute("aria-valuenow"));
    if (Math.abs(off) < 1) return;
    const arrow = off > 0 ? "ArrowRight" : "ArrowLeft";
    await page.keyboard.press(Math.abs(off) >= 10 ? `Shift+${arrow}` : arrow);
  }
  throw new Error(`${name} does not come to ${wanted} mm`);
}
