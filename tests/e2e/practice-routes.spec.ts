import { gunzipSync } from "node:zlib";
import { expect, test } from "@playwright/test";
import { decodeFace } from "../../lib/surface";
import { LEARNER, OTHER_LEARNER, TUTOR } from "./support/people";
import { send, takeFreshPlate } from "./support/practice";

const CALL = { id: "a", face: "cap", type: "surface-pore", start: 120, end: null, across: 0, size: 1.5 };
const REPORT = { version: 1, calls: [CALL] };

test.use(LEARNER);
test.setTimeout(240_000);

test("a practice from the fresh plate to its marks, by the routes that the bench uses", async ({ page, browser }) => {
  const id = await takeFreshPlate(page);
  const at = `/api/practice/${id}`;

  const surface = await page.request.get(`${at}/surface/cap`);
  expect(surface.headers()).toMatchObject({ "content-type": "application/gzip", "cache-control": /private/ });
  const packed = await surface.body();
  expect(decodeFace(gunzipSync(packed)).face).toBe("cap");
  const { etag } = surface.headers();
  expect((await page.request.get(`${at}/surface/cap`, { headers: { "if-none-match": etag } })).status()).toBe(304);
  expect((await page.request.get(`${at}/surface/side`)).status()).toBe(404);

  expect(await send(page, "PUT", `${at}/report`, { sequence: 5, report: REPORT })).toMatchObject({ status: 200 });
  expect(await send(page, "PUT", `${at}/report`, { sequence: 4, report: { version: 1, calls: [] } })).toMatchObject({
    status: 409,
    body: { code: "stale-save", sequence: 5, report: REPORT },
  });
  const crooked = { version: 1, calls: [{ ...CALL, start: "far left" }] };
  expect(await send(page, "PUT", `${at}/report`, { sequence: 6, report: crooked })).toMatchObject({
    status: 422,
    body: { code: "malformed-report", problem: { path: "report.calls[0].start", wanted: "a number" } },
  });
  expect((await send(page, "PUT", `${at}/report`, { sequence: 6, report: "x".repeat(300_000) })).status).toBe(413);

  const others = await browser.newContext(OTHER_LEARNER);
  const tutor = await browser.newContext(TUTOR);
  for (const context of [others, tutor]) {
    for (const path of ["progress", "surface/cap"]) {
      const denied = await context.request.get(`${at}/${path}`);
      const unknown = await context.request.get(`/api/practice/no-such-id/${path}`);
      expect([denied.status(), await denied.text()]).toEqual([404, await unknown.text()]);
    }
    const denied = await context.request.post(`${at}/hand-in`, { data: { sequence: 9, report: REPORT } });
    expect(denied.status()).toBe(404);
  }

  expect(await send(page, "POST", `${at}/hand-in`)).toMatchObject({ status: 200 });
  expect(await send(page, "POST", `${at}/hand-in`)).toMatchObject({ status: 409, body: { code: "already-handed-in" } });
  expect(await send(page, "PUT", `${at}/report`, { sequence: 9, report: REPORT })).toMatchObject({
    status: 409,
    body: { code: "already-handed-in" },
  });

  await page.goto("/");
  await expect(page.getByText("You have handed in one piece")).toBeVisible();
  await page.goto("/history");
  await expect(page.getByRole("row")).toHaveCount(2);
  const desk = await tutor.newPage();
  await desk.goto("/desk");
  await expect(
    desk
      .getByRole("row", { name: /Ilse Tamm/ })
      .getByRole("cell")
      .first(),
  ).toHaveText("1");
  expect((await tutor.request.get(`${at}/surface/root`)).status()).toBe(200);
  expect((await others.request.get(`${at}/surface/root`)).status()).toBe(404);
  await others.close();
  await tutor.close();
});
