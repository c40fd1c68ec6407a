import type { Truth, TruthItem } from "@/lib/specimen";
import { type Picture, renderView, STRIP_PER_MM, type Surface, type View } from "@/lib/surface";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, FACES, type Face } from "@/lib/weld";
import { itemWords } from "./item-words";
import { escaped, placed, sheetPng } from "./png";
import { LIGHTS } from "./views";

/** A tile, mm, at one pixel of the strip per pixel of the picture. */
const TILE = { wide: 56, high: 26 };
const CAPTION = 22;
const GAP = 4;
const COLUMNS = 2;

/** Every truth item twice, under two lights, with what was measured. */
export function contactSheet(surfaces: Record<Face, Surface>, truth: Truth): Promise<Buffer> {
  const tileWidth = TILE.wide * STRIP_PER_MM;
  const tileHeight = TILE.high * STRIP_PER_MM;
  const cellWidth = LIGHTS.length * (tileWidth + GAP) + 2 * GAP;
  const cellHeight = tileHeight + CAPTION + GAP;
  const rows = Math.max(1, Math.ceil(truth.items.length / COLUMNS));
  const pictures: { picture: Picture; left: number; top: number }[] = [];
  const captions: string[] = [];
  const shown = FACES.flatMap((face) =>
    truth.items.filter((item) => item.face === face).map((item) => ({ face, item })),
  );
  shown.forEach(({ face, item }, n) => {
    const left = GAP + (n % COLUMNS) * cellWidth;
    const top = Math.floor(n / COLUMNS) * cellHeight;
    captions.push(
      `<text x="${left}" y="${top + 16}" font-size="13" fill="#e8e6df">${escaped(`${n + 1}  ${caption(item)}`)}</text>`,
    );
    LIGHTS.forEach((light, m) => {
      const picture = renderView(surfaces[face], { ...tileOf(item), light });
      pictures.push({ picture, left: left + m * (tileWidth + GAP), top: top + CAPTION });
    });
  });
  if (!truth.items.length) captions.push('<text x="8" y="24" font-size="13" fill="#e8e6df">Nothing to find.</text>');
  return sheetPng(
    COLUMNS * cellWidth,
    rows * cellHeight,
    "#1e2225",
    pictures.map(({ picture, left, top }) => placed(picture, left, top)),
    captions.join(""),
  );
}

function caption(item: TruthItem): string {
  const { number, name, where, size, remark } = itemWords(item);
  return [`${item.face}`, `${number} ${name}`, where, size, remark].filter(Boolean).join("  ·  ");
}

/** The part of the face around the worst place of an item, kept on the plate. */
function tileOf(item: TruthItem): Omit<View, "light"> {
  const shows = item.end - item.start > TILE.wide - 8 ? item.worst[0] : (item.start + item.end) / 2;
  const x0 = kept(shows - TILE.wide / 2, 0, BUTT_PLATE_LENGTH - TILE.wide);
  const y0 = kept(item.across - TILE.high / 2, -BUTT_PLATE_WIDTH / 2, BUTT_PLATE_WIDTH / 2 - TILE.high);
  // whole pixels of the strip, so that nothing is resampled
  const snapped = (value: number) => Math.round(value * STRIP_PER_MM) / STRIP_PER_MM;
  const left = snapped(x0);
  const low = snapped(y0);
  return { x0: left, x1: left + TILE.wide, y0: low, y1: low + TILE.high, perMm: STRIP_PER_MM };
}

const kept = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
