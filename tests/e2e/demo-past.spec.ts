import { expect, test } from "@playwright/test";
import { OwnServer } from "./support/own-server";

const server = new OwnServer(Number(process.env.PORT ?? 3213) + 1001, `${process.cwd()}/test-results/demo-past.db`);

// a server of its own is started twice; its past is not waited for
test.setTimeout(300_000);
test.afterAll(() => server.kill());

test("the demo opens at once, says on the desk how far its past is written, and goes on after the power was gone", async ({
  page,
}) => {
  server.clear();
  await server.start();
  await page.goto(`${server.address}/setup`);
  await page.getByRole("button", { name: "Open the demo workshop" }).click();
  await expect(page.getByText("They are not shown again")).toBeVisible();
  await expect(page.locator("tbody tr")).toHaveCount(6);
  await page.getByRole("button", { name: "Begin as Maren" }).click();
  const notice = page.getByText(/The demo's history is being written/);
  await expect(notice).toContainText(/[1-9]\d* of \d+ entries/, { timeout: 60_000 });
  const entries = async () => Number(/(\d+) of/.exec((await notice.textContent()) ?? "")?.[1]);
  const before = await entries();
  await server.kill();
  await server.start();
  await page.reload();
  // the next entry may wait for a plate that is made anew, on a machine that is cold
  await expect.poll(entries, { timeout: 150_000 }).toBeGreaterThan(before);
  await page.goto(`${server.address}/desk/classes`);
  await expect(page.getByRole("link", { name: "Morning inspectors", exact: true })).toBeVisible();
});
