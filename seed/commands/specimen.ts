import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { generateSpecimen } from "@/lib/specimen";
import { FACES } from "@/lib/weld";
import { readArguments } from "./specimen-arguments";
import { contactSheet } from "./specimen-pictures/contact-sheet";
import { savePng } from "./specimen-pictures/png";
import { answerSheet, practiceSheet } from "./specimen-pictures/print-sheet";
import { LIGHTS, plateView, stripView } from "./specimen-pictures/views";

const USAGE = `npm run specimen -- --seed SEED --out FOLDER

Makes one specimen and writes to FOLDER: both faces and both weld strips under two lights, truth.json, contact-sheet.png,
practice-sheet.png (to print for a class) and answer-sheet.png (for the tutor). The same seed gives the same specimen.`;

async function main(): Promise<number> {
  const request = readArguments(process.argv.slice(2));
  if (!request.ok) {
    console.error(`${request.message}\n\n${USAGE}`);
    return 2;
  }
  if (request.help) {
    console.log(USAGE);
    return 0;
  }
  const { seed, out } = request;
  mkdirSync(out, { recursive: true });
  const specimen = generateSpecimen(seed);
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

main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  },
);
