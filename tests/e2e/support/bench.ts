import { expect, type Locator, type Page } from "@playwright/test";
import { toScreen, wholePlate } from "../../../lib/bench";
import { imperfection } from "../../../lib/imperfections";
import type { TruthItem } from "../../../lib/specimen";
import type { Aspect } from "../../../lib/weld";

const SETTLED_WITHIN_MS = 60_000;

export const plateOf = (page: Page): Locator => page.locator("[data-specimen]");

/** Waits until the picture is drawn in full quality. */
export async function waitForPicture(page: Page): Promise<void> {
  await expect(plateOf(page)).toHaveAttribute("data-settled", "true", { timeout: SETTLED_WITHIN_MS });
}

/** Where a place is on the screen while the whole of what is seen from an aspect is shown. */
export async function onScreen(page: Page, aspect: Aspect, x: number, y: number): Promise<{ x: number; y: number }> {
  const box = await plateOf(page).boundingBox();
  if (!box) throw new Error("the plate is not on the screen");
  const at = toScreen(wholePlate({ aspect, width: box.width, height: box.height }), { x, y });
  return { x: box.x + at.left, y: box.y + at.top };
}

/** Fills in the open row as a careful inspector would. */
export async function fillOpenRow(page: Page, item: Omit<TruthItem, "face">): Promise<void> {
  const form = page.getByRole("group", { name: /^Indication \d+$/ });
  await chooseType(page, item);
  const isPoint = imperfection(item.type).extent === "point";
  await form.getByLabel(isPoint ? "At, from the datum" : "From").fill(item.start.toFixed(1));
  if (!isPoint) await form.getByLabel("To", { exact: true }).fill(item.end.toFixed(1));
  await form.getByLabel(/^Across/).fill(item.across.toFixed(1));
  const { size } = imperfection(item.type);
  if (size && item.size !== null) await form.getByLabel(new RegExp(`^${size}$`, "i")).fill(item.size.toFixed(1));
}

/** By keyboard: the number of ISO 6520-1, then Enter. */
async function chooseType(page: Page, item: Pick<TruthItem, "type">): Promise<void> {
  const { name, number } = imperfection(item.type);
  const picker = page.getByRole("combobox", { name: "What it is" });
  await picker.focus();
  await picker.fill(number);
  await expect(page.getByRole("option", { name: new RegExp(name) })).toBeVisible();
  await picker.press("Enter");
  await expect(picker).toHaveValue(`${name} (${number})`);
}

/** Moves the cursor on the plate by arrow keys alone, from where it is to a place in mm. */
export async function moveCursor(page: Page, from: { x: number; up: number }, to: { x: number; up: number }) {
  await plateOf(page).focus();
  await pressSteps(page, to.x - from.x, "ArrowRight", "ArrowLeft");
  await pressSteps(page, to.up - from.up, "ArrowUp", "ArrowDown");
}

async function pressSteps(page: Page, distance: number, forwards: string, backwards: string): Promise<void> {
  const key = distance > 0 ? forwards : backwards;
  const whole = Math.round(Math.abs(distance));
  for (let n = 0; n < Math.floor(whole / 10); n++) await page.keyboard.press(`Shift+${key}`);
  for (let n = 0; n < whole % 10; n++) await page.keyboard.press(key);
}
