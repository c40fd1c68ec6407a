// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { useBlueprint } from "@/app/(tutor)/desk/papers/_builder/use-blueprint";
import { defaultPaper } from "@/lib/sittings";

let root: Root;
let shown: ReturnType<typeof useBlueprint>;
/** What the server was asked: the thickness, and the signal by which that is taken back. */
const asked: { readonly thickness: string | null; readonly signal: AbortSignal }[] = [];
let reply: (answer: Response) => void;

const [{ section, piece }] = defaultPaper().sections;

function Probe({ thickness }: { readonly thickness: number }) {
  shown = useBlueprint(section, { ...piece, thickness });
  return null;
}
const type = (thickness: number) => act(() => root.render(<Probe thickness={thickness} />));
const wait = (ms: number) => act(() => vi.advanceTimersByTimeAsync(ms));

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  asked.length = 0;
  vi.stubGlobal("fetch", (path: string, { signal }: { readonly signal: AbortSignal }) => {
    asked.push({ thickness: new URL(path, "http://workshop").searchParams.get("thickness"), signal });
    return new Promise<Response>((resolve, reject) => {
      reply = resolve;
      signal.addEventListener("abort", () => reject(signal.reason));
    });
  });
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const thicknesses = () => asked.map(({ thickness }) => thickness);

test("a blueprint is asked for at once as it opens, then only when nothing has changed for half a second", async () => {
  type(8);
  await wait(0);
  expect(thicknesses()).toEqual(["8"]);
  for (const thickness of [9, 10, 11]) {
    type(thickness);
    await wait(400);
  }
  expect(thicknesses()).toEqual(["8"]);
  expect(asked[0].signal.aborted, "and what it no longer needs is taken back").toBe(true);
  expect(shown).toEqual({ blueprint: null, message: "" });
  await wait(100);
  expect(thicknesses()).toEqual(["8", "11"]);

  reply(Response.json({ ok: true, blueprint: "of 11 mm" }));
  await wait(0);
  expect(shown).toMatchObject({ blueprint: "of 11 mm", message: "" });
  expect(asked[1].signal.aborted).toBe(false);
});
