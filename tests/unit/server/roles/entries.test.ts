import { expect, test, vi } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { sentenceFor } from "@/app/_server/messages";
import { REFUSAL_CODES, type Refusal } from "@/app/_server/refusal";
import { type Answers, expectedOf, inTurn, isOfPermission } from "./answers";
import { ACTIONS, ASKED_BESIDES, PAGES, ROUTES, WITHIN } from "./entries";
import { type School, schoolForEachTest } from "./school";
import { INNER, USE_CASES } from "./use-cases";

/** Who the session says asks, in place of a cookie. */
const session = vi.hoisted(() => ({ caller: null as Caller | null }));
/** What a page shows in place of itself. */
class Shown extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}
vi.mock("@/app/_server/session", () => {
  const caller = () => session.caller as Caller;
  return {
    currentActor: async () => caller().actor,
    currentCaller: async () => caller(),
    showRefusal: async ({ code }: Refusal) => {
      throw new Shown(code);
    },
    goHome: async () => {
      throw new Shown("home");
    },
    askAuth: async () => ({ status: 400 }),
  };
});
vi.mock("@/app/_server/generation", async () => {
  const { testSource } = await import("../workshop");
  return { specimens: testSource("of-an-entry") };
});
// what goes on in the background asks no permission and would outlive the test
vi.mock("@/app/_server/next/keep-next-ready", () => ({
  keepFirstReady: () => undefined,
  keepNextReady: () => undefined,
}));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("next/server", () => ({ connection: async () => undefined }));

const school = schoolForEachTest();

type Load = () => Promise<unknown>;
const routes = import.meta.glob("/app/**/route.ts");
const pages = import.meta.glob("/app/**/page.tsx");
const actions = import.meta.glob("/app/**/actions.ts");
const useCases = import.meta.glob("/app/_server/use-cases/*.ts");

const functionsOf = async (load: Load): Promise<Record<string, (...given: never[]) => unknown>> =>
  Object.fromEntries(Object.entries((await load()) as object).filter(([, value]) => typeof value === "function"));

function answersOf(as: string | Answers): { answers: Answers; newt?: string } {
  if (typeof as !== "string") return { answers: as };
  const row = USE_CASES.find(([name]) => name === as);
  if (!row) throw new Error(`no use case has a row called ${as}`);
  return { answers: row[1], newt: row[3] };
}

/** Asks as everybody in turn: what each is answered, and that nothing was written for whoever is refused. */
async function askAll({ people, writes }: School, as: string | Answers, ask: () => Promise<string>, newt?: string) {
  const row = answersOf(as);
  const expected = expectedOf(row.answers, newt ?? row.newt);
  const answered: Record<string, string> = {};
  for (const who of inTurn(expected)) {
    session.caller = people[who];
    const before = writes();
    const code = await ask();
    answered[who] = isOfPermission(code) ? code : "yes";
    if (isOfPermission(code)) expect(writes(), `a refusal of ${who} changes nothing`).toEqual(before);
  }
  expect(answered).toEqual(expected);
}

/** What was thrown in place of an answer: a refusal that is shown; where somebody is led to is no refusal. */
function codeThrown(error: unknown): string {
  if (error instanceof Shown) return error.code;
  if (error instanceof Error && "digest" in error && /^NEXT_(REDIRECT|HTTP_ERROR)/.test(String(error.digest)))
    return "led";
  throw error;
}

test.each(ROUTES)("$method $at as $as", async ({ at, method, params, query = "", body, as }) => {
  const here = school();
  const handle = (await functionsOf(routes[`/app/${at}/route.ts`]))[method];
  await askAll(here, as, async () => {
    const request = new Request(`http://localhost:3000/${at}${query}`, {
      method,
      headers: { origin: "http://localhost:3000", host: "localhost:3000", "content-type": "application/json" },
      ...(body && { body: JSON.stringify(body(here.names)) }),
    });
    const context = { params: Promise.resolve(params?.(here.names) ?? {}) };
    const response = (await handle(...([request, context] as never[]))) as Response;
    if (response.ok || !response.headers.get("content-type")?.includes("json")) {
      await response.body?.cancel();
      return "";
    }
    return String(Reflect.get(await response.json(), "code"));
  });
});

test.each(PAGES)("page $at as $as", async ({ at, params, search = {}, as, newt }) => {
  const here = school();
  const { default: page } = await functionsOf(pages[`/app/${at}/page.tsx`]);
  const ask = async () => {
    const props = { params: Promise.resolve(params?.(here.names) ?? {}), searchParams: Promise.resolve(search) };
    await page(...([props] as never[]));
    return "";
  };
  await askAll(here, as, () => ask().catch(codeThrown), newt);
});

test.each(ACTIONS)("action $does of $at as $as", async ({ at, does, form, value, as, newt }) => {
  const here = school();
  const act = (await functionsOf(actions[`/app/${at}/actions.ts`]))[does];
  const ask = async () => {
    const data = new FormData();
    for (const [name, text] of Object.entries(form?.(here.names) ?? {})) data.set(name, text);
    const given = value ? value(here.names) : data;
    const told = JSON.stringify((await act(...((act.length > 1 ? [{}, given] : [given]) as never[]))) ?? null);
    return REFUSAL_CODES.find((code) => told.includes(JSON.stringify(sentenceFor(code)))) ?? "";
  };
  await askAll(here, as, () => ask().catch(codeThrown), newt);
});

test("every route, page, action and use case has a row", async () => {
  const atOf = (path: string, file: string) => path.slice("/app/".length, -`/${file}`.length);
  const missing: string[] = [];
  for (const [path, load] of Object.entries(routes)) {
    for (const method of Object.keys(await functionsOf(load))) {
      const at = atOf(path, "route.ts");
      if (!ROUTES.some((row) => row.at === at && row.method === method)) missing.push(`${method} ${at}`);
    }
  }
  for (const path of Object.keys(pages)) {
    const at = atOf(path, "page.tsx");
    if (!PAGES.some((row) => row.at === at)) missing.push(`page ${at}`);
  }
  for (const [path, load] of Object.entries(actions)) {
    for (const does of Object.keys(await functionsOf(load))) {
      const at = atOf(path, "actions.ts");
      if (!ACTIONS.some((row) => row.at === at && row.does === does)) missing.push(`action ${does} of ${at}`);
    }
  }
  const rowOf = new Set(USE_CASES.map(([name]) => name.split(" ")[0]));
  for (const load of Object.values(useCases)) {
    for (const name of Object.keys(await functionsOf(load))) {
      if (!rowOf.has(name) && !INNER.includes(name) && !NO_USE_CASES.includes(name)) missing.push(`use case ${name}`);
    }
  }
  expect(missing).toEqual([]);
});

/** Small functions that files of use cases share. */
const NO_USE_CASES: readonly string[] = ["madeAtOf", "keptVersion"];

test("every use case is reached from an entry that has a row, so that no act of a route is left out", () => {
  const asked = new Set([...ROUTES, ...PAGES, ...ACTIONS].map(({ as }) => String(as).split(" ")[0]));
  const names = new Set(USE_CASES.map(([name]) => name.split(" ")[0]));
  expect(
    [...names].filter((name) => !asked.has(name) && !ASKED_BESIDES.includes(name) && !WITHIN.includes(name)),
  ).toEqual([]);
});
