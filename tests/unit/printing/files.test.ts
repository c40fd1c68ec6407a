import Papa from "papaparse";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { DimensionTable } from "@/app/_marks/dimension-table";
import { marks } from "@/app/_marks/line-words";
import { PartTable } from "@/app/_marks/part-table";
import { FILE_KINDS, type FileKind, openFile, type PrintedSheet } from "@/lib/printing";
import { shownMark } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { FILLET, PLATE, SHEET } from "./sheet";

type Row = Readonly<Record<string, string>>;

function textOf(kind: FileKind, sheets: readonly PrintedSheet[] = [SHEET]): string {
  const file = openFile(kind);
  for (const sheet of sheets) file.add(sheet);
  return file.text();
}

/** As any program reads it: the byte order mark is no part of the first header. */
function rowsOf(kind: FileKind, sheets: readonly PrintedSheet[] = [SHEET]): readonly Row[] {
  const { data, errors } = Papa.parse<Row>(textOf(kind, sheets).slice(1), { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

const EXACT = "Earned, thousandths of a mark";
const textIn = (markup: string) => markup.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");

describe("a file", () => {
  // RFC 4180 (lines end with CR LF, quotation marks are doubled) and RFC 3629 (EF BB BF at the beginning)
  it("is UTF-8 with its mark, commas, and lines that end with CR LF", () => {
    const bytes = new TextEncoder().encode(textOf("sections"));
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    const text = textOf("sections");
    expect(text.split("\r\n")).toHaveLength(SHEET.sections.length + 2);
    expect(text).toContain(',"Ása Łuk, called ""Ö""",'.slice(1));
  });

  it.each(FILE_KINDS)("of %s has its header even where there are no rows, and as many cells in each row", (kind) => {
    const [header, ...rest] = Papa.parse<string[]>(textOf(kind, []).slice(1), { skipEmptyLines: true }).data;
    expect(rest).toEqual([]);
    expect(new Set(header).size).toBe(header.length);
    const all = Papa.parse<string[]>(textOf(kind).slice(1), { skipEmptyLines: true }).data;
    expect(all.length).toBeGreaterThan(1);
    for (const row of all) expect(row).toHaveLength(header.length);
  });

  it.each(["=1+1", "+1", "-1+2", "@SUM(A1)", "  =1+1", "\t=1", "＝1+1", '=HYPERLINK("http://x.test","y")'])(
    "shows a name such as %j and does not let a spreadsheet work it out",
    (name) => {
      const [row] = rowsOf("sections", [{ ...SHEET, learner: { name, signInName: "asa" } }]);
      expect(row.Learner).toBe(`'${name}`);
    },
  );

  it("leaves names with such signs inside, and negative numbers, as they are", () => {
    const [row] = rowsOf("sections", [{ ...SHEET, learner: { name: "Ana-Lea = X", signInName: "asa" } }]);
    expect(row.Learner).toBe("Ana-Lea = X");
    const stray = rowsOf("indications").find((line) => line["What became of it"] === "nothing there")!;
    expect(Number(stray[EXACT])).toBeLessThan(0);
    expect(stray["Across, written, mm"]).toBe("-7");
  });

  it("gives times in ISO 8601 and yes or no", () => {
    const [plate] = rowsOf("sections");
    expect(plate["Handed in, UTC"]).toBe("2026-03-02T09:41:07.250Z");
    expect(plate.Passed).toBe(PLATE.passed ? "yes" : "no");
  });
});

describe("the figures", () => {
  it("of all lines of all files add up to the marks of the sections", () => {
    const lines = FILE_KINDS.filter((kind) => kind !== "sections").flatMap((kind) => rowsOf(kind));
    for (const row of rowsOf("sections")) {
      const own = lines.filter(({ Section }) => Section === row.Section);
      const sum = own.reduce((total, line) => total + Number(line[EXACT]), 0);
      expect(sum).toBe(Number(row["Mark, thousandths of a mark"]));
      expect(Number(row["Mark, of 100"])).toBe(shownMark(sum));
    }
  });

  it("of all lines add up to the reviewed mark where tutors changed some, with who and why", () => {
    const miss = PLATE.indications.lines.findIndex(({ kind }) => kind === "missed");
    const stray = PLATE.indications.lines.findIndex(({ kind }) => kind === "false-call");
    const said = { at: new Date("2026-03-03T08:00:00.000Z"), by: { id: "t", name: "T. Utor" }, reason: "seen by lens" };
    const given = (id: number, at: number, worth: number) =>
      ({ ...said, id, what: { kind: "overrule", base: null, line: `indications ${at}`, marks: worth } }) as const;
    const acts = [given(1, miss, PLATE.indications.lines[miss].worth), given(2, stray, 0)];
    const sheet = { ...SHEET, reviews: [reviewed(PLATE, acts), reviewed(FILLET, [])] };
    const [plate] = rowsOf("sections", [sheet]);
    const lines = FILE_KINDS.filter((kind) => kind !== "sections").flatMap((kind) => rowsOf(kind, [sheet]));
    const sum = lines
      .filter(({ Section }) => Section === "butt plate")
      .reduce((total, line) => total + Number(line["Reviewed, thousandths of a mark"]), 0);
    expect(String(sum)).toBe(plate["Reviewed mark, thousandths of a mark"]);
    expect(sum).toBeGreaterThan(PLATE.mark);
    expect(plate["Mark, thousandths of a mark"]).toBe(String(PLATE.mark));
    expect(lines.filter((line) => line["Why it was changed"] === "seen by lens")).toMatchObject([
      { "What became of it": "nothing there", "Reviewed, thousandths of a mark": "0" },
      { "What became of it": "missed", "Changed by": "T. Utor", "Changed, UTC": "2026-03-03T08:00:00.000Z" },
    ]);
  });

  it("of a section are those of its result", () => {
    const [plate] = rowsOf("sections");
    expect(plate).toMatchObject({
      "Mark, of 100": String(PLATE.shown),
      "Indications there": "4",
      Missed: "1",
      "False calls": "1",
      "Calls not counted": "1",
      "Questions, worth, marks": "",
    });
    expect(plate["Sentences, earned, marks"]).toBe(String(Number(marks(PLATE.sentences!.earned))));
  });

  it("of every indication are those that the mark sheet shows", () => {
    const rows = rowsOf("indications").filter(({ Section }) => Section === "butt plate");
    expect(rows).toHaveLength(PLATE.indications.lines.length);
    for (const [n, line] of PLATE.indications.lines.entries()) {
      const shown = textIn(renderToStaticMarkup(createElement(PartTable, { line })));
      const row = rows[n];
      expect(shown).toContain(`This line ${Number(row["Earned, marks"]).toFixed(2)} `);
      for (const [part, name] of [
        ["start", "From"],
        ["end", "To"],
        ["size", "Size"],
      ] as const) {
        const marked = line.parts.find((one) => one.part === part);
        if (typeof marked?.written !== "number" || marked.error === null) continue;
        const [written, actual, off] = ["written", "true", "off by"].map((what) => row[`${name}, ${what}, mm`]);
        expect(shown).toMatch(new RegExp(`${name} ${written}(\\.0)? mm ${actual}(\\.0)? mm ${off}(\\.0)? mm`));
      }
    }
  });

  it("of every dimension and statement are those that the mark sheet shows", () => {
    const lines = FILLET.dimensions!;
    const shown = textIn(renderToStaticMarkup(createElement(DimensionTable, lines)));
    const [throat] = rowsOf("dimensions").filter(({ Section }) => Section === "fillet weld");
    expect(throat).toMatchObject({ Station: "2", Written: "4.4", True: "4.9", "Off by": "0.5", Unit: "mm" });
    expect(shown).toContain(
      `Throat, station 2 4.4 mm 4.9 mm at 103 mm 0.5 mm full to 0.5 mm ${Number(throat["Earned, marks"]).toFixed(2)} of ${Number(throat["Worth, marks"]).toFixed(2)}`,
    );
    const [profile] = rowsOf("statements");
    expect(profile).toMatchObject({ Written: "concave", Right: "mitre or convex", "Earned, marks": "0" });
  });

  it("of split calls name all of them, and blanks stay empty", () => {
    const rows = rowsOf("indications");
    expect(rows.find((row) => row["What became of it"] === "found in pieces")?.["No. in the report"]).toBe("3 and 4");
    const missed = rows.find((row) => row["What became of it"] === "missed")!;
    expect([missed["From, written, mm"], missed["From, true, mm"], missed["No. in the report"]]).toEqual([
      "",
      "50",
      "",
    ]);
  });

  it("of questions say what was chosen and what is right by their letters", () => {
    expect(rowsOf("questions").map(({ Chosen, Right }) => [Chosen, Right])).toEqual([
      ["C", "C"],
      ["", "C"],
    ]);
  });

  it("of several pieces stand one after the other", () => {
    const twice = rowsOf("sentences", [SHEET, { ...SHEET, practiceId: "piece-2" }]);
    expect(new Set(twice.map(({ Piece }) => Piece))).toEqual(new Set(["piece-1", "piece-2"]));
    expect(twice).toHaveLength(2 * (PLATE.sentences!.lines.length + 1));
  });
});
