import { gunzipSync } from "node:zlib";
import { expect, type Page, test } from "@playwright/test";
import Database from "libsql";
import { OTHER_LEARNER } from "./support/people";
import { send, takeFilletWith, takeFreshPlate } from "./support/practice";
import { readQuestions } from "./support/questions";
import { readClutter } from "./support/truth";

test.use(OTHER_LEARNER);
test.setTimeout(240_000);

const PAGES = ["/", "/history", "/rule", "/account", "/desk", "/setup", "/join"];
/** A fillet with secrets of every sort: something harmless lies on each, but not on each of them clutter. */
const takeTemptingFillet = (page: Page): Promise<string> =>
  takeFilletWith(page, "no clutter on it", (id) => readClutter(id).length > 0);
const PIECES = [
  { piece: "a plate", take: takeFreshPlate, routes: ["progress", "surface/cap", "surface/root"] },
  { piece: "a fillet weld", take: takeTemptingFillet, routes: ["progress", "surface/fillet", "ends"] },
];

interface Secret {
  readonly what: string;
  readonly text: string;
}

for (const { piece, take, routes } of PIECES) {
  test(`nothing that a learner can reach tells what there is to find on ${piece} while the practice is open`, async ({
    page,
  }) => {
    await inspectTheWire(page, take, routes);
  });
}

test("questions come over the wire once the report is closed, and what answers them never before handing in", async ({
  page,
}) => {
  const wire = listen(page);
  const id = await takeTemptingFillet(page);
  for (const path of [`/practice/${id}`, "/"]) await page.goto(path);
  await readAsPageParts(page, id);
  const before = await wire.contents();

  const closed = await send(page, "POST", `/api/practice/${id}/close-report`);
  expect(closed).toMatchObject({ status: 200, body: { ok: true } });
  const questions = readQuestions(id);
  const given = (text: string) => questions.filter(({ stem }) => unescaped(text).includes(stem)).length;
  expect(before.filter(({ text }) => given(text) > 0 || text.includes('"options"'))).toEqual([]);

  // again, wherever they can come from
  const report = { version: 1, calls: [], answers: { q1: 0 } };
  const saved = await send(page, "PUT", `/api/practice/${id}/report`, { sequence: 1, report });
  expect(saved.status).toBe(200);
  await send(page, "PUT", `/api/practice/${id}/report`, { sequence: 1, report: { version: 1, calls: [] } });
  for (const path of [`/practice/${id}`, `/practice/${id}/marks`, "/history", "/"]) await page.goto(path);
  await readAsPageParts(page, id);
  const after = await wire.contents();
  expect(after.some(({ text }) => given(text) === questions.length)).toBe(true);

  const secrets = [
    ...readSecrets(id),
    ...questions.flatMap(({ id: question, kind, explanation }) => [
      { what: `kind of ${question}`, text: `"${kind}"` },
      // what is right and why, and the error behind every other option
      ...explanation
        .split(". ")
        .filter((sentence) => sentence.includes(": "))
        .map((sentence) => ({ what: `reason of ${question}`, text: sentence })),
    ]),
    ...['"key":', '"explanation":', '"place":{', '"source":"piece"'].map((text) => ({ what: text, text })),
  ];
  // the page's own code may speak of keys
  const told = after.filter(({ url }) => !/\.(js|css)\b/.test(url));
  expect(told.length).toBeGreaterThan(10);
  const leaks = told.flatMap(({ url, text }) =>
    secrets.filter((secret) => unescaped(text).includes(secret.text)).map(({ what }) => `${what} in ${url}`),
  );
  expect(leaks).toEqual([]);
});

/** As it is written, whether it came as JSON, inside a script of a page, or as its text. */
const unescaped = (text: string): string =>
  Buffer.from(text, "latin1")
    .toString("utf8")
    .replaceAll('\\"', '"')
    .replaceAll("&#x27;", "'")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");

