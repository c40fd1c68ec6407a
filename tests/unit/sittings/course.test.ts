import { describe, expect, test } from "vitest";
import {
  averagedMark,
  type CourseAttempt,
  type CourseRule,
  courseOf,
  courseRule,
  defaultPaper,
  isBorderline,
  nextFor,
  timeline,
} from "@/lib/sittings";

const RULE: CourseRule = { sections: ["plate", "fillet"], resits: 1 };
const SECTION_OF = { P: "plate", F: "fillet" } as const;

/**
 * A history in short, one attempt after the other, pass mark 70: section, mark, and "b" for a parallel piece, "?" where one
 * is still awaited, "v" for void; a "+" joins what is sat in one sitting: "P66.4+P75b F80v".
 */
function history(text: string): CourseAttempt[] {
  const sat = text.split(" ").flatMap((sitting, s) => sitting.split("+").map((word) => ({ word, sittingId: `s${s}` })));
  return sat.map(({ word, sittingId }, n) => {
    const [, letter, mark, flags] = /^([PF])([\d.]+)([bv?]*)$/.exec(word) ?? [];
    return {
      id: `a${String(n + 1).padStart(2, "0")}`,
      section: SECTION_OF[letter as "P" | "F"],
      sittingId,
      at: new Date(Date.UTC(2026, 2, 2 + n)),
      mark: Number(mark),
      passMark: 70,
      isVoid: flags.includes("v"),
      isBorderline: flags.includes("b"),
      awaitsPiece: flags.includes("?"),
    };
  });
}

/** What every attempt is: round, kind, what it repeats, outcome. */
const inShort = (text: string): string[] =>
  courseOf(history(text), RULE).attempts.map(({ attempt, round, kind, repeats, outcome }) =>
    [attempt.id, round, kind, ...(repeats ? [`of ${repeats}`] : []), outcome ?? "-"].join(" "),
  );

