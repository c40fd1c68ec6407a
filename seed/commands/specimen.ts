import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Blueprint, FILLET_BLUEPRINTS, generateFilletSpecimen, generateSpecimen, showcases } from "@/lib/specimen";
import { turnedFillet } from "@/lib/surface";
import { FACES } from "@/lib/weld";
import { readArguments } from "./specimen-arguments";
import { readBlueprint } from "./specimen-blueprint";
import { contactSheet } from "./specimen-pictures/contact-sheet";
import { endPicture } from "./specimen-pictures/end-picture";
import { FILLET_LIGHTS, filletStripView, filletView, turnedView } from "./specimen-pictures/fillet-views";
import { savePng } from "./specimen-pictures/png";
import { answerSheet, practiceSheet } from "./specimen-pictures/print-sheet";
import { type RandomStrip, randomSheet, randomStrips } from "./specimen-pictures/random-sheet";
import { type TypesRow, typesRow, typesSheet } from "./specimen-pictures/types-sheet";
import { LIGHTS, plateView, stripView } from "./specimen-pictures/views";

const USAGE = `npm run specimen -- --seed SEED --out FOLDER [--blueprint NAME]

Makes one specimen and writes to FOLDER: both faces and both weld strips under two lights, truth.json, contact-sheet.png,
practice-sheet.png (to print for a class) and answer-sheet.png (for the tutor). The same seed gives the same specimen.

npm run specimen -- --fillet --seed SEED --out FOLDER [--blueprint practice | clean]

Makes one fillet-welded T-joint and writes to FOLDER: the joint and its weld seen along the line between the plates, under two
lights, both plates seen square on (base-plate.png, standing-plate.png), both ends and truth.json.

npm run specimen -- --sheet types --out FOLDER [--seed SEED]

Writes types.png: everything that can be on a plate, smallest, middling and largest, under two lights, on one page.

npm run specimen -- --sheet random N --out FOLDER [--seed SEED] [--blueprint NAME]

Writes random.png: the welds of N specimens with what was measured on them.

--blueprint: practice (if left out), assessment, final-mock, clean, or a JSON file with a blueprint of your own.`;

async function main(): Promise<number> {
  const request = readArguments(process.argv.slice(2));
  if (!request.ok) {
    console.error(`${request.message}\n\n${USAGE}`);
    return 2;
  }
  if (request.do === "help") {
    console.log(USAGE);
    return 0;
  }
  if (request.do === "fillet") {
    mkdirSync(request.out, { recursive: true });
    return writeFillet(request.seed, request.out, request.isClean);
  }
  const named = readBlueprint(request.do === "types" ? "practice" : request.blueprint);
  if (!named.ok) {
    console.error(named.message);
    return 2;
  }
  mkdirSync(request.out, { recursive: true });
  switch (request.do) {
    case "types":
      return writeTypes(request.seed, request.out);
    case "random":
      return writeRandom(request.seed, request.count, request.out, named.blueprint);
    case "specimen":
      return writeSpecimen(request.seed, request.out, named.blueprint);
  }
}

async function writeTypes(seed: string, out: string): Promise<number> {
  const rows: TypesRow[] = [];
  for (const { name, make } of showcases()) {
    rows.push(typesRow(make(seed)));
    console.log(name);
  }
  writeFileSync(join(out, "types.png"), await typesSheet(rows));
  return 0;
}

async function writeRandom(seed: string, count: number, out: string, blueprint: Blueprint): Promise<number> {
  const strips: RandomStrip[] = [];
  for (let n = 1; n <= count; n++) {
    strips.push(...randomStrips(generateSpecimen(`${seed}-${n}`, blueprint)));
    console.log(`${seed}-${n}`);
  }
  writeFileSync(join(out, "random.png"), await randomSheet(strips));
  return 0;
}

async function writeSpecimen(seed: string, out: string, blueprint: Blueprint): Promise<number> {
  const specimen = generateSpecimen(seed, blueprint);
  const { truth, surfaces } = specimen;
  const write = (name: string, make: () => Promise<Buffer> | Buffer) => async () => {
    writeFileSync(join(out, name), await make());
    console.log(name);
  };
  const files = [
    write("truth.json", () => Buffer.from(`${JSON.stringify(truth, null, 2)}\n`)),
    ...FACES.flatMap((face) =>
      LIGHTS.flatMap((light, n) => [
        write(`${face}-plate-light-${n + 1}.png`, () => savePng(surfaces[face], plateView(light))),
        write(`${face}-strip-light-${n + 1}.png`, () => savePng(surfaces[face], stripView(light))),
      ]),
    ),
    write("contact-sheet.png", () => contactSheet(surfaces, truth)),
    write("practice-sheet.png", () => practiceSheet(surfaces)),
    write("answer-sheet.png", () => answerSheet(surfaces, truth, seed)),
  ];
  // one after the other: each holds a whole picture in memory
  for (const file of files) await file();
  return 0;
}

async function writeFillet(seed: string, out: string, isClean: boolean): Promise<number> {
  const { truth, surface, ends } = generateFilletSpecimen(seed, FILLET_BLUEPRINTS[isClean ? "clean" : "practice"]);
  const write = async (name: string, content: Promise<Buffer> | Buffer) => {
    writeFileSync(join(out, name), await content);
    console.log(name);
  };
  await write("truth.json", Buffer.from(`${JSON.stringify(truth, null, 2)}\n`));
  for (const [n, light] of FILLET_LIGHTS.entries()) {
    await write(`fillet-light-${n + 1}.png`, savePng(surface, filletView(surface, light)));
    await write(`fillet-strip-light-${n + 1}.png`, savePng(surface, filletStripView(surface, light)));
  }
  for (const plate of ["base", "standing"] as const) {
    const turned = turnedFillet(surface, plate);
    await write(`${plate}-plate.png`, savePng(turned, turnedView(turned, plate)));
  }
  await write("end-datum.png", endPicture(ends.datum));
  await write("end-far.png", endPicture(ends.farEnd));
  return 0;
}

main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  },
);
