import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { importedNames } from "./imported-names";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const FOLDERS = ["app", "lib", "prisma", "seed"];
const NOT_OURS = new Set(["prisma/generated", "prisma/migrations"]);
const ENDINGS = ["", ".ts", ".tsx", ".mjs", "/index.ts", "/index.tsx"];

export interface Module {
  /** Path from the root, like `lib/weld/face.ts`. */
  readonly path: string;
  /** Names of imported packages, such as `zod` or `node:fs`. */
  readonly packages: readonly string[];
  /** Paths of imported modules of this project; types count. */
  readonly modules: readonly string[];
  readonly directive: "use client" | "use server" | null;
}

/** Every module of the project by its path. */
export function readModules(): ReadonlyMap<string, Module> {
  const paths = [...FOLDERS.flatMap(sourcesUnder), "instrumentation.ts"];
  return new Map(paths.map((path) => [path, readModule(path)]));
}

/** Everything that a module imports, directly or through others. `stopAt` says where not to look further. */
export function reachedFrom(
  start: string,
  modules: ReadonlyMap<string, Module>,
  stopAt: (module: Module) => boolean = () => false,
): ReadonlyMap<string, readonly string[]> {
  const routes = new Map<string, readonly string[]>([[start, [start]]]);
  for (const [path, route] of routes) {
    const module = modules.get(path);
    if (!module || (path !== start && stopAt(module))) continue;
    for (const next of module.modules) if (!routes.has(next)) routes.set(next, [...route, next]);
  }
  return routes;
}

function sourcesUnder(folder: string): string[] {
  if (NOT_OURS.has(folder)) return [];
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return sourcesUnder(path);
    return /\.(ts|tsx|mjs)$/.test(entry.name) ? [path] : [];
  });
}

function readModule(path: string): Module {
  const source = readFileSync(join(ROOT, path), "utf8");
  const names = importedNames(source);
  const isOwn = (name: string) => name.startsWith(".") || name.startsWith("@/");
  return {
    path,
    packages: names.filter((name) => !isOwn(name)),
    modules: names.filter(isOwn).flatMap((name) => resolveModule(path, name)),
    directive: (/^\s*["'](use client|use server)["']/.exec(source)?.[1] as Module["directive"]) ?? null,
  };
}

function resolveModule(from: string, name: string): string[] {
  if (/\.(css|json|wasm)$/.test(name)) return [];
  const base = name.startsWith("@/") ? join(ROOT, name.slice(2)) : join(ROOT, dirname(from), name);
  const file = ENDINGS.map((ending) => base + ending).find((candidate) =>
    statSync(candidate, { throwIfNoEntry: false })?.isFile(),
  );
  const path = file && relative(ROOT, file);
  if (path?.startsWith("prisma/generated/")) return [];
  return [path || `missing:${name}`];
}
