// Fills an empty database for a whole class: a tutor, so many learners, and a paper with one fillet, everybody's own or one for
// all. Everybody signs in with the password that is given.
import { hashPassword } from "@/app/_server/passwords";
import { builtInCriteria } from "@/lib/criteria";
import { defaultPaper, paperSchema } from "@/lib/sittings";
import { createClass, enrol } from "@/prisma/stores/classes";
import { createPaper } from "@/prisma/stores/papers";
import { createPerson } from "@/prisma/stores/people";
import { createWorkshop } from "@/prisma/stores/workshops";
import { LEARNER, TUTOR } from "./people";

const [password, learners, forms] = process.argv.slice(2);
const now = new Date();
const passwordHash = await hashPassword(password);
const add = async (id: string, role: "tutor" | "learner") => {
  await createPerson({ id, name: `Name of ${id}`, role, signInName: id, passwordHash, hasOneTimeCode: false }, now);
  return id;
};
await createWorkshop({ name: "Tidewater", allowsOwnAccounts: false, passMarks: { plate: 70, fillet: 70 } }, [], now);
await add(TUTOR, "tutor");
const learnerIds: string[] = [];
for (let n = 1; n <= Number(learners); n++) learnerIds.push(await add(LEARNER(n), "learner"));
await createClass({ id: "class", name: "Whole class", notes: "" }, TUTOR, now);
await enrol({ groupId: "class", accounts: [], learnerIds }, now);
const criteria = builtInCriteria("iso-5817-2014-c");
if (!criteria) throw new Error("the default criteria are gone");
const { sections, ...rest } = defaultPaper();
const paper = paperSchema.parse({ ...rest, forms, sections: sections.filter(({ section }) => section === "fillet") });
await createPaper({
  id: "paper",
  versionId: "paper-1",
  ownerId: TUTOR,
  createdAt: now,
  paper,
  criteria: { fillet: criteria },
});
process.exit(0);
