import { DEFAULT_PASS_MARKS, type Role } from "@/lib/workshop";
import { createWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { hashPassword } from "../passwords";
import { randomId, randomPassword } from "../random-id";
import { refuse } from "../refusal";

/** Invented people in an invented workshop. */
const WORKSHOP = "Tidewater Bench";
type DemoPerson = { readonly name: string; readonly signInName: string; readonly role: Role };
const PEOPLE: readonly DemoPerson[] = [
  { name: "Maren Okafor", signInName: "maren", role: "tutor" },
  { name: "Ilse Tamm", signInName: "ilse", role: "learner" },
  { name: "Bruno Katz", signInName: "bruno", role: "learner" },
  { name: "Sana Lindqvist", signInName: "sana", role: "learner" },
  { name: "Tomo Reyes", signInName: "tomo", role: "learner" },
];
/** With a past there is a second tutor, with a class of her own. */
const SECOND_TUTOR: DemoPerson = { name: "Odile Brandvold", signInName: "odile", role: "tutor" };

export interface DemoAccount {
  readonly name: string;
  readonly signInName: string;
  readonly role: Role;
  /** Told this once; only its hash is kept. */
  readonly password: string;
}

/**
 * First start: opens a workshop with people to try things with. Anybody may, once. With a past, its classes, their practice and
 * their sittings are written afterwards, while it is used already (`seed/demo`).
 */
export async function openDemoWorkshop({ clock }: Pick<Caller, "clock">, { withPast }: { readonly withPast: boolean }) {
  const people = withPast ? [PEOPLE[0], SECOND_TUTOR, ...PEOPLE.slice(1)] : PEOPLE;
  const accounts: readonly DemoAccount[] = people.map((person) => ({ ...person, password: randomPassword() }));
  const rows = await Promise.all(
    accounts.map(async ({ password, ...person }) => ({
      ...person,
      id: randomId(),
      passwordHash: await hashPassword(password),
      hasOneTimeCode: false,
    })),
  );
  const settings = { name: WORKSHOP, allowsOwnAccounts: true, passMarks: DEFAULT_PASS_MARKS };
  if (!(await createWorkshop(settings, rows, clock(), { withPast }))) return refuse("already-set-up");
  return { ok: true, workshop: WORKSHOP, accounts } as const;
}
