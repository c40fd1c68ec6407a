import { expect, type Page } from "@playwright/test";
import { DEFAULT_CRITERIA } from "../../../lib/criteria";
import { imperfection } from "../../../lib/imperfections";
import { type Call, EMPTY_REPORT, type Report } from "../../../lib/report";
import { withSentences } from "../../../seed/demo/inspector/sentences";
import { send, takeFreshFillet, takeFreshPlate } from "./practice";
import { readDimensions, readJoint, readTruth } from "./truth";

/**
 * Takes a piece and hands in a report that finds most of it, misses something, and calls something
 * that is not there, with answers to all questions but the first.
 */
export async function handInPiece(page: Page, kind: "butt" | "fillet"): Promise<string> {
  const id = await (kind === "butt" ? takeFreshPlate : takeFreshFillet)(page);
  const report = withSentences(mixedReport(id, kind), readJoint(id), DEFAULT_CRITERIA);
  const closed = await send(page, "POST", `/api/practice/${id}/close-report`, { sequence: 1, report });
  expect(closed).toMatchObject({ status: 200 });
  const [, ...answered] = closed.body.questions as readonly { readonly id: string }[];
  const answers = Object.fromEntries(answered.map((question, n) => [question.id, n % 4]));
  const last = { sequence: 2, report: { ...report, answers } };
  expect(await send(page, "POST", `/api/practice/${id}/hand-in`, last)).toMatchObject({ status: 200 });
  return id;
}

const tenths = (value: number) => Math.round(value * 10) / 10;

function mixedReport(id: string, kind: "butt" | "fillet"): Report {
  const [, ...found] = readTruth(id).filter(({ neutral }) => !neutral);
  const calls = found.map((item, n): Call => {
    const { face, type, start, end, across, size } = item;
    const isPoint = imperfection(type).extent === "point";
    return {
      id: `c${n}`,
      face,
      type,
      // every third lies before its place, as far as there is weld before it
      start: tenths(n % 3 === 2 ? Math.max(0, start - 7) : start),
      end: isPoint ? null : tenths(end),
      across: tenths(across),
      size: size === null ? null : tenths(size * (n % 2 === 0 ? 1 : 1.6)),
      sentence: null,
    };
  });
  const face = kind === "butt" ? "cap" : "fillet";
  const stray: Call = { id: "stray", face, type: "overlap", start: 5, end: 9, across: 30, size: null, sentence: null };
  const measures = readDimensions(id).map(({ dimension, station, value, at }) => ({
    dimension,
    station,
    value: tenths(value),
    at: at === null || station !== null ? null : tenths(at),
  }));
  return { ...EMPTY_REPORT, calls: [...calls, stray], measures };
}
