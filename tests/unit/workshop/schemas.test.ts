import { describe, expect, test } from "vitest";
import { newPersonSchema, passMarksSchema, signInNameSchema } from "@/lib/workshop";

describe("sign-in names", () => {
  test.each([
    ["Kim.Duarte", "kim.duarte"],
    ["  a-b_9 ", "a-b_9"],
    ["abc", "abc"],
  ])("%j is taken as %j", (typed, name) => {
    expect(signInNameSchema.parse(typed)).toBe(name);
  });

  test.each(["ab", "a b c", "kim@home", "x".repeat(31), "", "käthe"])("%j is refused", (typed) => {
    expect(signInNameSchema.safeParse(typed).success).toBe(false);
  });
});

describe("pass marks", () => {
  test.each([0, 70, 69.9, 100])("%d is one", (mark) => {
    expect(passMarksSchema.safeParse({ plate: mark, fillet: 70 }).success).toBe(true);
  });

  test.each([-0.1, 100.1, 69.95, Number.NaN, Number.POSITIVE_INFINITY, "70"])("%s is none", (mark) => {
    expect(passMarksSchema.safeParse({ plate: mark, fillet: 70 }).success).toBe(false);
  });
});

test("a password has to be long enough, and written the same way twice", () => {
  const person = { name: "Kim", signInName: "kim" };
  const accepts = (password: string, confirmation: string) =>
    newPersonSchema.safeParse({ ...person, password, confirmation }).success;
  expect(accepts("0123456789", "0123456789")).toBe(true);
  expect(accepts("012345678", "012345678")).toBe(false);
  expect(accepts("0123456789", "0123456788")).toBe(false);
  expect(accepts("x".repeat(129), "x".repeat(129))).toBe(false);
});
