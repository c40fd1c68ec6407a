import type { TruthItem } from "@/lib/specimen";
import { itemWords } from "./item-words";
import { PAGE } from "./page";
import { line, text } from "./text";

const BLANK_ROWS = 8;
const ROW = 54;
const SMALLEST_ROW = 30;

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

const ANSWER_COLUMNS = [
  ["No.", 0],
  ["Face", 90],
  ["Type (ISO 6520-1)", 210],
  ["From datum", 800],
  ["Across, mm", 1060],
  ["Size", 1270],
  ["Remark", 1520],
] as const;

/** What was measured on the finished surface, numbered as in the pictures. */
export function answerTable(items: readonly TruthItem[], top: number): string {
  const room = PAGE.height - 150 - top - 16;
  const row = Math.min(46, Math.max(SMALLEST_ROW, room / Math.max(1, items.length)));
  const size = Math.min(26, 0.66 * row);
  const parts = [
    ...ANSWER_COLUMNS.map(([name, at]) => text(PAGE.left + at, top, name, { size: 26, weight: 700 })),
    line(PAGE.left, top + 14, PAGE.right, top + 14, 3),
  ];
  items.forEach((item, n) => {
    const { number, name, where, across, size: measured, remark } = itemWords(item);
    const at = top + 14 + (n + 0.76) * row;
    const cells = [`${n + 1}`, item.face, `${number} ${name}`, where, across, measured, remark];
    cells.forEach((cell, column) => {
      if (cell) parts.push(text(PAGE.left + ANSWER_COLUMNS[column][1], at, cell, { size }));
    });
  });
  if (!items.length) parts.push(text(PAGE.left, top + 60, "Nothing to find.", { size: 28 }));
  return parts.join("");
}