async function inspectTheWire(page: Page, take: (page: Page) => Promise<string>, routes: readonly string[]) {
  const wire = listen(page);
  const id = await take(page);
  for (const path of [...PAGES, `/practice/${id}`, `/practice/${id}/marks`]) await page.goto(path);
  await page.goto("/");
  for (const route of routes) {
    const response = await page.request.get(`/api/practice/${id}/${route}`);
    wire.add(response.url(), await response.body());
  }
  await readAsPageParts(page, id);

  const secrets = readSecrets(id);
  expect(secrets.length, "the piece has something to find").toBeGreaterThan(10);
  const contents = await wire.contents();
  expect(contents.length).toBeGreaterThan(20);
  const leaks = contents.flatMap(({ url, text }) =>
    secrets.filter((secret) => text.includes(secret.text)).map(({ what }) => `${what} in ${url}`),
  );
  expect(leaks).toEqual([]);
}

/** Everything that a page receives from now on. */
function listen(page: Page) {
  const received: { readonly url: string; readonly bytes: Buffer }[] = [];
  const reading: Promise<void>[] = [];
  page.on("response", (response) => {
    const read = response.body().then(
      (bytes) => void received.push({ url: response.url(), bytes }),
      // redirects and aborted requests have no body
      () => undefined,
    );
    reading.push(read);
  });
  return {
    add: (url: string, bytes: Buffer) => void received.push({ url, bytes }),
    /** What has come so far, byte for byte, unzipped. */
    contents: async () => {
      await Promise.all(reading);
      return received.map(({ url, bytes }) => ({ url, text: unzip(bytes).toString("latin1") }));
    },
  };
}

/** The parts of pages that Next sends to its own router, which are not the pages themselves. */
async function readAsPageParts(page: Page, id: string): Promise<void> {
  await page.evaluate(
    (paths) => Promise.all(paths.map((path) => fetch(path, { headers: { RSC: "1" } }).then((part) => part.text()))),
    [...PAGES, `/practice/${id}`, `/practice/${id}/marks`],
  );
}

/** Seeds and the numbers of the truth, straight from the server's database. */
function readSecrets(id: string): Secret[] {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database
    .prepare("SELECT seed, truth FROM Specimen WHERE id = (SELECT specimenId FROM Practice WHERE id = ?)")
    .get(id) as { seed: string; truth: string };
  const seeds = database.prepare("SELECT seed FROM Specimen").all() as { seed: string }[];
  database.close();
  const truth = JSON.parse(row.truth);
  const { items, clutter, dimensions } = truth as Record<"items" | "clutter" | "dimensions", Record<string, unknown>[]>;
  expect(dimensions.length, "dimensions are asked for").toBeGreaterThan(0);
  expect(clutter.length, "something tempts to a false call").toBeGreaterThan(0);
  const places = [...items, ...clutter].flatMap((item) => [
    ...["start", "end", "across"].map((key) => ({ what: `${item.id} ${key}`, text: `"${key}":${item[key]}` })),
    { what: `${item.id} outline`, text: JSON.stringify(item.outline).slice(0, 60) },
    { what: `${item.id} itself`, text: `"${item.id}"` },
  ]);
  const worst = items.map((item) => ({ what: `${item.id} worst`, text: `"worst":${JSON.stringify(item.worst)}` }));
  const kinds = clutter.map((item) => ({ what: `kind of ${item.id}`, text: `"kind":"${item.kind}"` }));
  // at a station there is one value and nothing along the weld, and of thickness one for the whole plate: how far both faces lie
  // apart is packed with them, as the heights are, since a caliper meets it; what was measured there is not
  const measured = dimensions.flatMap(({ dimension, station, value, along }) =>
    along
      ? [{ what: `${dimension} along the weld`, text: JSON.stringify(along).slice(0, 60) }]
      : [{ what: `${dimension} at ${station}`, text: `"station":${station},"value":${value}` }],
  );
  const ofFillet = truth.gap
    ? [
        { what: "the gap", text: JSON.stringify(truth.gap) },
        { what: "statements", text: JSON.stringify(truth.statements).slice(0, 60) },
      ]
    : [];
  return [
    ...ofFillet,
    ...measured,
    ...seeds.map(({ seed }) => ({ what: "a seed", text: seed })),
    ...places,
    ...worst,
    ...kinds,
  ];
}

function unzip(bytes: Buffer): Buffer {
  return bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes;
}
