import { PAGE } from "./page";
import { line, text } from "./text";

const BLANK_ROWS = 8;
const ROW = 54;

const REPORT_COLUMNS = [
  ["Face", 0],
  ["From datum, mm", 160],
  ["Length, mm", 460],
  ["Side", 690],
  ["Type", 830],
  ["Size, mm", 1290],
  ["Accept / reject", 1500],
] as const;

/** Empty lines for the learner's indications. */
export function blankReport(top: number): string {
  const parts = [
    ...REPORT_COLUMNS.map(([name, at]) => text(PAGE.left + at, top, name, { size: 28, weight: 700 })),
    line(PAGE.left, top + 16, PAGE.right, top + 16, 3),
  ];
  for (let row = 1; row <= BLANK_ROWS; row++) {
    const at = top + 16 + row * ROW;
    parts.push(line(PAGE.left, at, PAGE.right, at, 1.5, "#777"));
  }
  return parts.join("");
}
