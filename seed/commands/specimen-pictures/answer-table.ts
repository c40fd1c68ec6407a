import type { TruthItem } from "@/lib/specimen";
import { itemWords } from "./item-words";
import { PAGE } from "./page";
import { line, text } from "./text";

/** Side by side, so that a full plate has room on one page. */
const HALVES = 2;
const HALF_WIDTH = 880;
const ROW = 32;
const SIZE = 17;

const COLUMNS = [
  ["No.", 0],
  ["Face", 42],
  ["Type (ISO 6520-1)", 94],
  ["From datum", 392],
  ["Across", 534],
  ["Size", 606],
  ["Remark", 764],
] as const;

/** What was measured on the finished surface, numbered as in the pictures, between two heights of the page, dots. */
export function answerTable(items: readonly TruthItem[], top: number, bottom: number): string {
  if (!items.length) return text(PAGE.left, top, "Nothing to find.", { size: 28 });
  const perHalf = Math.ceil(items.length / HALVES);
  const row = Math.min(ROW, (bottom - top - 14) / perHalf);
  const size = Math.min(SIZE, 0.7 * row);
  return Array.from({ length: HALVES }, (_, half) => {
    const left = half === 0 ? PAGE.left : PAGE.right - HALF_WIDTH;
    const rows = items.slice(half * perHalf, (half + 1) * perHalf);
    const cells = rows.map((item, n) => {
      const { number, name, where, across, size: measured, remark } = itemWords(item);
      const at = top + 12 + (n + 0.76) * row;
      return [`${half * perHalf + n + 1}`, item.face, `${number} ${name}`, where, across, measured, remark]
        .map((cell, column) => text(left + COLUMNS[column][1], at, cell, { size }))
        .join("");
    });
    return (
      COLUMNS.map(([name, at]) => text(left + at, top, name, { size: SIZE, weight: 700 })).join("") +
      line(left, top + 10, left + HALF_WIDTH, top + 10, 3) +
      cells.join("")
    );
  }).join("");
}
