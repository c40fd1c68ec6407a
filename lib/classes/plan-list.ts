import { personNameSchema, signInNameSchema } from "../workshop";
import type { ListRow } from "./read-list";
import { foldedName, proposeSignInName } from "./sign-in-names";

/** An account of the workshop, as seen by whoever brings a list. */
export interface KnownAccount {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  /** In the class already, a learner that the tutor works with, or anybody else. */
  readonly standing: "member" | "learner" | "somebody-else";
}

/** What will be done for one row of a list. */
export type PlannedRow = { readonly row: number; readonly name: string; readonly signInName: string } & (
  | { readonly outcome: "new" }
  | { readonly outcome: "added" | "member"; readonly learnerId: string }
  | { readonly outcome: "invalid"; readonly field: "name" | "signInName"; readonly problem: string }
);

/**
 * What to do for every row: a new account under the name that is given or one proposed from the person's name; an account
 * that is there already, taken by its sign-in name or else by the person's; nothing for members and for rows that are
 * wrong. Rows stand for different people, and no two new accounts get the same sign-in name.
 */
export function planList(rows: readonly ListRow[], accounts: readonly KnownAccount[]): readonly PlannedRow[] {
  const bySignInName = new Map(accounts.map((account) => [account.signInName, account]));
  const own = accounts.filter(({ standing }) => standing !== "somebody-else");
  // names that are written out come first, so that no proposal takes one of them
  const reserved = new Set(rows.map(({ signInName }) => signInName.toLowerCase()));
  const proposed = new Set<string>();
  const rowBySignInName = new Map<string, number>();
  const rowByName = new Map<string, number>();

  return rows.map((read): PlannedRow => {
    const { row } = read;
    const invalid = (field: "name" | "signInName", problem: string): PlannedRow => ({
      row,
      name: read.name,
      signInName: read.signInName,
      outcome: "invalid",
      field,
      problem,
    });
    if (read.problem !== null) return invalid("name", read.problem);
    const name = personNameSchema.safeParse(read.name);
    if (!name.success) return invalid("name", name.error.issues[0].message);

    const claim = (signInName: string): number | undefined => {
      const earlier = rowBySignInName.get(signInName);
      if (earlier === undefined) rowBySignInName.set(signInName, row);
      return earlier;
    };
    const take = (account: KnownAccount): PlannedRow => {
      const earlier = claim(account.signInName);
      if (earlier !== undefined) return invalid("name", `The same person as in row ${earlier}.`);
      const outcome = account.standing === "member" ? "member" : "added";
      return { row, name: account.name, signInName: account.signInName, outcome, learnerId: account.id };
    };
    const folded = foldedName(name.data) || name.data;

    if (read.signInName === "") {
      const earlier = rowByName.get(folded);
      if (earlier !== undefined) {
        return invalid("name", `The same name as in row ${earlier}. If they are two people, give each a sign-in name.`);
      }
      rowByName.set(folded, row);
      const namesakes = own.filter((account) => (foldedName(account.name) || account.name) === folded);
      if (namesakes.length === 1) return take(namesakes[0]);
      if (namesakes.length > 1) {
        return invalid("signInName", "Several learners have this name. Write the sign-in name of the one you mean.");
      }
      const isTaken = (one: string) => bySignInName.has(one) || reserved.has(one) || proposed.has(one);
      const signInName = proposeSignInName(name.data, isTaken);
      proposed.add(signInName);
      return { row, name: name.data, signInName, outcome: "new" };
    }

    const signInName = signInNameSchema.safeParse(read.signInName);
    if (!signInName.success) return invalid("signInName", signInName.error.issues[0].message);
    const account = bySignInName.get(signInName.data);
    if (account) {
      const isMeant = account.standing !== "somebody-else" && (foldedName(account.name) || account.name) === folded;
      return isMeant ? take(account) : invalid("signInName", "Taken by somebody else. Choose another one.");
    }
    const earlier = claim(signInName.data);
    if (earlier !== undefined) return invalid("signInName", `The same sign-in name as in row ${earlier}.`);
    return { row, name: name.data, signInName: signInName.data, outcome: "new" };
  });
}
