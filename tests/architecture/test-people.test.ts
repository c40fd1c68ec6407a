import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

const FOLDER = "tests/e2e";

test("no two browser tests join under the same sign-in name: all of them share one workshop", () => {
  const names = readdirSync(FOLDER)
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => [...readFileSync(`${FOLDER}/${file}`, "utf8").matchAll(/joinAs\([^)]*"([a-z0-9._-]+)"\)/g)])
    .map(([, name]) => name);
  expect(names.length).toBeGreaterThan(5);
  expect(names.filter((name, n) => names.indexOf(name) !== n)).toEqual([]);
});
