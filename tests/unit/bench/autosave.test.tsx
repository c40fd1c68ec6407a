// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  type Autosave,
  isLeftOut,
  latestReport,
  type SittingWay,
  unsentHere,
  useAutosave,
} from "@/app/_bench/report/use-autosave";
import { EMPTY_REPORT, type Report } from "@/lib/report";

const reportOf = (...ids: string[]): Report => ({
  version: 1,
  measures: [],
  statements: [],
  calls: ids.map((id) => ({ id, face: "cap", type: null, start: 1, end: null, across: 0, size: null, sentence: null })),
  pieceSentence: null,
  answers: {},
});

let root: Root;
let autosave: Autosave;
const server = vi.fn<(body: { sequence: number; report: Report }) => Response | Promise<Response>>();

function Probe({ start, way }: { start: { sequence: number; report: Report }; way: SittingWay | null }) {
  autosave = useAutosave("try", 0, { ...start, window: { id: "thiswindow", base: 0 } }, { way });
  return null;
}

const open = (start = { sequence: 0, report: EMPTY_REPORT }, way: SittingWay | null = null) =>
  act(() => root.render(<Probe start={start} way={way} />));
const edit = (report: Report) => act(() => autosave.edited(report));
const wait = (ms: number) => act(() => vi.advanceTimersByTimeAsync(ms));
const sentSequences = () => server.mock.calls.map(([body]) => body.sequence);
const accept = () => Response.json({ ok: true, sequence: 0, savedAt: "2026-01-01T10:00:00Z" });

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  vi.stubGlobal("fetch", async (_url: string, { body }: { body: string }) => server(JSON.parse(body)));
  localStorage.clear();
  server.mockReset().mockImplementation(accept);
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("autosave", () => {
  it("keeps an edit in the browser at once and sends it after a rest, the newest only", async () => {
    open();
    edit(reportOf("a"));
    edit(reportOf("a", "b"));
    expect(latestReport("try", { sequence: 0, report: EMPTY_REPORT, isClosed: false, savedBy: null }).report).toEqual(
      reportOf("a", "b"),
    );
    expect(server).not.toHaveBeenCalled();
    await wait(900);
    expect(sentSequences()).toEqual([2]);
    expect(autosave.saving.confirmed).toBe(2);
    await wait(60_000);
    expect(server).toHaveBeenCalledTimes(1);
  });

  it("tries again until the server answers", async () => {
    server.mockImplementationOnce(() => Promise.reject(new Error("offline")));
    server.mockImplementationOnce(() => new Response("", { status: 502 }));
    open();
    edit(reportOf("a"));
    await wait(900);
    expect(autosave.saving.failures).toBe(1);
    for (let n = 0; n < 5; n++) await wait(10_000);
    expect(sentSequences()).toEqual([1, 1, 1]);
    expect(autosave.saving.confirmed).toBe(1);
  });

  it("sends on opening what an earlier visit could not send", async () => {
    open({ sequence: 5, report: reportOf("a") });
    await wait(900);
    expect(sentSequences()).toEqual([5]);
  });

  it("does not overwrite the newer version of another window unless told to", async () => {
    const newer = { sequence: 40, report: reportOf("z") };
    server.mockImplementationOnce(() =>
      Response.json(
        {
          ok: false,
          code: "stale-save",
          message: "Another window is ahead.",
          savedAt: "2026-01-01T09:06:00Z",
          ...newer,
        },
        { status: 409 },
      ),
    );
    open();
    edit(reportOf("a"));
    await wait(900);
    expect(autosave.saving.refusal).toEqual({ reason: "Another window is ahead.", isLasting: true });
    edit(reportOf("a", "b"));
    await wait(60_000);
    expect(server).toHaveBeenCalledTimes(1);
    expect(autosave.conflict).toEqual({ kind: "newer", version: { ...newer, savedAt: "2026-01-01T09:06:00Z" } });
    act(() => autosave.keepThis());
    await wait(900);
    expect(server).toHaveBeenLastCalledWith({
      sequence: 41,
      report: reportOf("a", "b"),
      window: { id: "thiswindow", base: 40 },
    });
  });

  it("tells that another window handed the report in, and sends nothing more", async () => {
    server.mockImplementationOnce(() =>
      Response.json({ code: "already-handed-in", message: "It is handed in." }, { status: 409 }),
    );
    open();
    edit(reportOf("a"));
    await wait(900);
    expect(autosave.conflict).toEqual({ kind: "handed-in" });
    edit(reportOf("a", "b"));
    await wait(60_000);
    expect(server).toHaveBeenCalledTimes(1);
  });

  it("tells that another window closed the report, and sends nothing more", async () => {
    server.mockImplementationOnce(() =>
      Response.json(
        { code: "report-closed", message: "It is closed.", sequence: 7, report: reportOf("z") },
        { status: 409 },
      ),
    );
    open();
    edit(reportOf("a"));
    await wait(900);
    expect(autosave.conflict).toEqual({ kind: "report-closed" });
    edit(reportOf("a", "b"));
    await wait(60_000);
    expect(server).toHaveBeenCalledTimes(1);
  });

  it("sees no other window in a newer version of its own that was quicker than a slow save", async () => {
    let answerSlowly: (response: Response) => void = () => {};
    server.mockImplementationOnce(() => new Promise((resolve) => (answerSlowly = resolve)));
    open();
    edit(reportOf("a"));
    await wait(900);
    edit(reportOf("a", "b"));
    act(() => autosave.sendNow());
    await wait(0);
    expect([sentSequences(), autosave.saving.confirmed]).toEqual([[1, 2], 2]);
    const kept = { sequence: 2, report: reportOf("a", "b"), savedAt: null };
    answerSlowly(Response.json({ code: "stale-save", message: "A newer one is kept.", ...kept }, { status: 409 }));
    await wait(0);
    expect([autosave.conflict, autosave.saving.refusal]).toEqual([null, null]);
    edit(reportOf("a", "b", "c"));
    await wait(900);
    expect(autosave.saving.confirmed).toBe(3);
  });

  it.each(["after", "before"])(
    "goes on with answers when a slow save of its own is refused %s it hears that its closing came through",
    async (order) => {
      let answerSlowly: (response: Response) => void = () => {};
      server.mockImplementationOnce(() => new Promise((resolve) => (answerSlowly = resolve)));
      open();
      edit(reportOf("a"));
      await wait(900);
      edit(reportOf("a", "b"));
      const closed = { sequence: 2, report: reportOf("a", "b"), savedAt: "2026-01-01T10:00:00Z" };
      const refuseSlow = () =>
        answerSlowly(
          Response.json({ ok: false, code: "report-closed", message: "It is closed.", ...closed }, { status: 409 }),
        );
      const hearOfClosing = () => act(() => autosave.sent(2, closed.savedAt));
      if (order === "before") {
        refuseSlow();
        await wait(0);
        hearOfClosing();
        edit({ ...closed.report, answers: { q1: 2 } });
      } else {
        hearOfClosing();
        edit({ ...closed.report, answers: { q1: 2 } });
        refuseSlow();
      }
      await wait(0);
      expect([autosave.conflict, autosave.saving.refusal, autosave.saving.failures]).toEqual([null, null, 0]);
      await wait(900);
      edit({ ...closed.report, answers: { q1: 2, q2: 0 } });
      await wait(900);
      expect(server.mock.calls.slice(1).map(([body]) => body.report.answers)).toEqual([{ q1: 2 }, { q1: 2, q2: 0 }]);
      expect(autosave.saving.confirmed).toBe(4);
    },
  );

  it("on opening a closed report goes on from answers kept here, and never from another report kept here", () => {
    const closed = { sequence: 3, report: reportOf("a"), isClosed: true, savedBy: null };
    const answered = { ...reportOf("a"), answers: { q1: 2 } };
    const keep = (report: Report, sequence: number) =>
      localStorage.setItem(
        "toeline.report.try",
        JSON.stringify({ sequence, report, window: { id: "thiswindow", base: 3 } }),
      );
    keep(answered, 5);
    expect([latestReport("try", closed).report, isLeftOut("try", closed)]).toEqual([answered, false]);
    keep(reportOf("a", "late"), 5);
    expect([latestReport("try", closed).report, isLeftOut("try", closed)]).toEqual([closed.report, true]);
    expect(isLeftOut("try", { ...closed, isClosed: false })).toBe(false);
    keep(reportOf("a", "old"), 2);
    expect(isLeftOut("try", closed)).toBe(false);
  });

  it("goes on from the newer version when that is wanted", async () => {
    server.mockImplementationOnce(() =>
      Response.json({ code: "stale-save", message: "no", sequence: 40, report: reportOf("z") }, { status: 409 }),
    );
    open();
    edit(reportOf("a"));
    await wait(900);
    let taken: Report | null = null;
    act(() => {
      taken = autosave.takeNewer();
    });
    expect(taken).toEqual(reportOf("z"));
    edit(reportOf("z", "y"));
    await wait(900);
    expect(sentSequences()).toEqual([1, 41]);
  });
});

