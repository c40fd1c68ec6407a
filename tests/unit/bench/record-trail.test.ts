// @vitest-environment happy-dom
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { recordTrail, type TrailRecorder } from "@/app/_bench/trail/record-trail";
import type { Viewport } from "@/lib/bench";
import { type Look, merged, NO_TRAIL, packedTrailSchema, type Trail, timeAtPlace, unpackTrail } from "@/lib/trail";

const CAP: Viewport = { aspect: "cap", width: 900, height: 500, x: 100, up: 0, scale: 9 };
const LOOK: Look = { view: CAP, torch: { azimuth: 90, elevation: 14 }, lens: null };

interface Sent {
  readonly windowId: string;
  readonly number: number;
  readonly trail: unknown;
}

let now: Look | null;
let open: TrailRecorder[];
const sent: Sent[] = [];
const server = vi.fn<() => Response | Promise<Response>>();

const start = () => {
  const recorder = recordTrail("try", () => now);
  open.push(recorder);
  return recorder;
};
const wait = (seconds: number) => vi.advanceTimersByTimeAsync(1000 * seconds);
const move = (target: EventTarget = document.body) => target.dispatchEvent(new Event("pointermove", { bubbles: true }));
const keptKeys = () => Object.keys(localStorage).filter((key) => key.startsWith("toeline.view-trail.try."));

/** What a server that keeps the newest of every window has, s close up and low at 100 mm. */
function known(): { close: number; low: number } {
  const newest = new Map<string, Sent>();
  for (const one of sent) if (one.number > (newest.get(one.windowId)?.number ?? 0)) newest.set(one.windowId, one);
  const trail = [...newest.values()].reduce<Trail>(
    (sum, one) => merged(sum, unpackTrail(packedTrailSchema.parse(one.trail))),
    NO_TRAIL,
  );
  const { close, low } = timeAtPlace(trail, { face: "cap", start: 100, end: 100, across: 0 });
  return { close, low };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("fetch", async (_url: string, { body }: { body: string }) => {
    const response = await server();
    if (response.ok) sent.push(JSON.parse(body));
    return response;
  });
  localStorage.clear();
  document.body.innerHTML = '<div class="clipboard"><input></div>';
  sent.length = 0;
  open = [];
  now = LOOK;
  server.mockReset().mockImplementation(() => Response.json({ ok: true }));
});
afterEach(() => {
  for (const recorder of open) recorder.stop();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

it("counts the time that something is in sight, and sends it by itself", async () => {
  start();
  await wait(19);
  move();
  await wait(2);
  expect(known()).toEqual({ close: 20, low: 20 });
});

it("counts nothing without movement for so long, at the report, before a dialog, or with nothing to look at", async () => {
  const recorder = start();
  await wait(60);
  await recorder.send();
  const { close } = known();
  expect(close).toBe(20);

  move(document.querySelector("input") ?? document.body);
  await wait(10);
  move();
  document.body.append(Object.assign(document.createElement("dialog"), { open: true }));
  await wait(10);
  document.querySelector("dialog")?.remove();
  now = null;
  move();
  await wait(10);
  await recorder.send();
  expect(known().close).toBe(close);

  now = LOOK;
  move();
  await wait(5);
  await recorder.send();
  expect(known().close).toBe(close + 5);
});

it("a piece that was long in coming is looked at once it is there", async () => {
  now = null;
  const recorder = start();
  await wait(60);
  now = LOOK;
  await wait(5);
  await recorder.send();
  expect(known().close).toBe(5);
});

it("time in another tab is not counted, and what was noted is sent when it is left", async () => {
  start();
  await wait(4);
  const hidden = vi.spyOn(document, "hidden", "get").mockReturnValue(true);
  document.dispatchEvent(new Event("visibilitychange"));
  await wait(1);
  expect(known().close).toBe(4);
  move();
  await wait(15);
  hidden.mockReturnValue(false);
  await open[0].send();
  expect(known().close).toBe(4);
});

it("loses nothing while the server does not answer, nor when the window is closed then", async () => {
  server.mockImplementation(() => Promise.reject(new TypeError("no network")));
  const first = start();
  await wait(10);
  await first.send();
  expect(sent).toEqual([]);
  expect(keptKeys()).toHaveLength(1);
  first.stop();
  open = [];

  server.mockImplementation(() => Response.json({ ok: true }));
  const second = start();
  await wait(5);
  await second.send();
  expect(known().close).toBe(15);
  expect(keptKeys(), "the server has everything").toEqual([]);
  // the answer to a sending was lost: the same again changes nothing
  sent.push(...sent);
  expect(known().close).toBe(15);
});

it("what the server refuses is not tried again, and later looking still is", async () => {
  server.mockImplementation(() => Response.json({ ok: false, code: "time-is-up" }, { status: 409 }));
  const recorder = start();
  await wait(5);
  await recorder.send();
  const tries = server.mock.calls.length;
  now = null;
  await wait(100);
  expect(server).toHaveBeenCalledTimes(tries);
  expect(keptKeys()).toEqual([]);

  // opened again: what follows goes with all that was before
  server.mockImplementation(() => Response.json({ ok: true }));
  now = LOOK;
  move();
  await wait(3);
  await recorder.send();
  expect(known().close).toBe(8);
});
