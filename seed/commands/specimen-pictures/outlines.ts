import type { TruthItem } from "@/lib/specimen";
import { BUTT_PLATE_WIDTH, type Face, upOnScreen } from "@/lib/weld";
import { DOTS_PER_MM, PAGE } from "./page";
import { line, text } from "./text";

/** Numbers stand this far from the weld's centre line, mm, so that they cover nothing. */
const NUMBER_AT = 33;

/** Two-tone outlines of the items on one face, with their numbers in the table. */
export function outlines(face: Face, items: readonly TruthItem[], top: number): string {
  const up = upOnScreen(face);
  const dotX = (x: number) => PAGE.left + x * DOTS_PER_MM;
  const dotY = (y: number) => top + (BUTT_PLATE_WIDTH / 2 - up * y) * DOTS_PER_MM;
  return items
    .map((item, n) => {
      if (item.face !== face) return "";
      const points = item.outline.map(([x, y]) => `${dotX(x).toFixed(1)},${dotY(y).toFixed(1)}`).join(" ");
      const dashes = item.neutral ? ' stroke-dasharray="8 6"' : "";
      const outline = ["#000000", "#ffffff"].map(
        (colour, layer) =>
          `<polygon points="${points}" fill="none" stroke="${colour}" stroke-width="${layer ? 2.5 : 6}"${dashes}/>`,
      );
      const middle = dotX((item.start + item.end) / 2);
      const side = item.across < 0 ? -1 : 1;
      const away = Math.max(NUMBER_AT, Math.abs(item.across) + 8);
      const at = dotY(side * away);
      const badge =
        line(middle, at, middle, dotY(item.across), 3, "#ffffff") +
        line(middle, at, middle, dotY(item.across), 1.2, "#000000") +
        `<circle cx="${middle}" cy="${at}" r="26" fill="#ffffff" stroke="#000000" stroke-width="3"/>` +
        text(middle, at + 11, `${n + 1}`, { size: 30, weight: 700, anchor: "middle" });
      return outline.join("") + badge;
    })
    .join("");
}
