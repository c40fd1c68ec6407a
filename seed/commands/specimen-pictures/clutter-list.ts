import { CLUTTER_WORDS } from "@/lib/imperfections";
import type { ClutterItem } from "@/lib/specimen";
import { placeWords } from "./item-words";
import { PAGE } from "./page";
import { text } from "./text";

const COLUMNS = 3;
const ROW = 26;
const HEADING = 32;

/** Height of the list on the page, dots. */
export const clutterHeight = (count: number): number => (count === 0 ? 0 : HEADING + ROW * Math.ceil(count / COLUMNS));

/** What lies on the plates and is no imperfection, for whoever is asked what it is then; nothing where nothing does. */
export function clutterList(clutter: readonly ClutterItem[], top: number): string {
  if (!clutter.length) return "";
  const width = (PAGE.right - PAGE.left) / COLUMNS;
  const entries = clutter.map((item, n) => {
    const { where, across } = placeWords(item);
    const words = `${item.face}: ${CLUTTER_WORDS[item.kind].name}, ${where}, ${across}`;
    const at = top + HEADING + Math.floor(n / COLUMNS) * ROW;
    return text(PAGE.left + (n % COLUMNS) * width, at, words, { size: 20 });
  });
  return text(PAGE.left, top, "Harmless, but tempting", { size: 22, weight: 700 }) + entries.join("");
}
