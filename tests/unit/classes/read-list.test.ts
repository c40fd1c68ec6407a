import { describe, expect, test } from "vitest";
import { decodeList, readList } from "@/lib/classes";

const pairs = (text: string) => readList(text).map(({ name, signInName }) => [name, signInName]);
const NOOR_AND_ADA = [
  ["Noor Beck", "noor"],
  ["Ada Brandt", ""],
];

// the grammar of comma-separated values is that of RFC 4180; what office programs make of it is common practice, no source
describe("a list", () => {
  test.each([
    [
      "names alone",
      "Noor Beck\nAda Brandt",
      [
        ["Noor Beck", ""],
        ["Ada Brandt", ""],
      ],
    ],
    ["semicolons", "Noor Beck;noor\nAda Brandt", NOOR_AND_ADA],
    ["commas", "Noor Beck,noor\nAda Brandt,", NOOR_AND_ADA],
    ["tabs, as pasted from a table", "Noor Beck\tnoor\nAda Brandt\t", NOOR_AND_ADA],
    ["line ends of Windows", "Noor Beck;noor\r\nAda Brandt\r\n", NOOR_AND_ADA],
    ["line ends of old", "Noor Beck;noor\rAda Brandt", NOOR_AND_ADA],
    ["a byte order mark", "\uFEFFNoor Beck;noor\nAda Brandt;", NOOR_AND_ADA],
    ["a byte order mark before a header", "\uFEFFName;Sign-in name\nNoor Beck;noor\nAda Brandt;", NOOR_AND_ADA],
    ["a line that names the delimiter", "sep=;\r\nNoor Beck;noor\r\nAda Brandt;", NOOR_AND_ADA],
    ["a header in capitals", "NAME,USERNAME\nNoor Beck,noor\nAda Brandt,", NOOR_AND_ADA],
    ["columns the other way round", "sign-in name;name\nnoor;Noor Beck\n;Ada Brandt", NOOR_AND_ADA],
    ["further columns under a header", "Nr;Name;Room;Sign-in name\n1;Noor Beck;2;noor\n2;Ada Brandt;2;", NOOR_AND_ADA],
    [
      "a header with names alone",
      "Learner\nNoor Beck\nAda Brandt",
      [
        ["Noor Beck", ""],
        ["Ada Brandt", ""],
      ],
    ],
    ["quotation marks", '"Noor Beck";"noor"\n"Ada Brandt";""', NOOR_AND_ADA],
    [
      "a comma within quotation marks",
      '"Beck, Noor";noor\nAda Brandt',
      [
        ["Beck, Noor", "noor"],
        ["Ada Brandt", ""],
      ],
    ],
    ["a semicolon within quotation marks", '"Beck; Noor",noor', [["Beck; Noor", "noor"]]],
    ["doubled quotation marks", '"Noor ""Bee"" Beck",noor', [['Noor "Bee" Beck', "noor"]]],
    ["a line break within quotation marks", '"Noor\nBeck",noor', [["Noor Beck", "noor"]]],
    ["empty lines and lines of delimiters", "\n\nNoor Beck;noor\n;\n  \nAda Brandt\n\n", NOOR_AND_ADA],
    ["spaces around, hard spaces and doubled ones", "  Noor\u00A0 Beck ; noor \nAda Brandt", NOOR_AND_ADA],
    ["signs that are not seen", "\u200ENoor Beck\u200B;noor\nAda Brandt", NOOR_AND_ADA],
    ["a trailing delimiter", "Noor Beck;noor;\nAda Brandt;;", NOOR_AND_ADA],
    ["a stray tab among semicolons", "Noor Beck\t;noor\nAda Brandt;", NOOR_AND_ADA],
    ["a name with a comma beside a semicolon", "Beck, Noor;noor", [["Beck, Noor", "noor"]]],
    ["nothing", "", []],
    ["nothing but blanks", " \n\t\n;;\n", []],
    ["a header alone", "Name;Sign-in name\n", []],
  ])("with %s", (_what, text, rows) => {
    expect(pairs(text)).toEqual(rows);
    expect(readList(text).every(({ problem }) => problem === null)).toBe(true);
  });

  test("counts rows over what holds something, a header included", () => {
    expect(readList("Name\n\nNoor Beck\n\nAda Brandt").map(({ row }) => row)).toEqual([2, 3]);
  });

  test("says which row has too many columns, and which quotation marks do not close", () => {
    expect(readList("Noor;Beck;noor\nAda Brandt")).toMatchObject([
      { row: 1, problem: expect.stringMatching(/3 columns/) },
      { row: 2, problem: null },
    ]);
    const broken = readList('Ada Brandt;ada\n"Noor Beck;noor\nTomo Reyes;tomo');
    expect(broken[0]).toMatchObject({ name: "Ada Brandt", problem: null });
    expect(broken[1]).toMatchObject({ row: 2, problem: expect.stringMatching(/quotation marks/) });
    expect(broken).toHaveLength(2);
  });
});

// the bytes of "Jörg" in each encoding, from the Unicode Standard and the WHATWG table of windows-1252 (from memory)
test.each([
  ["UTF-8", [0x4a, 0xc3, 0xb6, 0x72, 0x67]],
  ["UTF-8 with a byte order mark", [0xef, 0xbb, 0xbf, 0x4a, 0xc3, 0xb6, 0x72, 0x67]],
  ["UTF-16, little end first", [0xff, 0xfe, 0x4a, 0, 0xf6, 0, 0x72, 0, 0x67, 0]],
  ["UTF-16, big end first", [0xfe, 0xff, 0, 0x4a, 0, 0xf6, 0, 0x72, 0, 0x67]],
  ["windows-1252", [0x4a, 0xf6, 0x72, 0x67]],
])("a file in %s", (_name, bytes) => {
  expect(pairs(decodeList(new Uint8Array(bytes)))).toEqual([["Jörg", ""]]);
});
