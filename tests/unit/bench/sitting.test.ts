import { describe, expect, it, test } from "vitest";
import { type CoverFacts, coverKind, coverWords } from "@/app/_bench/sitting/cover-words";
import { type LiveRun, timeByEvent, toldByAnswer, toldByEvent } from "@/app/_bench/sitting/live-run";
import { contradicts, refined, type ServerTime, timeFrom } from "@/app/_bench/sitting/server-time";
import { changedTime, exactLeft, passedMark, shortLeft } from "@/app/_bench/sitting/time-words";
import { RUN_REFUSALS } from "@/lib/sittings";

const MINUTE = 60_000;
const ms = (minutes: number, seconds = 0) => minutes * MINUTE + seconds * 1000;

const RUN: LiveRun = {
  runId: "run",
  sittingId: "sitting",
  state: "running",
  shut: null,
  clock: { state: "going", deadline: "2026-03-02T12:00:00.000Z", remaining: null },
  allowed: ms(120),
  isSittingPaused: false,
  isPaused: false,
  liveWindowId: "window01",
  savedAt: "2026-03-02T10:20:00.000Z",
  closedAt: null,
};

describe("the time left in words", () => {
  test.each([
    [ms(120), "120 min left"],
    [ms(10, 1), "11 min left"],
    [ms(10), "10:00 left"],
    [ms(9, 59), "9:59 left"],
    [ms(0, 5), "0:05 left"],
    // it is over when it is over, and not a second before
    [1, "0:01 left"],
    [0, "0:00 left"],
    [-500, "0:00 left"],
  ])("%i ms: %s", (left, words) => expect(shortLeft(left)).toBe(words));

  test.each([
    [ms(103), "1 hour 43 minutes"],
    [ms(120), "2 hours"],
    [ms(4, 10), "4 minutes 10 seconds"],
    [ms(1), "1 minute"],
    [ms(0, 1), "1 second"],
    [0, "0 seconds"],
  ])("%i ms: %s", (left, words) => expect(exactLeft(left)).toBe(words));

  it("says 10, 5 and 1 minutes once each as the time runs down, whatever the steps", () => {
    for (const step of [250, 1000, 7000]) {
      const said: string[] = [];
      for (let left = ms(12); left > 0; left -= step) {
        const mark = passedMark(left, left - step);
        if (mark) said.push(mark);
      }
      expect(said).toEqual(["10 minutes left.", "5 minutes left.", "1 minute left."]);
    }
  });

  it("says only the last of several that passed while nobody looked, and none once the time is over", () => {
    expect(passedMark(ms(30), ms(0, 50))).toBe("1 minute left.");
    expect(passedMark(ms(30), 0)).toBeNull();
    expect(passedMark(ms(5), ms(20))).toBeNull();
  });

  it("tells of time that was given or taken", () => {
    expect(changedTime(ms(120), ms(125), ms(30))).toBe("Your tutor gave you 5 minutes more. You have 30 minutes left.");
    expect(changedTime(ms(180), ms(150), ms(10))).toContain("30 minutes less");
    expect(changedTime(ms(120), ms(120), ms(30))).toBeNull();
    expect(changedTime(null, ms(120), ms(120))).toBeNull();
  });
});

describe("the server's time", () => {
  const TRUE_OFFSET = 1_000_000;
  /** A request that took so long there and so long back. */
  const ask = (at: number, there: number, back: number): ServerTime =>
    timeFrom(at, at + there + back, at + there + TRUE_OFFSET);

  it("is never off by more than it says, however the time splits into there and back", () => {
    for (const there of [0, 10, 400, 3000])
      for (const back of [0, 10, 400, 3000]) {
        const { offset, uncertainty } = ask(50, there, back);
        expect(Math.abs(offset - TRUE_OFFSET)).toBeLessThanOrEqual(uncertainty);
      }
  });

  it("goes by the surest measure, and by a fresh one after the browser's clock stood still", () => {
    const good = ask(0, 10, 10);
    expect(refined(null, good)).toBe(good);
    expect(refined(good, ask(1000, 10, 800))).toBe(good);
    const better = ask(2000, 2, 2);
    expect(refined(good, better)).toBe(better);
    // asleep for an hour: the same request now shows another offset
    const awake = timeFrom(5000, 5900, 5450 + TRUE_OFFSET + 3_600_000);
    expect(refined(good, awake)).toBe(awake);
  });

  it("notices a time sent by the server that cannot be", () => {
    const known = ask(0, 10, 10);
    const arrival = (sentAt: number, under: number) => contradicts(known, sentAt + TRUE_OFFSET, sentAt + under);
    expect(arrival(5000, 200)).toBe(false);
    expect(contradicts(known, 5000 + TRUE_OFFSET + 2000, 5000)).toBe(true);
    expect(contradicts(known, 5000 + TRUE_OFFSET - 2000, 5000)).toBe(true);
  });
});

