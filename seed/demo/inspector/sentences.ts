import {
  assessPiece,
  type Criteria,
  measuredSize,
  measuredValues,
  nominalValues,
  type Outcome,
} from "../../../lib/criteria";
import type { Report, WrittenSentence } from "../../../lib/report";
import type { Truth } from "../../../lib/specimen";
import { PIECES } from "../../../lib/weld";

const DECIDED: Readonly<Record<Outcome, WrittenSentence>> = {
  accept: "accept",
  reject: "reject",
  "cannot-be-judged": "refer",
  "not-covered": "refer",
};

/** The report with the sentences that follow from what stands in it and on the drawing; every call in it has a name and a place. */
export function withSentences(report: Report, joint: Truth["joint"], criteria: Criteria): Report {
  const indications = report.calls.map(({ id, face, type, start, end, size }) => ({
    id,
    face,
    type: type!,
    start: start!,
    end: end ?? start!,
    measured: measuredSize(type!, size),
  }));
  const values = { ...nominalValues(joint), ...measuredValues(report.measures) };
  const { outcome, sentences } = assessPiece(indications, { length: PIECES[joint.kind].length, values }, criteria);
  const calls = report.calls.map((call, n) => ({ ...call, sentence: DECIDED[sentences[n].outcome] }));
  return { ...report, calls, pieceSentence: DECIDED[outcome] };
}
