import { imperfection, isImperfectionType } from "@/lib/imperfections";
import type { ClutterItem, Example, Showcase, TruthItem } from "@/lib/specimen";
import { type Picture, renderView, type View } from "@/lib/surface";
import { BUTT_PLATE_LENGTH } from "@/lib/weld";
import { escaped, placed, sheetPng } from "./png";
import { LIGHTS } from "./views";

/** One tile, mm, and its scale. */
const TILE = { wide: 44, high: 24, perMm: 5 };
const CAPTION = 18;
const GAP = 3;
const COLUMNS = 2;

/** One row of the sheet made ready: pictures are kept, surfaces are not. */
export interface TypesRow {
  readonly title: string;
  readonly tiles: readonly { readonly pictures: readonly Picture[]; readonly caption: string }[];
}

/** Draws the three examples of a showcase under both lights. */
export function typesRow({ type, face, process, variant, examples }: Showcase): TypesRow {
  const number = isImperfectionType(type) ? imperfection(type).number : null;
  return {
    title: [number, type, variant, face, `process ${process}`].filter(Boolean).join("  ·  "),
    tiles: examples.map((example) => ({
      pictures: LIGHTS.map((light) => renderView(example.surface, { ...tileOf(example), light })),
      caption: captionOf(type, example.found),
    })),
  };
}

/** All rows on one page, two columns. */
export function typesSheet(rows: readonly TypesRow[]): Promise<Buffer> {
  const wide = TILE.wide * TILE.perMm;
  const high = TILE.high * TILE.perMm;
  const rowWidth = 3 * (LIGHTS.length * (wide + GAP) + GAP);
  const rowHeight = high + 2 * CAPTION + GAP;
  const perColumn = Math.ceil(rows.length / COLUMNS);
  const pictures: { picture: Picture; left: number; top: number }[] = [];
  const texts: string[] = [];
  rows.forEach((row, n) => {
    const left = GAP + Math.floor(n / perColumn) * (rowWidth + 4 * GAP);
    const top = (n % perColumn) * rowHeight;
    texts.push(text(left, top + 14, row.title, "#ffffff"));
    row.tiles.forEach(({ pictures: own, caption }, m) => {
      const from = left + m * (LIGHTS.length * (wide + GAP) + GAP);
      texts.push(text(from, top + CAPTION + high + 13, caption, "#b9b6ad"));
      own.forEach((picture, k) => {
        pictures.push({ picture, left: from + k * (wide + GAP), top: top + CAPTION });
      });
    });
  });
  return sheetPng(
    COLUMNS * (rowWidth + 4 * GAP),
    perColumn * rowHeight,
    "#1e2225",
    pictures.map(({ picture, left, top }) => placed(picture, left, top)),
    texts.join(""),
  );
}

const text = (x: number, y: number, words: string, fill: string): string =>
  `<text x="${x}" y="${y}" font-size="12" fill="${fill}">${escaped(words)}</text>`;

function captionOf(type: Showcase["type"], found: TruthItem | ClutterItem | null): string {
  if (!found) return `no ${type} was measured here`;
  const length = found.end > found.start ? ` ${(found.end - found.start).toFixed(0)} long` : "";
  if ("kind" in found) return `${found.kind}${length}`;
  const size = found.size === null ? "" : ` ${found.size.toFixed(2)}`;
  return `${found.neutral ? "neutral " : ""}${found.type}${length}${size}`;
}

function tileOf({ x, y }: Example): Omit<View, "light"> {
  const x0 = Math.min(BUTT_PLATE_LENGTH - TILE.wide, Math.max(0, x - TILE.wide / 2));
  return { x0, x1: x0 + TILE.wide, y0: y - TILE.high / 2, y1: y + TILE.high / 2, perMm: TILE.perMm };
}
