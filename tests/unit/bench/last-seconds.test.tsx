// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type ReportWriting, useWriting } from "@/app/_bench/frame/use-writing";
import { readKeptReport } from "@/app/_bench/report/kept-report";
import type { LiveRun } from "@/app/_bench/sitting/live-run";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { FakeSource } from "../../support/fake-source";

const START = Date.parse("2026-03-02T10:00:00.000Z");
const MINUTE = 60_000;
/** So long the server takes what was written before the end (GRACE_SECONDS of lib/sittings). */
const GRACE = 10_000;

interface Sent {
  readonly sequence: number;
  readonly report: Report;
  readonly madeAt: string;
  /** The server's time, ms. */
  readonly at: number;
}

let root: Root;
let bench: ReportWriting;
let live: LiveRun;
/** The browser's clock at the start, which is the server's less START. */
let began: number;
/** What came to the server. */
let sent: Sent[];
/** How many saves get no answer. */
let failing: number;

const now = () => START + performance.now() - began;
const iso = (ms: number) => new Date(ms).toISOString();
/** In steps, since what follows from a timer is drawn, and sets the next one, at the end of each. */
async function wait(ms: number) {
  for (let left = ms; left >= 0; left -= 500) await act(() => vi.advanceTimersByTimeAsync(Math.min(left, 500)));
}
const rows = ({ report }: { report: Report } = { report: EMPTY_REPORT }) => report.calls.map(({ start }) => start);

/** The clock of a section: closed, a save is taken if it was written before and comes within the grace. */
function save(body: Omit<Sent, "at">): Response {
  if (failing > 0) {
    failing -= 1;
    return new Response("", { status: 503 });
  }
  sent.push({ ...body, at: now() });
  const closed = live.closedAt === null ? null : Date.parse(live.closedAt);
  const isTaken = closed === null || (Date.parse(body.madeAt) <= closed && now() <= closed + GRACE);
  if (isTaken) return Response.json({ ok: true, sequence: body.sequence, savedAt: iso(now()) });
  return Response.json({ code: live.shut, message: "It is over.", sequence: 0, report: EMPTY_REPORT }, { status: 409 });
}

function Probe() {
  const server = { sequence: 0, report: EMPTY_REPORT, isClosed: false, savedBy: null };
  bench = useWriting("try", server, null, { run: live, now: START, hasLens: true });
  return null;
}

/** A row that begins at x. */
const writeRow = (x: number) => act(() => bench.add({ face: "cap", start: x, end: null, across: 0 }));
const tell = () => FakeSource.last.push("run", { now: iso(now()), ...live });
/** Closes the section on the server; the bench hears of it by the next `tell`. */
function close(shut: string) {
  live = {
    ...live,
    state: "expired",
    shut,
    isPaused: false,
    closedAt: iso(now()),
    clock: { state: "stopped", deadline: null, remaining: 0 },
  };
}
function pause(isPaused: boolean) {
  const clock = { state: "standing", deadline: null, remaining: 20 * MINUTE } as const;
  live = { ...live, state: "paused", isPaused, clock };
}

