import { DEFAULT_PASS_MARKS, type Role } from "@/lib/workshop";
import { createWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { hashPassword } from "../passwords";
import { randomId, randomPassword } from "../random-id";
import { refuse } from "../refusal";

/** Invented people in an invented workshop. */
const WORKSHOP = "Tidewater Bench";
const PEOPLE: readonly { readonly name: string; readonly signInName: string; readonly role: Role }[] = [
  { name: "Maren Okafor", signInName: "maren", role: "tutor" },
  { name: "Ilse Tamm", signInName: "ilse", role: "learner" },
  { name: "Bruno Katz", signInName: "bruno", role: "learner" },
  { name: "Sana Lindqvist", signInName: "sana", role: "learner" },
  { name: "Tomo Reyes", signInName: "tomo", role: "learner" },
];

export interface DemoAccount {
  readonly name: string;
  readonly signInName: string;
  readonly role: Role;
  /** Told this once; only its hash is kept. */
  readonly password: string;
}

/** First start: opens a workshop with a tutor and four learners to try things with. Anybody may, once. */
export async function openDemoWorkshop({ clock }: Pick<Caller, "clock">) {
  const accounts: readonly DemoAccount[] = PEOPLE.map((person) => ({ ...person, password: randomPassword() }));
  const rows = await Promise.all(
    accounts.map(async ({ password, ...person }) => ({
      ...person,
      id: randomId(),
      passwordHash: await hashPassword(password),
      hasOneTimeCode: false,
    })),
  );
  const settings = { name: WORKSHOP, allowsOwnAccounts: true, passMarks: DEFAULT_PASS_MARKS };
  if (!(await createWorkshop(settings, rows, clock()))) return refuse("already-set-up");
  return { ok: true, workshop: WORKSHOP, accounts } as const;
}
