import type { Truth } from "@/lib/specimen";
import { type Picture, renderView, type Surface } from "@/lib/surface";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, FACES, type Face } from "@/lib/weld";
import { answerTable } from "./answer-table";
import { blankReport } from "./blank-report";
import { clutterHeight, clutterList } from "./clutter-list";
import { outlines } from "./outlines";
import { CAUTION, DOTS_PER_MM, PAGE, SCALE_NOTE } from "./page";
import { placed, sheetPng } from "./png";
import { rulers } from "./rulers";
import { text } from "./text";
import { plateView } from "./views";

/** Flatter and brighter than on the screen: paper swallows shadows. */
const PRINT_LIGHT = { azimuth: 115, elevation: 20, power: 3.6, ambient: 0.42 };
const TOPS: Record<Face, number> = { cap: 250, root: 1310 };
const TABLE_TOP = 2370;
const ANSWERS = { top: 2336, bottom: 2858 };

/** Both faces at scale with a datum ruler and lines for the report; nothing on it tells the answers. */
export function practiceSheet(surfaces: Record<Face, Surface>): Promise<Buffer> {
  return sheet(surfaces, [
    heading("Visual inspection: practice plate", "Name ______________________   Date ______________"),
    blankReport(TABLE_TOP),
  ]);
}

/** The same with outlines, numbers, the table of what was measured and a list of what only tempts. */
export function answerSheet(surfaces: Record<Face, Surface>, truth: Truth, seed: string): Promise<Buffer> {
  const clutterTop = ANSWERS.bottom - clutterHeight(truth.clutter.length);
  return sheet(surfaces, [
    heading("Answers: practice plate", `Seed ${seed}   Generator ${truth.generator}`),
    ...FACES.map((face) => outlines(face, truth.items, TOPS[face])),
    answerTable(truth.items, ANSWERS.top, clutterTop - 30),
    clutterList(truth.clutter, clutterTop),
  ]);
}

const heading = (title: string, right: string): string =>
  text(PAGE.left, 120, title, { size: 54, weight: 700 }) + text(PAGE.right, 120, right, { size: 32, anchor: "end" });

function sheet(surfaces: Record<Face, Surface>, drawings: readonly string[]): Promise<Buffer> {
  const pictures = FACES.map((face) => placed(facePicture(surfaces[face]), PAGE.left, TOPS[face]));
  const common = [
    ...FACES.map((face) => rulers(face, TOPS[face])),
    text(PAGE.left, PAGE.height - 70, CAUTION, { size: 30, weight: 600 }),
    text(PAGE.right, PAGE.height - 70, SCALE_NOTE, { size: 30, anchor: "end" }),
  ];
  return sheetPng(PAGE.width, PAGE.height, "#ffffff", pictures, [...common, ...drawings].join(""), PAGE.dotsPerInch);
}

function facePicture(surface: Surface): Picture {
  const picture = renderView(surface, { ...plateView(PRINT_LIGHT, DOTS_PER_MM, 0), exposure: 1.25 });
  if (picture.width !== BUTT_PLATE_LENGTH * DOTS_PER_MM || picture.height !== BUTT_PLATE_WIDTH * DOTS_PER_MM) {
    throw new Error(`face drawn ${picture.width} x ${picture.height}`);
  }
  return picture;
}
