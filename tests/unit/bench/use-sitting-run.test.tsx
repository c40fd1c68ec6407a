// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { LiveRun } from "@/app/_bench/sitting/live-run";
import { type SittingRun, useSittingRun } from "@/app/_bench/sitting/use-sitting-run";
import { FakeSource } from "../../support/fake-source";

const START = Date.parse("2026-03-02T10:00:00.000Z");
const MINUTE = 60_000;

const runOf = (changes: Partial<LiveRun> = {}): LiveRun => ({
  runId: "run",
  sittingId: "sitting",
  state: "running",
  shut: null,
  clock: { state: "going", deadline: new Date(START + 30 * MINUTE).toISOString(), remaining: null },
  allowed: 30 * MINUTE,
  isSittingPaused: false,
  isPaused: false,
  liveWindowId: "older",
  savedAt: null,
  closedAt: null,
  ...changes,
});
const at = (ms: number) => new Date(START + ms).toISOString();

let root: Root;
let sitting: SittingRun | null;
/** The server's time less the browser's, which starts at 0. */
let serverNow: () => number;
const server = vi.fn<(path: string) => Response | Promise<Response>>();

function Probe() {
  sitting = useSittingRun({ run: runOf(), now: START, hasLens: true }, "thiswindow");
  return null;
}
const wait = (ms: number) => act(() => vi.advanceTimersByTimeAsync(ms));
const answer = (run: LiveRun) => Response.json({ ok: true, now: new Date(serverNow()).toISOString(), run });

beforeEach(() => {
  vi.useFakeTimers({ now: 0 });
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  vi.stubGlobal("EventSource", FakeSource);
  vi.stubGlobal("fetch", async (path: string) => server(path));
  const began = performance.now();
  serverNow = () => START + performance.now() - began;
  server.mockReset().mockImplementation(() => answer(runOf({ liveWindowId: "thiswindow" })));
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("a section on the bench", () => {
  it("is taken over by the window that opens it, and an event of before does not take that back", async () => {
    act(() => root.render(<Probe />));
    expect(sitting?.window).toBe("asking");
    await wait(50);
    expect(server.mock.calls[0][0]).toBe("/api/runs/run/take-over");
    expect(sitting?.window).toBe("writes");
    FakeSource.last.push("run", { now: at(-20), ...runOf() });
    expect(sitting?.window).toBe("writes");
    await wait(2000);
    FakeSource.last.push("run", { now: new Date(serverNow()).toISOString(), ...runOf({ liveWindowId: "newer" }) });
    expect(sitting?.window).toBe("elsewhere");
  });

  it("goes by the server's clock, however wrong its own is, and while the tab sleeps", async () => {
    act(() => root.render(<Probe />));
    await wait(50);
    vi.setSystemTime(Date.parse("2031-01-01T00:00:00Z"));
    await wait(10 * MINUTE);
    expect(Math.abs((sitting?.left() ?? 0) - 20 * MINUTE)).toBeLessThan(1000);
    expect(Math.abs(Date.parse(sitting?.now() ?? "") - START - 10 * MINUTE)).toBeLessThan(1000);
    // the machine slept for five minutes, in which its clock stood: the first look asks anew
    const before = serverNow;
    serverNow = () => before() + 5 * MINUTE;
    document.dispatchEvent(new Event("visibilitychange"));
    await wait(50);
    expect(Math.abs((sitting?.left() ?? 0) - 15 * MINUTE)).toBeLessThan(1000);
  });

  it("asks again until it has taken over, and says since when there is no connection", async () => {
    server.mockImplementation(() => Promise.reject(new Error("no network")));
    act(() => root.render(<Probe />));
    await wait(100);
    expect(sitting?.window).toBe("asking");
    expect(sitting?.lostAt).not.toBeNull();
    const since = sitting?.lostAt?.getTime();
    await wait(10_000);
    expect(sitting?.lostAt?.getTime()).toBe(since);
    server.mockImplementation(() => answer(runOf({ liveWindowId: "thiswindow" })));
    await wait(4000);
    expect([sitting?.window, sitting?.lostAt]).toEqual(["writes", null]);
  });

  it("notices a connection that says nothing any more", async () => {
    act(() => root.render(<Probe />));
    await wait(50);
    for (let n = 0; n < 6; n++) {
      await wait(10_000);
      FakeSource.last.push("time", { now: new Date(serverNow()).toISOString() });
      expect(sitting?.lostAt).toBeNull();
    }
    await wait(30_000);
    expect(sitting?.lostAt).not.toBeNull();
  });

  it("does not ask to write in a section that is shut, and does once it is opened again", async () => {
    server.mockImplementation((path) =>
      path.endsWith("/take-over")
        ? Response.json({ code: "time-is-up", message: "Over." }, { status: 409 })
        : answer(runOf({ state: "expired", shut: "time-is-up" })),
    );
    act(() => root.render(<Probe />));
    await wait(50);
    expect(sitting?.run.shut).toBe("time-is-up");
    server.mockClear();
    await wait(20_000);
    expect(server.mock.calls.filter(([path]) => path.endsWith("/take-over"))).toEqual([]);
    server.mockImplementation(() => answer(runOf({ liveWindowId: "thiswindow" })));
    FakeSource.last.push("run", { now: new Date(serverNow()).toISOString(), ...runOf() });
    await wait(50);
    expect(sitting?.window).toBe("writes");
  });
});
