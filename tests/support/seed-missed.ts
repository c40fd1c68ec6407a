// Fills an empty database with a tutor's class of two learners, one of whom has handed in so many plates with a pore and a hollow
// root and found neither, which is enough to say what the class misses. Everybody signs in with the password that is given.
import type { Caller } from "@/app/_server/caller";
import { hashPassword } from "@/app/_server/passwords";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { EMPTY_REPORT } from "@/lib/report";
import { createClass, enrol } from "@/prisma/stores/classes";
import { createPerson } from "@/prisma/stores/people";
import { createWorkshop } from "@/prisma/stores/workshops";
import { openPractice } from "../unit/server/workshop";

/** A class is judged from twenty of a type on. */
const PLATES = 20;

const now = new Date();
const passwordHash = await hashPassword(process.argv[2]);
await createWorkshop({ name: "Tidewater", allowsOwnAccounts: false, passMarks: { plate: 70, fillet: 70 } }, [], now);
for (const [id, name, role] of [
  ["maren", "Maren Okafor", "tutor"],
  ["pia", "Pia Lund", "learner"],
  ["jon", "Jon Adeyemi", "learner"],
] as const) {
  await createPerson({ id, name, role, signInName: id, passwordHash, hasOneTimeCode: false }, now);
}
await createClass({ id: "class", name: "Monday class", notes: "" }, "maren", now);
await enrol({ groupId: "class", accounts: [], learnerIds: ["pia", "jon"] }, now);
const pia: Caller = {
  actor: { id: "pia", name: "Pia Lund", role: "learner", hasOneTimeCode: false },
  clock: () => now,
};
for (let n = 1; n <= PLATES; n++) {
  const id = await openPractice(pia, `plate-${n}`);
  const handedIn = await handIn(pia, id, { sequence: 1, report: EMPTY_REPORT });
  if (!handedIn.ok) throw new Error(handedIn.code);
}
process.exit(0);
