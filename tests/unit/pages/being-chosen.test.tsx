// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { BeingChosen } from "@/app/(learner)/being-chosen";

const { router } = vi.hoisted(() => ({ router: { refresh: vi.fn() } }));
vi.mock("next/navigation", () => ({ useRouter: () => router }));

let root: Root;
let visibility: DocumentVisibilityState;

const pass = (seconds: number) => act(() => vi.advanceTimersByTimeAsync(1_000 * seconds));
const become = (state: DocumentVisibilityState) =>
  act(() => {
    visibility = state;
    document.dispatchEvent(new Event("visibilitychange"));
  });
const looks = () => router.refresh.mock.calls.length;

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  visibility = "visible";
  vi.spyOn(document, "visibilityState", "get").mockImplementation(() => visibility);
  router.refresh.mockClear();
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
  act(() => root.render(<BeingChosen />));
});
afterEach(() => {
  act(() => root.unmount());
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

test("a page that nobody sees does not look, and looks at once when it is seen again", async () => {
  await pass(1);
  become("hidden");
  await pass(600);
  expect(looks()).toBe(0);
  expect(document.body.textContent).toMatch(/being chosen just now/);
  become("visible");
  expect(looks()).toBe(1);
  for (let n = 0; n < 2; n++) await pass(3);
  expect(looks()).toBe(3);
});

test("what takes long is looked for more slowly, and for as long as it takes", async () => {
  for (let n = 0; n < 20; n++) await pass(3);
  expect(looks()).toBe(20);
  expect(document.body.textContent).toMatch(/longer than usual/);
  await pass(14);
  expect(looks()).toBe(20);
  await pass(1);
  expect(looks()).toBe(21);
  for (let n = 0; n < 10; n++) await pass(15);
  expect(looks()).toBe(31);
});
