import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answerSave } from "@/lib/practice";
import { type Call, EMPTY_REPORT, type Report } from "@/lib/report";

const call: Call = {
  id: "a",
  face: "cap",
  type: "surface-pore",
  start: 10,
  end: null,
  across: 0,
  size: 1,
  sentence: null,
};
const reportAt = (start: number): Report => ({ ...EMPTY_REPORT, calls: [{ ...call, start }] });
const sentenced = (sentence: Call["sentence"], pieceSentence: Report["pieceSentence"]): Report => ({
  ...EMPTY_REPORT,
  calls: [{ ...call, start: 4, sentence }],
  pieceSentence,
});

describe("which save is kept", () => {
  const stored = { state: "open", sequence: 4, report: reportAt(4), windowId: "left", reportClosedAt: null } as const;
  test.each([
    ["a higher number", 5, reportAt(9), "accept"],
    ["a higher number with the same report", 7, reportAt(4), "accept"],
    ["the same once more", 4, reportAt(4), "repeat"],
    ["the same number with another report", 4, reportAt(5), "stale"],
    ["the same number with another sentence on a row", 4, sentenced("reject", null), "stale"],
    ["the same number with another sentence on the piece", 4, sentenced(null, "accept"), "stale"],
    ["a lower number", 3, reportAt(4), "stale"],
  ] as const)("%s", (_case, sequence, report, answer) => {
    expect(answerSave(stored, sequence, report)).toBe(answer);
  });

  test.each([
    ["a window that has seen the last save", { id: "right", base: 4 }, "accept"],
    ["the window of the last save, whose answer was lost", { id: "left", base: 2 }, "accept"],
    ["a window that was cut off while another one saved", { id: "right", base: 3 }, "stale"],
  ] as const)("%s", (_case, window, answer) => {
    expect(answerSave(stored, 20, reportAt(9), window)).toBe(answer);
  });

  const closed = { ...stored, reportClosedAt: new Date(0), report: { ...reportAt(4), answers: { q1: 2 } } };
  test.each([
    ["an answer more", 5, { ...reportAt(4), answers: { q1: 2, q2: 0 } }, "accept"],
    ["another answer", 5, { ...reportAt(4), answers: { q1: 1 } }, "accept"],
    ["the same once more", 4, { ...reportAt(4), answers: { q1: 2 } }, "repeat"],
    ["the same number with another answer", 4, { ...reportAt(4), answers: { q1: 3 } }, "stale"],
    ["a lower number", 3, { ...reportAt(4), answers: {} }, "stale"],
    ["another report with the same answers", 5, { ...reportAt(9), answers: { q1: 2 } }, "report-closed"],
    ["another sentence", 5, { ...sentenced("reject", null), answers: { q1: 2 } }, "report-closed"],
    ["an older report of another window", 3, reportAt(3), "report-closed"],
  ] as const)("once the report is closed, %s", (_case, sequence, report, answer) => {
    expect(answerSave(closed, sequence, report)).toBe(answer);
  });

  test("answers only once the report is closed", () => {
    expect(answerSave(stored, 5, { ...reportAt(4), answers: { q1: 0 } })).toBe("report-open");
  });

  test("none after handing in, not even a repeat", () => {
    const handedIn = { ...stored, state: "handed-in" } as const;
    for (const sequence of [3, 4, 5]) expect(answerSave(handedIn, sequence, reportAt(4))).toBe("handed-in");
  });

  test("in whatever order packets arrive, and however often, the last version wins", () => {
    const packets = fc
      .uniqueArray(fc.integer({ min: 1, max: 50 }), { minLength: 1 })
      .chain((sequences) => fc.array(fc.constantFrom(...sequences), { minLength: 1 }));
    fc.assert(
      fc.property(packets, (sequences) => {
        let kept: { state: "open"; sequence: number; report: Report; windowId: null; reportClosedAt: null } = {
          state: "open",
          sequence: 0,
          report: EMPTY_REPORT,
          windowId: null,
          reportClosedAt: null,
        };
        for (const sequence of sequences) {
          const report = reportAt(sequence);
          if (answerSave(kept, sequence, report) === "accept") kept = { ...kept, sequence, report };
        }
        expect(kept.sequence).toBe(Math.max(...sequences));
        expect(kept.report).toEqual(reportAt(kept.sequence));
      }),
    );
  });
});