describe("histories in words", () => {
  test.each([
    {
      story: "nothing sat yet: both sections are due",
      text: "",
      is: [],
      round: 1,
      standings: ["due", "due"],
      words: "Sit the butt plate and the fillet weld.",
    },
    {
      story: "both passed at once: the course is passed",
      text: "P70 F91.5",
      is: ["a01 1 first passed", "a02 1 first passed"],
      round: 1,
      standings: ["passed", "passed"],
      words: "You have passed every section.",
    },
    {
      story: "69.9 is no pass, however well the other went: nothing is averaged over sections",
      text: "P69.9 F100",
      is: ["a01 1 first failed", "a02 1 first passed"],
      round: 1,
      standings: ["re-sit-due", "passed"],
      words: "Sit the butt plate again on a fresh piece. What you have passed stands: the fillet weld.",
    },
    {
      story: "the plate is failed and sat again alone; the fillet stands",
      text: "P55 F80 P72",
      is: ["a01 1 first failed", "a02 1 first passed", "a03 1 re-sit of a01 passed"],
      round: 1,
      standings: ["passed", "passed"],
      words: "You have passed every section.",
    },
    {
      story: "the re-sit is failed too: everything is due again, the fillet that was passed included",
      text: "P55 F80 P60",
      is: ["a01 1 first failed", "a02 1 first passed", "a03 1 re-sit of a01 failed"],
      round: 2,
      standings: ["due", "due"],
      words:
        "Round 2 begins: a re-sit was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    },
    {
      story: "in the second round the first plate is a first one again and repeats nothing",
      text: "P55 F80 P60 P50 F71",
      is: [
        "a01 1 first failed",
        "a02 1 first passed",
        "a03 1 re-sit of a01 failed",
        "a04 2 first failed",
        "a05 2 first passed",
      ],
      round: 2,
      standings: ["re-sit-due", "passed"],
      words: "Sit the butt plate again on a fresh piece. What you have passed stands: the fillet weld.",
    },
    {
      story: "each section has a re-sit of its own: both failed once is no new round",
      text: "P10 F10",
      is: ["a01 1 first failed", "a02 1 first failed"],
      round: 1,
      standings: ["re-sit-due", "re-sit-due"],
      words: "Sit the butt plate and the fillet weld again on a fresh piece.",
    },
    {
      story:
        "the plate goes to a new round before the fillet was ever sat; the fillet then counts for the second round",
      text: "P10 P20 F90",
      is: ["a01 1 first failed", "a02 1 re-sit of a01 failed", "a03 2 first passed"],
      round: 2,
      standings: ["due", "passed"],
      words: "Sit the butt plate. What you have passed stands: the fillet weld.",
    },
    {
      story: "a void attempt counts for nothing: the next one is still the first",
      text: "P10v P20 F90",
      is: ["a01 1 void -", "a02 1 first failed", "a03 1 first passed"],
      round: 1,
      standings: ["re-sit-due", "passed"],
      words: "Sit the butt plate again on a fresh piece. What you have passed stands: the fillet weld.",
    },
    {
      story: "a re-sit that is made void is still to be sat",
      text: "P10 P20v",
      is: ["a01 1 first failed", "a02 1 void -"],
      round: 1,
      standings: ["re-sit-due", "due"],
      words: "Sit the butt plate again on a fresh piece. Sit the fillet weld.",
    },
    {
      story: "what is passed stands: failing it afterwards, in a sitting for the whole class, takes nothing away",
      text: "P80 P20 F70",
      is: ["a01 1 first passed", "a02 1 extra -", "a03 1 first passed"],
      round: 1,
      standings: ["passed", "passed"],
      words: "You have passed every section.",
    },
    {
      story: "a plate just short of 70 awaits its parallel piece: nothing is decided",
      text: "P66.4?",
      is: ["a01 1 first undecided"],
      round: 1,
      standings: ["undecided", "due"],
      words: "Sit the butt plate on one more piece like it; the mean of both marks decides. Sit the fillet weld.",
    },
    {
      story: "66.4 and 73.6 are 70.0 in the mean: passed",
      text: "P66.4+P73.6b",
      is: ["a01 1 first -", "a02 1 borderline of a01 passed"],
      round: 1,
      standings: ["passed", "due"],
      words: "Sit the fillet weld. What you have passed stands: the butt plate.",
    },
    {
      story: "66.4 and 73.3 are 69.85, shown as 69.9: failed, once, and sat again",
      text: "P66.4+P73.3b P71",
      is: ["a01 1 first -", "a02 1 borderline of a01 failed", "a03 1 re-sit of a01 passed"],
      round: 1,
      standings: ["passed", "due"],
      words: "Sit the fillet weld. What you have passed stands: the butt plate.",
    },
    {
      story: "a re-sit just short of 70 has its parallel piece as well; failing by the mean is the second fail",
      text: "F90 P50 P68+P69b",
      is: ["a01 1 first passed", "a02 1 first failed", "a03 1 re-sit of a02 -", "a04 1 borderline of a03 failed"],
      round: 2,
      standings: ["due", "due"],
      words:
        "Round 2 begins: a re-sit was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    },
    {
      story: "the parallel piece was spoilt and made void: the first mark stands alone",
      text: "P68+P30bv",
      is: ["a01 1 first failed", "a02 1 void -"],
      round: 1,
      standings: ["re-sit-due", "due"],
      words: "Sit the butt plate again on a fresh piece. Sit the fillet weld.",
    },
    {
      story: "the first one was made void: its parallel piece, as hard and of the same length, stands as the first",
      text: "P68v+P75b",
      is: ["a01 1 void -", "a02 1 first passed"],
      round: 1,
      standings: ["passed", "due"],
      words: "Sit the fillet weld. What you have passed stands: the butt plate.",
    },
    {
      story:
        "both sections of one sitting are of one round: the last re-sit of the plate fails, and the fillet with it",
      text: "P10 P20+F90",
      is: ["a01 1 first failed", "a02 1 re-sit of a01 failed", "a03 1 first passed"],
      round: 2,
      standings: ["due", "due"],
      words:
        "Round 2 begins: a re-sit was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    },
    {
      story: "and it comes to the same the other way round",
      text: "P10 F90+P20",
      is: ["a01 1 first failed", "a02 1 first passed", "a03 1 re-sit of a01 failed"],
      round: 2,
      standings: ["due", "due"],
      words:
        "Round 2 begins: a re-sit was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    },
    {
      story:
        "the fillet's last re-sit is failed between the plate and its parallel piece: they are decided, and all is due",
      text: "F10 P68+F10+P90b",
      is: ["a01 1 first failed", "a02 1 first -", "a03 1 re-sit of a01 failed", "a04 1 borderline of a02 passed"],
      round: 2,
      standings: ["due", "due"],
      words:
        "Round 2 begins: a re-sit was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    },
    {
      story: "a parallel piece never goes with what was sat in another sitting: its own first one was made void",
      text: "P66 P68v+P75b",
      is: ["a01 1 first failed", "a02 1 void -", "a03 1 re-sit of a01 passed"],
      round: 1,
      standings: ["passed", "due"],
      words: "Sit the fillet weld. What you have passed stands: the butt plate.",
    },
  ])("$story", ({ text, is, round, standings, words }) => {
    const attempts = text === "" ? [] : history(text);
    const course = courseOf(attempts, RULE);
    if (text !== "") expect(inShort(text)).toEqual(is);
    expect(course.round).toBe(round);
    expect([...course.standings.values()]).toEqual(standings);
    expect(course.isPassed).toBe(standings.every((standing) => standing === "passed"));
    expect(nextFor(course).words).toBe(words);
  });

  test("what is due, as data", () => {
    expect(nextFor(courseOf(history("P66?"), RULE)).due).toEqual([
      { section: "plate", why: "parallel-piece" },
      { section: "fillet", why: "first" },
    ]);
    expect(nextFor(courseOf(history("P66 F70"), RULE)).due).toEqual([{ section: "plate", why: "re-sit" }]);
    expect(nextFor(courseOf(history("P70 F70"), RULE))).toMatchObject({ isPassed: true, due: [] });
  });

  test("a course of one section knows no other", () => {
    const course = courseOf(history("F20 P75"), { sections: ["plate"], resits: 1 });
    expect(course.attempts.map(({ kind }) => kind)).toEqual(["extra", "first"]);
    expect(nextFor(course).words).toBe("You have passed the butt plate.");
  });

  test("the rule comes from the paper: without re-sits the first fail begins a new round", () => {
    expect(courseRule(defaultPaper())).toEqual(RULE);
    const strict = courseOf(history("P20"), courseRule({ ...defaultPaper(), resits: 0 }));
    expect(nextFor(strict).words).toBe(
      "Round 2 begins: a section was failed, so every section is due again. Sit the butt plate and the fillet weld.",
    );
    expect(courseOf(history("P20 P20"), courseRule({ ...defaultPaper(), resits: 2 })).round).toBe(1);
  });

  test("the timeline holds every attempt in its round, and the round that is on", () => {
    const rounds = timeline(courseOf(history("P55 F80 P60 P50v P80 F71"), RULE));
    expect(
      rounds.map(({ round, outcome, attempts }) => [round, outcome, attempts.map(({ attempt }) => attempt.id)]),
    ).toEqual([
      [1, "failed", ["a01", "a02", "a03"]],
      [2, "passed", ["a04", "a05", "a06"]],
    ]);
    expect(timeline(courseOf(history("P10 P10"), RULE)).map(({ outcome }) => outcome)).toEqual(["failed", "open"]);
    expect(timeline(courseOf([], RULE))).toEqual([{ round: 1, attempts: [], outcome: "open" }]);
  });
});

describe("a section just short of its pass mark", () => {
  // 1.64 x 2.5 = 4.1: from 65.9 on
  test.each([
    [70, 2.5, false],
    [69.9, 2.5, true],
    [65.9, 2.5, true],
    [65.8, 2.5, false],
    [20, 2.5, false],
    [90, 2.5, false],
    [69.9, 0, false],
    [69.9, 0.1, true],
  ])("%d of 70 with a standard error of %d: %s", (mark, standardError, is) => {
    expect(isBorderline(mark, 70, standardError)).toBe(is);
  });

  test.each([
    [66.4, 73.6, 70],
    [66.4, 73.3, 69.9],
    [66.5, 73.4, 70],
    [0, 0.1, 0.1],
    [69.9, 69.9, 69.9],
    [0, 100, 50],
  ])("%d and %d make %d", (first, second, mean) => {
    expect(averagedMark(first, second)).toBe(mean);
  });
});
