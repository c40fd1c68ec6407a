import { describe, expect, test } from "vitest";
import { extentWords, marks, mm, vagueStretch } from "@/app/_marks/line-words";

describe("words of the mark sheet", () => {
  test("lengths carry their unit and at most one decimal", () => {
    expect(mm(12)).toBe("12 mm");
    expect(mm(0.84)).toBe("0.8 mm");
  });

  test("extents of lines, points and lines of the report without a place", () => {
    expect(extentWords(112.4, 137.2)).toBe("112 to 137 mm");
    expect(extentWords(57, 57)).toBe("at 57 mm");
    expect(extentWords(57, null)).toBe("at 57 mm");
    expect(extentWords(null, null)).toBe("no place written");
  });

  test("a thousandth of a mark is not lost in words", () => {
    expect(marks(7350)).toBe("7.35");
    expect(marks(-500)).toBe("-0.50");
  });

  test("a covered miss tells no more than a stretch of 50 mm that holds its start", () => {
    expect(vagueStretch({ start: 137 })).toBe("between 100 and 150 mm");
    expect(vagueStretch({ start: 299 })).toBe("between 250 and 300 mm");
    expect(vagueStretch({ start: 0 })).toBe("between 0 and 50 mm");
  });
});