describe("what the server tells", () => {
  it("is read from events and answers, and anything else is not taken for it", () => {
    const now = "2026-03-02T10:20:01.500Z";
    expect(toldByEvent(JSON.stringify({ now, ...RUN }))).toEqual({ run: RUN, now: Date.parse(now) });
    expect(toldByAnswer({ ok: true, now, run: { ...RUN, sequence: 4 } })).toEqual({ run: RUN, now: Date.parse(now) });
    expect(timeByEvent(JSON.stringify({ now }))).toBe(Date.parse(now));
    for (const text of ["", "{", "null", JSON.stringify({ now }), JSON.stringify({ ...RUN })])
      expect(toldByEvent(text)).toBeNull();
    expect(toldByAnswer({ code: "no-such-run" })).toBeNull();
    expect(timeByEvent("soon")).toBeNull();
  });
});

describe("what covers the bench", () => {
  const facts: CoverFacts = {
    run: RUN,
    isElsewhere: false,
    left: ms(30),
    isOffline: false,
    isAllSaved: true,
    isBeingSent: false,
    savedAt: RUN.savedAt,
  };
  const shut = (code: string): LiveRun => ({
    ...RUN,
    state: "expired",
    shut: code,
    clock: { state: "stopped", deadline: null, remaining: 0 },
  });
  const paused: LiveRun = {
    ...RUN,
    state: "paused",
    isPaused: true,
    clock: { state: "standing", deadline: null, remaining: ms(30) },
  };

  test.each([
    ["nothing", facts, null],
    ["a pause", { ...facts, run: paused }, "paused"],
    ["another window", { ...facts, isElsewhere: true }, "elsewhere"],
    // the window that may not write says so even while the clock stands
    ["both", { ...facts, run: paused, isElsewhere: true }, "elsewhere"],
    ["its own reckoning", { ...facts, left: 0 }, "time-is-up"],
    ["a pause with nothing left", { ...facts, run: paused, left: 0 }, "paused"],
  ] as const)("%s", (_, given, kind) => expect(coverKind(given)).toBe(kind));

  it("covers it for every reason that a started section takes nothing", () => {
    for (const code of Object.keys(RUN_REFUSALS)) {
      const isReason = ["handed-in", "time-is-up", "closed-by-tutor", "void"].includes(code);
      expect(coverKind({ ...facts, run: shut(code) })).toBe(isReason ? code : null);
    }
  });

  it("says what is kept, and never that everything is where it is not", () => {
    for (const kind of ["paused", "elsewhere", "time-is-up", "closed-by-tutor", "handed-in"] as const) {
      const run = kind === "paused" || kind === "elsewhere" ? RUN : shut(kind);
      const all = coverWords(kind, { ...facts, run }).sentences.join(" ");
      const some = coverWords(kind, { ...facts, run, isAllSaved: false }).sentences.join(" ");
      expect(some).toContain("kept in this browser");
      expect(all).not.toContain("kept in this browser");
    }
    const over = { ...facts, run: shut("time-is-up") };
    expect(coverWords("time-is-up", { ...over, savedAt: null }).sentences[0]).toContain("an empty report");
    // closed a moment ago, and the server still takes what was written before
    const closed = (changes: Partial<CoverFacts>) =>
      coverWords("closed-by-tutor", { ...facts, run: shut("closed-by-tutor"), isAllSaved: false, ...changes })
        .sentences[1];
    expect(closed({ isBeingSent: true })).toContain("is being sent");
    expect(closed({ isBeingSent: true, isOffline: true })).toContain("kept in this browser");
    // by its own reckoning, while the server still takes what was written in time
    const last = (changes: Partial<CoverFacts>) =>
      coverWords("time-is-up", { ...facts, left: 0, ...changes }).sentences[1];
    expect(last({})).toContain("is saved");
    expect(last({ isAllSaved: false })).toContain("is being sent");
    expect(last({ isAllSaved: false, isOffline: true })).toContain("kept in this browser");
    expect(coverWords("paused", { ...facts, run: paused }).sentences.join(" ")).toContain("30 minutes left");
  });
});