beforeEach(async () => {
  vi.useFakeTimers({ now: 0 });
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  vi.stubGlobal("EventSource", FakeSource);
  vi.stubGlobal("fetch", async (path: string, init: { method?: string; body?: string } = {}) => {
    const body = JSON.parse(init.body ?? "null");
    if (init.method === "PUT") return save(body);
    if (path.endsWith("/take-over")) live = { ...live, liveWindowId: body.windowId };
    return Response.json({ ok: true, now: iso(now()), run: live });
  });
  localStorage.clear();
  began = performance.now();
  sent = [];
  failing = 0;
  live = {
    runId: "run",
    sittingId: "sitting",
    state: "running",
    shut: null,
    clock: { state: "going", deadline: iso(START + 30 * MINUTE), remaining: null },
    allowed: 30 * MINUTE,
    isSittingPaused: false,
    isPaused: false,
    liveWindowId: null,
    savedAt: null,
    closedAt: null,
  };
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
  act(() => root.render(<Probe />));
  await wait(1000);
  expect(bench.sitting?.window).toBe("writes");
});
afterEach(() => {
  act(() => root.unmount());
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("what was written in the last moments of a section", () => {
  it.each(["closed-by-tutor", "time-is-up"])("is sent at once when it is over (%s)", async (shut) => {
    writeRow(10);
    const written = now();
    await wait(300);
    close(shut);
    tell();
    await wait(0);
    expect(sent).toHaveLength(1);
    expect(rows(sent[0])).toEqual([10]);
    expect(Date.parse(sent[0].madeAt)).toBe(written);
    expect(bench.autosave.saving.confirmed).toBe(1);
    await wait(MINUTE);
    expect(sent).toHaveLength(1);
  });

  it("is sent from before a pause in which the tutor closes", async () => {
    writeRow(10);
    await wait(200);
    pause(true);
    tell();
    await wait(5 * MINUTE);
    expect(sent).toEqual([]);
    close("closed-by-tutor");
    tell();
    await wait(0);
    expect([rows(sent[0]), bench.autosave.saving.confirmed]).toEqual([[10], 1]);
  });

  it("is sent again within the seconds that are left, however often it failed before", async () => {
    failing = 7;
    writeRow(10);
    // by now the next try would come after half a minute
    await wait(50_000);
    expect([failing, sent]).toEqual([2, []]);
    close("time-is-up");
    tell();
    await wait(GRACE);
    expect(failing).toBe(0);
    expect(sent[0].at).toBeLessThan(Date.parse(live.closedAt ?? "") + GRACE);
    expect(bench.autosave.saving.confirmed).toBe(1);
  });

  it("is refused when it comes too late, which ends the sending; it stays here and is sent once it is opened again", async () => {
    failing = 4;
    writeRow(10);
    await wait(300);
    close("closed-by-tutor");
    tell();
    await wait(5 * MINUTE);
    expect(sent).toHaveLength(1);
    expect(bench.autosave.saving.refusal).toEqual({ reason: "It is over.", isLasting: true });
    expect(rows(readKeptReport("try") ?? undefined)).toEqual([10]);
    const deadline = iso(now() + 10 * MINUTE);
    live = {
      ...live,
      state: "running",
      shut: null,
      closedAt: null,
      clock: { state: "going", deadline, remaining: null },
    };
    tell();
    await wait(1000);
    expect([sent.length, bench.autosave.saving.confirmed]).toEqual([2, 1]);
  });

  it("does not fall with what was written after the end, before the bench heard of it", async () => {
    writeRow(10);
    await wait(300);
    close("closed-by-tutor");
    await wait(400);
    writeRow(20);
    const late = iso(now());
    await wait(300);
    tell();
    await wait(0);
    expect([rows(sent[0]), bench.autosave.saving.confirmed]).toEqual([[10], 1]);
    // the rest is refused, since it says when it was written, and is kept here
    await wait(MINUTE);
    expect(sent.slice(1)).toEqual([expect.objectContaining({ sequence: 2, madeAt: late })]);
    expect(bench.autosave.saving.refusal?.isLasting).toBe(true);
    expect(rows(readKeptReport("try") ?? undefined)).toEqual([10, 20]);
  });

  it("does not fall with what came after the deadline, by the bench's own reckoning", async () => {
    live = { ...live, clock: { ...live.clock, deadline: iso(now() + 500) } };
    tell();
    await wait(300);
    writeRow(10);
    await wait(300);
    writeRow(20);
    act(() => bench.autosave.sendNow());
    await wait(0);
    expect(sent.map(rows)).toEqual([[10]]);
  });

  it("does not fall with a later edit that was sent and refused before the bench heard of the end", async () => {
    writeRow(10);
    await wait(300);
    close("closed-by-tutor");
    await wait(50);
    writeRow(20);
    await wait(900);
    expect(sent.map(rows)).toEqual([[10, 20]]);
    tell();
    await wait(0);
    expect([rows(sent[1]), bench.autosave.saving.confirmed]).toEqual([[10], 1]);
  });

  it.each(["void", "handed-in"])("stays here where nothing more is taken (%s)", async (shut) => {
    writeRow(10);
    await wait(300);
    close(shut);
    tell();
    await wait(MINUTE);
    expect(sent).toEqual([]);
    expect(rows(readKeptReport("try") ?? undefined)).toEqual([10]);
  });
});
