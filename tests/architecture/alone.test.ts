import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ALONE } from "../support/alone.mjs";

const OUTLASTS_ITS_FILE = /^\/\/ @vitest-environment|\bvi\.(mock|doMock)\(/m;

test("whatever would outlast its file in a process that others share is tested alone", () => {
  const files = readdirSync("tests", { recursive: true, encoding: "utf8" })
    .map((file) => `tests/${file.replaceAll("\\", "/")}`)
    .filter((file) => /\.test\.tsx?$/.test(file));
  expect(files.length).toBeGreaterThan(ALONE.length);
  const found = files.filter((file) => OUTLASTS_ITS_FILE.test(readFileSync(file, "utf8")));
  expect(found.sort()).toEqual([...ALONE]);
});
