// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { renderToString } from "react-dom/server";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { HeatMap, type HeatRow } from "@/app/_progress/class/heat-map";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";

let root: Root;
beforeEach(() => {
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.unstubAllGlobals();
});

const learnersOf = (count: number) => Array.from({ length: count }, (_, n) => ({ id: `l${n}`, name: `Learner ${n}` }));
const rowOf = (type: HeatRow["type"], count: number): HeatRow => ({
  type,
  found: 30,
  of: 60,
  range: "38 to 62 %",
  judged: 2,
  belowHalf: 1,
  cells: Array.from({ length: count }, (_, n) => (n === 1 ? null : [n % 5, 8])),
});
const mapOf = (count: number, types: readonly HeatRow["type"][]) => (
  <HeatMap
    classId="class"
    learners={learnersOf(count)}
    rows={types.map((type) => rowOf(type, count))}
    setAsPaper={async () => ({ done: "", problem: null })}
  />
);
const names = () => [...document.querySelectorAll("thead a")].map((link) => link.textContent);
const cells = () => [...document.querySelectorAll("tbody td")].map((cell) => cell.textContent);
const choose = (label: string, value: string) =>
  act(() => {
    const field = [...document.querySelectorAll("label")].find((one) => one.textContent?.startsWith(label));
    const select = field?.querySelector("select") as HTMLSelectElement;
    Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, "value")?.set?.call(select, value);
    select.dispatchEvent(new Event("change", { bubbles: true }));
  });

test("a class that has room stands beside each other at once", () => {
  act(() => root.render(mapOf(3, ["surface-pore"])));
  expect(names()).toEqual(["Learner 0", "Learner 1", "Learner 2"]);
  expect(cells()).toEqual(["30/6038 to 62 %", "1 of 2", "0/8", "", "2/8"]);
  expect(document.querySelectorAll("select")).toHaveLength(1);
});

test("of a large class fifty are chosen, each beside their own figures, or all", () => {
  act(() => root.render(mapOf(120, ["surface-pore"])));
  expect([names()[0], names().at(-1), names().length]).toEqual(["Learner 0", "Learner 49", 50]);
  choose("Learners", "100");
  expect([names()[0], names().at(-1), names().length]).toEqual(["Learner 100", "Learner 119", 20]);
  // 103 modulo 5
  expect(cells()[2 + 3]).toBe("3/8");
  choose("Learners", "all");
  expect(names()).toHaveLength(120);
  const options = [...document.querySelectorAll("option")].map(({ textContent }) => textContent);
  expect(options).toContain("101 to 120: Learner 100 to Learner 119");
});

test("a class of 200 with everything in the catalogue is sent in less than half a megabyte", () => {
  expect(renderToString(mapOf(200, IMPERFECTION_TYPES)).length).toBeLessThan(500_000);
});
