import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type KnownAccount, type PlannedRow, planList, readList } from "@/lib/classes";
import { signInNameSchema } from "@/lib/workshop";

const ACCOUNTS: readonly KnownAccount[] = [
  { id: "1", name: "Noor Beck", signInName: "noor", standing: "learner" },
  { id: "2", name: "Ada Brandt", signInName: "ada", standing: "member" },
  { id: "3", name: "Maren Okafor", signInName: "maren", standing: "somebody-else" },
  { id: "4", name: "Kim Park", signInName: "kim.park", standing: "learner" },
  { id: "5", name: "Kim Park", signInName: "kim2", standing: "member" },
  { id: "6", name: "Søren Åberg", signInName: "soeren", standing: "learner" },
];
const plan = (text: string) => planList(readList(text), ACCOUNTS);
const short = (row: PlannedRow) =>
  row.outcome === "invalid" ? `${row.outcome} ${row.field}: ${row.problem}` : `${row.outcome} ${row.signInName}`;

describe("the sign-in name proposed for a name", () => {
  // transliterations of ICAO Doc 9303 part 3, section 6 (from memory); accents fall away
  test.each([
    ["Jörg Müller-Lüdenscheidt", "joerg.luedenscheidt"],
    ["Weiß", "weiss"],
    ["Ærøskøbing Þór", "aeroeskoebing.thor"],
    ["Łukasz Żółć", "lukasz.zolc"],
    ["Çağla Şimşek", "cagla.simsek"],
    ["Tomás Núñez de la Cruz", "tomas.cruz"],
    ["Ilıç Đorđe", "ilic.dorde"],
    ["Niamh O'Brien", "niamh.obrien"],
    ["Beck, Noor", "beck.noor"],
    ["J. R. R. Ó", "j.o"],
    ["Al", "learner.al"],
    ["李小龍", "learner"],
    ["Мария", "learner"],
    ["X Æ A-12", "x.12"],
    ["Wolfgang Amadeus Theophilus Bartholomaeus", "wolfgang.bartholomaeus"],
    ["Maximilianiusbartholomaeus Hohensteinbrueck", "maximilianiusbartholomaeus"],
  ])("%s is %s", (name, signInName) => {
    expect(planList(readList(`"${name}"`), [])).toMatchObject([{ outcome: "new", signInName }]);
  });

  test("gets a number where it is taken, by an account or further up or down the list", () => {
    const rows = planList(readList("Noor Beck\nNoor A. Beck\nSomebody;noor.beck2\nAda Ray"), [
      { id: "1", name: "Another", signInName: "noor.beck", standing: "somebody-else" },
    ]);
    expect(rows.map(short)).toEqual(["new noor.beck3", "new noor.beck4", "new noor.beck2", "new ada.ray"]);
  });

  test("can always be used, and never twice", () => {
    const names = fc.array(fc.string({ minLength: 1, maxLength: 60, unit: "grapheme" }), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(names, (list) => {
        const rows = list.map((name, index) => ({ row: index + 1, name: name.trim(), signInName: "", problem: null }));
        const made = planList(rows, ACCOUNTS).filter(({ outcome }) => outcome === "new");
        for (const { signInName } of made) expect(signInNameSchema.safeParse(signInName).data).toBe(signInName);
        expect(new Set(made.map(({ signInName }) => signInName)).size).toBe(made.length);
        for (const { signInName } of made) expect(ACCOUNTS.map((one) => one.signInName)).not.toContain(signInName);
      }),
    );
  });
});

test.each([
  ["somebody new", "Tomo Reyes", "new tomo.reyes"],
  ["somebody new with a sign-in name", "Tomo Reyes;Tomo", "new tomo"],
  ["a learner by the name alone", "noor  beck", "added noor"],
  ["a learner by name and sign-in name", "Noor Beck;NOOR", "added noor"],
  ["a learner whose name is written without its accents", "Soeren Aaberg", "added soeren"],
  ["a member", "Ada Brandt", "member ada"],
  [
    "a sign-in name of another learner",
    "Norma Beckett;noor",
    "invalid signInName: Taken by somebody else. Choose another one.",
  ],
  [
    "a sign-in name of somebody else",
    "Maren Okafor;maren",
    "invalid signInName: Taken by somebody else. Choose another one.",
  ],
  ["a name of somebody else", "Maren Okafor", "new maren.okafor"],
  [
    "a name of two learners",
    "Kim Park",
    "invalid signInName: Several learners have this name. Write the sign-in name of the one you mean.",
  ],
  ["one of two learners of a name", "Kim Park;kim.park", "added kim.park"],
  ["no name", ";tomo", "invalid name: Write a name."],
  ["a name that is too long", "x".repeat(61), "invalid name: Keep the name under 60 characters."],
  [
    "a sign-in name that cannot be typed",
    "Tomo;to mo",
    "invalid signInName: Use 3 to 30 letters from a to z, digits, dots, hyphens or underscores.",
  ],
])("%s", (_what, text, outcome) => {
  expect(plan(text).map(short)).toEqual([outcome]);
});

test.each([
  [
    "Tomo Reyes\nTomo  reyes",
    ["new tomo.reyes", "invalid name: The same name as in row 1. If they are two people, give each a sign-in name."],
  ],
  ["Tomo Reyes;tomo\nTomas Reyes;TOMO", ["new tomo", "invalid signInName: The same sign-in name as in row 1."]],
  ["Noor Beck\nNoor Beck;noor", ["added noor", "invalid name: The same person as in row 1."]],
  ["Tomo Reyes;tomo\nTomo Reyes;tomo2", ["new tomo", "new tomo2"]],
])("two rows: %j", (text, outcomes) => {
  expect(plan(text).map(short)).toEqual(outcomes);
});
