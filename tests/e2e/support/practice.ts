import { expect, type Page } from "@playwright/test";

const MADE_WITHIN_MS = 180_000;
/** So many fillets are taken for one that a test can do with. */
const MOST_TAKEN = 6;

/** Takes a fresh plate from Today and waits until it lies on the bench; returns the id of the practice. */
export const takeFreshPlate = (page: Page): Promise<string> => takeFresh(page, "Inspect a fresh plate");
export const takeFreshFillet = (page: Page): Promise<string> => takeFresh(page, "Inspect a fillet weld");

/**
 * Takes fillets from Today until one has on it what a test is about, and hands the others in as they are: what is drawn is up to
 * chance. Throws where none of several has it.
 */
export async function takeFilletWith(page: Page, what: string, isOnIt: (id: string) => boolean): Promise<string> {
  for (let n = 0; n < MOST_TAKEN; n++) {
    const id = await takeFreshFillet(page);
    if (isOnIt(id)) return id;
    expect(await send(page, "POST", `/api/practice/${id}/hand-in`)).toMatchObject({ status: 200 });
  }
  throw new Error(`none of ${MOST_TAKEN} fillets: ${what}`);
}

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
