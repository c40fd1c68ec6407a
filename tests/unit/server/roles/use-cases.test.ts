import { expect, test } from "vitest";
import { expectedOf, inTurn, isOfPermission } from "./answers";
import { MISSING, schoolForEachTest } from "./school";
import { USE_CASES } from "./use-cases";

const school = schoolForEachTest();

test.each(USE_CASES.map((row) => ({ name: row[0], row })))("$name", async ({ row: [, answers, act, newt] }) => {
  const { people, names, writes } = school();
  const expected = expectedOf(answers, newt);
  const answered: Record<string, string> = {};
  for (const who of inTurn(expected)) {
    const before = writes();
    const answer = await act(people[who], names);
    const code = answer.ok ? "" : (answer.code ?? "");
    const isRefused = isOfPermission(code);
    answered[who] = isRefused ? code : "yes";
    if (!isRefused) continue;
    expect(writes(), `a refusal of ${who} changes nothing`).toEqual(before);
    // nobody learns from a refusal that there is something
    if (code.startsWith("no-such-")) expect(answer, who).toEqual(await act(people[who], MISSING));
  }
  expect(answered).toEqual(expected);
});
