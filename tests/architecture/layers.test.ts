import { describe, expect, test } from "vitest";
import { ALLOWED_PARTS, ANSWER_PARTS, LIB_PACKAGES, partOf } from "./layers";
import { type Module, reachedFrom, readModules } from "./modules";

const modules = readModules();
const all = [...modules.values()];
const under = (folder: string) => all.filter(({ path }) => path.startsWith(`${folder}/`));

/** Every import that breaks a rule, as `from -> to`. */
function breaches(from: readonly Module[], isAllowed: (target: string, module: Module) => boolean): string[] {
  return from.flatMap((module) =>
    module.modules.filter((target) => !isAllowed(target, module)).map((target) => `${module.path} -> ${target}`),
  );
}

function foreignPackages(from: readonly Module[], isAllowed: (name: string, module: Module) => boolean): string[] {
  return from.flatMap((module) =>
    module.packages.filter((name) => !isAllowed(name, module)).map((name) => `${module.path} -> ${name}`),
  );
}

test("there is something to check in every layer", () => {
  for (const folder of ["app", "lib", "prisma"]) expect(under(folder).length, folder).toBeGreaterThan(10);
});

test("every import leads to a file", () => {
  expect(breaches(all, (target) => !target.startsWith("missing:"))).toEqual([]);
});

describe("app -> prisma -> lib", () => {
  test("lib imports lib only", () => {
    expect(breaches(under("lib"), (target) => target.startsWith("lib/"))).toEqual([]);
  });

  test("prisma imports prisma and lib only", () => {
    expect(breaches(under("prisma"), (target) => /^(prisma|lib)\//.test(target))).toEqual([]);
  });

  test("seed calls the use cases of app and nothing else of it", () => {
    const allowed = /^(seed|prisma|lib|app\/_server\/(use-cases|generation))\//;
    expect(breaches(under("seed"), (target) => allowed.test(target))).toEqual([]);
  });
});

describe("lib", () => {
  test("a part imports only the parts listed for it, through their index", () => {
    const isAllowed = (target: string, module: Module) => {
      if (partOf(target) === partOf(module.path)) return true;
      return (
        (ALLOWED_PARTS[partOf(module.path)] ?? []).includes(partOf(target)) && /^lib\/\w+\/index\.ts$/.test(target)
      );
    };
    expect(breaches(under("lib"), isAllowed)).toEqual([]);
  });

  test("every part is listed", () => {
    expect([...new Set(under("lib").map(({ path }) => partOf(path)))].filter((part) => !ALLOWED_PARTS[part])).toEqual(
      [],
    );
  });

  test("the listed parts have no circle", () => {
    const leadsTo = (part: string): string[] => ALLOWED_PARTS[part].flatMap((next) => [next, ...leadsTo(next)]);
    for (const part of Object.keys(ALLOWED_PARTS)) expect(leadsTo(part)).not.toContain(part);
  });

  test("uses zod, seedrandom in random, papaparse in classes and printing, and no other package", () => {
    const isAllowed = (name: string, module: Module) => {
      const parts = LIB_PACKAGES[name] ?? [];
      return parts.includes("*") || parts.includes(partOf(module.path));
    };
    expect(foreignPackages(under("lib"), isAllowed)).toEqual([]);
  });
});

describe("packages with a place of their own", () => {
  test("the Prisma client is for prisma alone", () => {
    const isPrisma = (name: string) => /^@prisma\//.test(name) || name === "libsql";
    const users = all.filter(({ packages }) => packages.some(isPrisma)).map(({ path }) => path);
    expect(users.filter((path) => !path.startsWith("prisma/"))).toEqual([]);
  });

  test("next/* is for pages, layouts, routes, actions and the session; components link and navigate", () => {
    const isNext = (name: string) => name === "next" || name.startsWith("next/");
    const isFrame = /\/(page|layout|route|actions|not-found|error|loading)\.tsx?$|^app\/_server\/session\.ts$/;
    const forComponents = new Set(["next/link", "next/navigation", "next/dynamic"]);
    const isAllowed = (name: string, { path }: Module) =>
      !isNext(name) || isFrame.test(path) || (path.endsWith(".tsx") && forComponents.has(name));
    expect(foreignPackages(under("app"), isAllowed)).toEqual([]);
  });

  test("use cases know nothing of next and react", () => {
    const isFree = (name: string) => !/^(next|react)(\/|$)/.test(name);
    expect(foreignPackages(under("app/_server/use-cases"), isFree)).toEqual([]);
  });

  test("Konva is for the bench alone", () => {
    const users = all.filter(({ packages }) => packages.some((name) => /^(react-)?konva(\/|$)/.test(name)));
    expect(users.map(({ path }) => path).filter((path) => !path.startsWith("app/_bench/"))).toEqual([]);
  });
});

describe("the answer rule", () => {
  const knowsAnswers = (path: string) => ANSWER_PARTS.some((part) => path.startsWith(part));
  // what a browser imports of a file of server actions is a name to call, and none of its code
  const isServerAction = ({ directive }: Module) => directive === "use server";
  const clientModules = all.filter(({ path, directive }) => directive === "use client" || /\.worker\.ts$/.test(path));

  test("there are files for the browser to check", () => {
    expect(clientModules.length).toBeGreaterThan(10);
  });

  test("no file for the browser reaches an answer, not even a type, not even through another module", () => {
    const leaks = clientModules.flatMap(({ path }) =>
      [...reachedFrom(path, modules, isServerAction)]
        .filter(([target]) => knowsAnswers(target))
        .slice(0, 1)
        .map(([, route]) => route.join(" -> ")),
    );
    expect(leaks).toEqual([]);
  });

  test("no file for the browser reaches the database", () => {
    const leaks = clientModules.flatMap(({ path }) =>
      [...reachedFrom(path, modules, isServerAction)]
        .filter(([target]) => target.startsWith("prisma/"))
        .slice(0, 1)
        .map(([, route]) => route.join(" -> ")),
    );
    expect(leaks).toEqual([]);
  });

  test("gauges, drills, report, bench, criteria, sittings, printing and what is seen of eye drills do not know the answers", () => {
    const blind = ["gauges", "drills", "eye", "report", "bench", "criteria", "sittings", "surface", "printing"].flatMap(
      (part) => under(`lib/${part}`),
    );
    const leaks = blind.flatMap(({ path }) =>
      [...reachedFrom(path, modules)].filter(([target]) => knowsAnswers(target)),
    );
    expect(leaks.map(([, route]) => route.join(" -> "))).toEqual([]);
  });

  test("the page of the bench reads a practice without its truth", () => {
    const direct = modules.get("app/(bench)/practice/[id]/page.tsx")?.modules ?? [];
    expect(direct.length).toBeGreaterThan(0);
    expect(direct.filter((path) => /mark-sheet|hand-in|stores/.test(path) || knowsAnswers(path))).toEqual([]);
  });
});