describe("autosave in a sitting", () => {
  const start = { sequence: 0, report: EMPTY_REPORT };
  const wayOf = (isHeld: boolean, now = "2026-01-01T10:00:00.000Z"): SittingWay => ({
    isHeld,
    isShut: false,
    endsAt: null,
    now: () => now,
  });
  const refuseOnce = (code: string) =>
    server.mockImplementationOnce(() =>
      Response.json({ code, message: "No.", sequence: 9, report: reportOf("z"), savedAt: null }, { status: 409 }),
    );
  const keep = (report: Report, sequence: number, window: { id: string; base: number }) =>
    localStorage.setItem("toeline.report.try", JSON.stringify({ sequence, report, window }));

  it("says when an edit was made, and a step that ends the writing that it is taken now", async () => {
    open(start, wayOf(false));
    edit(reportOf("a"));
    open(start, wayOf(false, "2026-01-01T10:00:05.000Z"));
    await wait(900);
    expect(server.mock.calls[0][0]).toMatchObject({ sequence: 1, madeAt: "2026-01-01T10:00:00.000Z" });
    expect(autosave.asOfNow().madeAt).toBe("2026-01-01T10:00:05.000Z");
  });

  it("sends nothing while nothing is taken, keeps it here, and sends it as soon as the way is free", async () => {
    open(start, wayOf(true));
    edit(reportOf("a"));
    await wait(60_000);
    expect(server).not.toHaveBeenCalled();
    expect(JSON.parse(localStorage.getItem("toeline.report.try") ?? "null")).toMatchObject({ report: reportOf("a") });
    open(start, wayOf(false));
    await wait(900);
    expect(sentSequences()).toEqual([1]);
  });

  it.each(["paused", "sitting-paused", "other-window"])(
    "tries again after %s, and sees no choice in it",
    async (code) => {
      refuseOnce(code);
      open(start, wayOf(false));
      edit(reportOf("a"));
      await wait(900);
      expect([autosave.conflict, autosave.saving.refusal]).toEqual([null, null]);
      await wait(5_000);
      expect(sentSequences()).toEqual([1, 1]);
      expect(autosave.saving.confirmed).toBe(1);
    },
  );

  it.each(["time-is-up", "closed-by-tutor", "handed-in", "void"])(
    "sends nothing after %s until it is opened again",
    async (code) => {
      refuseOnce(code);
      open(start, wayOf(false));
      edit(reportOf("a"));
      await wait(900);
      expect(autosave.conflict).toBeNull();
      expect(autosave.saving.refusal).toMatchObject({ isLasting: true });
      open(start, wayOf(true));
      await wait(60_000);
      expect(server).toHaveBeenCalledTimes(1);
      open(start, wayOf(false));
      await wait(900);
      expect(sentSequences()).toEqual([1, 1]);
    },
  );

  it("notes that everything was sent, so that nothing is offered that is on the server", async () => {
    open(start, wayOf(false));
    edit(reportOf("a"));
    const overtaken = { sequence: 5, report: reportOf("z"), isClosed: false, savedBy: "another" };
    expect(unsentHere("try", overtaken)?.report).toEqual(reportOf("a"));
    await wait(900);
    expect(unsentHere("try", overtaken)).toBeNull();
  });

  it("starts a window of its own, which has seen what the window before it saved", () => {
    keep(reportOf("a", "b"), 7, { id: "killed", base: 5 });
    const saved = { sequence: 6, report: reportOf("a"), isClosed: false };
    const same = latestReport("try", { ...saved, savedBy: "killed" });
    expect(same).toMatchObject({ sequence: 7, report: reportOf("a", "b"), window: { base: 6 } });
    expect(same.window.id).not.toBe("killed");
    // somebody else saved 6, which this browser never saw: the server shall say so
    expect(latestReport("try", { ...saved, savedBy: "another" }).window.base).toBe(5);
  });
});
