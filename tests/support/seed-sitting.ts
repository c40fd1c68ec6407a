// Fills an empty database for a sitting: a tutor, two learners in a class, and a paper with one fillet to be inspected in five
// minutes. Everybody signs in with the password that is given.
import { hashPassword } from "@/app/_server/passwords";
import { builtInCriteria } from "@/lib/criteria";
import { defaultPaper } from "@/lib/sittings";
import { createClass, enrol } from "@/prisma/stores/classes";
import { createPaper } from "@/prisma/stores/papers";
import { createPerson } from "@/prisma/stores/people";
import { createWorkshop } from "@/prisma/stores/workshops";

const now = new Date();
const passwordHash = await hashPassword(process.argv[2]);
await createWorkshop({ name: "Tidewater", allowsOwnAccounts: false, passMarks: { plate: 70, fillet: 70 } }, [], now);
for (const [id, role] of [
  ["maren", "tutor"],
  ["ilse", "learner"],
  ["bruno", "learner"],
] as const) {
  await createPerson({ id, name: `Name of ${id}`, role, signInName: id, passwordHash, hasOneTimeCode: false }, now);
}
await createClass({ id: "class", name: "Monday class", notes: "" }, "maren", now);
await enrol({ groupId: "class", accounts: [], learnerIds: ["ilse", "bruno"] }, now);
const criteria = builtInCriteria("iso-5817-2014-c");
const fillet = defaultPaper().sections.find(({ section }) => section === "fillet");
if (!criteria || !fillet) throw new Error("the default paper has no fillet, or its criteria are gone");
const section = { ...fillet, minutes: 5, piece: { ...fillet.piece, blueprint: "clean" } };
await createPaper({
  id: "paper",
  versionId: "paper-1",
  ownerId: "maren",
  createdAt: now,
  paper: { ...defaultPaper(), name: "Fillet in five minutes", sections: [section] },
  criteria: { fillet: criteria },
});
process.exit(0);
