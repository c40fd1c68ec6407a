import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, type Face, upOnScreen } from "@/lib/weld";
import { DOTS_PER_MM, PAGE } from "./page";
import { line, text } from "./text";

const NAMES: Record<Face, string> = { cap: "Cap face", root: "Root face (plate turned about its long axis)" };

/** Title of a face, a ruler in mm from the datum below it, and one across from the weld's centre line at its left. */
export function rulers(face: Face, top: number): string {
  const bottom = top + BUTT_PLATE_WIDTH * DOTS_PER_MM;
  const parts = [
    text(PAGE.left, top - 24, NAMES[face], { size: 36, weight: 700 }),
    text(PAGE.right, top - 24, "distances in mm", { size: 26, anchor: "end" }),
    line(PAGE.left, bottom + 6, PAGE.right, bottom + 6, 3),
  ];
  for (let x = 0; x <= BUTT_PLATE_LENGTH; x += 1) {
    const at = PAGE.left + x * DOTS_PER_MM;
    const length = x % 10 === 0 ? 26 : x % 5 === 0 ? 18 : 9;
    parts.push(line(at, bottom + 6, at, bottom + 6 + length, x % 10 === 0 ? 3 : 1.5));
    if (x % 10 === 0) parts.push(text(at, bottom + 62, `${x}`, { size: 24, anchor: "middle" }));
  }
  parts.push(text(PAGE.left - 24, bottom + 62, "datum", { size: 24, weight: 700, anchor: "end" }));
  const middle = top + (BUTT_PLATE_WIDTH / 2) * DOTS_PER_MM;
  for (let y = -70; y <= 70; y += 10) {
    const at = middle - upOnScreen(face) * y * DOTS_PER_MM;
    parts.push(line(PAGE.left - 26, at, PAGE.left - 4, at, y === 0 ? 4 : 2));
    parts.push(text(PAGE.left - 34, at + 8, `${Math.abs(y)}`, { size: 22, anchor: "end" }));
  }
  for (const plate of ["A", "B"] as const) {
    const side = plate === "A" ? 1 : -1;
    const at = middle - upOnScreen(face) * side * 55 * DOTS_PER_MM;
    parts.push(text(PAGE.left - 96, at + 12, plate, { size: 36, weight: 700, anchor: "middle" }));
  }
  return parts.join("");
}
