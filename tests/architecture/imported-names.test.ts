import { expect, test } from "vitest";
import { importedNames } from "./imported-names";

test.each([
  ['import { a } from "./a";', ["./a"]],
  ['import type { A } from "@/lib/a";', ["@/lib/a"]],
  ['import a, { type B } from "b";', ["b"]],
  ['import "server-only";', ["server-only"]],
  ['export { a } from "./a";\nexport * from "./b";', ["./a", "./b"]],
  ['export type { A } from "./a";', ["./a"]],
  ['import {\n  a,\n  b,\n} from "./many";', ["./many"]],
  ['const a = await import("./late");', ["./late"]],
  ['type A = import("./type").A;', ["./type"]],
  ['const a = require("old");', ["old"]],
  ['new Worker(new URL("./paint.worker.ts", import.meta.url));', ["./paint.worker.ts"]],
  ['// import { a } from "./not";\n/* import "./nor" */', []],
  ['const text = "see // here"; import b from "./b";', ["./b"]],
  ["const url = `http://x/`;\nimport b from './b';", ["./b"]],
  ['export const from = 1;\nimport { c } from "./c";', ["./c"]],
])("%s", (source, names) => {
  expect([...importedNames(source)].sort()).toEqual(names);
});
