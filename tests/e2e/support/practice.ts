import { expect, type Page } from "@playwright/test";

const MADE_WITHIN_MS = 180_000;

/** Takes a fresh plate from Today and waits until it lies on the bench; returns the id of the practice. */
export const takeFreshPlate = (page: Page): Promise<string> => takeFresh(page, "Inspect a fresh plate");
export const takeFreshFillet = (page: Page): Promise<string> => takeFresh(page, "Inspect a fillet weld");

async function takeFresh(page: Page, name: string): Promise<string> {
  await page.goto("/");
  return pressFresh(page, name);
}

/** The same from Today as it stands, with what was chosen there. */
export async function pressFresh(page: Page, name: string): Promise<string> {
  await page.getByRole("button", { name }).click();
  await expect(page).toHaveURL(/\/practice\/[\w-]+$/);
  const id = new URL(page.url()).pathname.split("/")[2];
  await expect(page.getByRole("button", { name: "Hand in" })).toBeVisible({ timeout: MADE_WITHIN_MS });
  return id;
}

/** Sends JSON as the page itself would. */
export async function send(page: Page, method: "PUT" | "POST", path: string, body?: unknown) {
  return page.evaluate(
    async ([method, path, text]) => {
      const headers = { "content-type": "application/json" };
      const response = await fetch(path, { method, headers, ...(text !== undefined && { body: text }) });
      return { status: response.status, body: await response.json() };
    },
    [method, path, body === undefined ? undefined : JSON.stringify(body)] as const,
  );
}
