import { expect, type Locator, type Page } from "@playwright/test";

export const slideOf = (page: Page): Locator => page.locator("[data-slide]");
export const gaugeSays = (page: Page): Locator => page.locator("[data-gauge-says]");
export const youRead = (page: Page): Locator => page.getByLabel("You read");

/** Where the gauge stands, as the bench tells it: "150.0 mm · 3.0 A". */
export async function placeOfGauge(page: Page): Promise<{ x: number; y: number }> {
  await page.mouse.move(5, 5);
  const text = (await page.locator("[data-specimen] p").first().textContent()) ?? "";
  const [, x, y, plate] = /([\d.]+) mm · ([\d.]+) ([AB])/.exec(text) ?? [];
  return { x: Number(x), y: plate === "A" ? Number(y) : -Number(y) };
}

/**
 * Reads the vernier in the lens as an eye does, from the lines and figures that are drawn there: the figure below the
 * vernier's nought, and the vernier line that stands nearest to a line of the main scale.
 */
export async function readByEye(page: Page): Promise<number> {
  const drawn = await page.locator("[data-reading-lens]").evaluate((lens) => {
    const strokes = [...lens.querySelectorAll('path[stroke-width="0.12"]')].map((path) =>
      [...(path.getAttribute("d") ?? "").matchAll(/-?[\d.]+(?:e-\d+)?/g)].map(Number),
    );
    const figures = [...lens.querySelectorAll("text")].map((text) => {
      const [left, up] = [...(text.getAttribute("transform") ?? "").matchAll(/-?[\d.]+(?:e-\d+)?/g)].map(Number);
      // a figure stands on its own foot; its middle is level with its line
      const middle = up + (0.727 * Number(text.getAttribute("font-size"))) / 2;
      return { left, up: middle, text: (text.textContent ?? "").replace("−", "-") };
    });
    return { strokes, figures };
  });
  // main and vernier lines meet at one edge, upright or level, and go to either side of it
  const [[left, up, toLeft, toUp]] = drawn.strokes;
  const isLevel = Math.abs(toUp - up) > Math.abs(toLeft - left);
  const edge = isLevel ? up : left;
  const lines = drawn.strokes.map(([u0, w0, u1, w1]) =>
    isLevel ? { side: Math.sign(w1 - w0), at: u0 } : { side: Math.sign(u1 - u0), at: w0 },
  );
  const placesOn = (side: 1 | -1) => lines.filter((line) => line.side === side).map(({ at }) => at);
  const [main, vernier] = [placesOn(1), placesOn(-1)];
  const figureAt = (side: 1 | -1, text: string) => {
    const found = drawn.figures.find(
      (figure) => Math.sign((isLevel ? figure.up : figure.left) - edge) === side && figure.text === text,
    );
    if (!found) throw new Error(`no figure ${text}`);
    return isLevel ? found.left : found.up;
  };
  const perMm = (figureAt(1, "10") - figureAt(1, "5")) / 5;
  const nought = main.reduce((best, up) => {
    const miss = (at: number) => Math.abs(at - figureAt(1, "0"));
    return miss(up) < miss(best) ? up : best;
  });
  const valueAt = (up: number) => (up - nought) / perMm;
  const inOrder = [...vernier].sort((a, b) => (a - b) * Math.sign(figureAt(-1, "5") - figureAt(-1, "0")));
  const misses = inOrder.slice(0, 10).map((up) => Math.abs(valueAt(up) - Math.round(valueAt(up))));
  const line = misses.indexOf(Math.min(...misses));
  const below = Math.round(valueAt(inOrder[line])) - line;
  // where line n stands over a line of the main scale, nought stands n tenths past the line n places before it
  expect(Math.abs(valueAt(inOrder[0]) - (below + line / 10))).toBeLessThan(0.06);
  return Math.round((below + line / 10) * 10) / 10;
}

/** Draws one finger over the page, in steps. */
export async function dragByTouch(page: Page, from: { x: number; y: number }, to: { x: number; y: number }) {
  const session = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", points: readonly { x: number; y: number }[]) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: [...points] });
  await send("touchStart", [from]);
  for (let n = 1; n <= 10; n++) {
    const share = n / 10;
    await send("touchMove", [{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }]);
  }
  await send("touchEnd", []);
  await session.detach();
}
