import { randomBytes } from "node:crypto";
import { addCriteria } from "@/app/_server/use-cases/add-criteria";
import { chooseOwnPassword } from "@/app/_server/use-cases/choose-own-password";
import { setTimeFactor } from "@/app/_server/use-cases/class-members";
import { addClassTutor } from "@/app/_server/use-cases/class-tutors";
import { changeJoinCode, makeClass } from "@/app/_server/use-cases/edit-class";
import { enrolList, previewList } from "@/app/_server/use-cases/enrol-list";
import { savePaper } from "@/app/_server/use-cases/save-paper";
import type { ClassGroup } from "@/lib/classes";
import { listClassesOf, listMembers } from "@/prisma/stores/classes";
import { listCriteriaSets } from "@/prisma/stores/criteria-sets";
import { listPapers } from "@/prisma/stores/papers";
import type { DemoClass } from "../classes";
import { minutesAfter } from "../days";
import { DEMO_PAPERS, type DemoPaper, HOUSE_RULES } from "../papers";
import { callerAt, done, type Entry, personOf } from "../writing";

/** The class as it is kept; null before it is made. */
export async function groupOf({ name, tutors }: DemoClass): Promise<ClassGroup | null> {
  const tutor = await personOf(tutors[0]);
  return (await listClassesOf(tutor.id)).find((group) => group.name === name) ?? null;
}

/** Makes a class, brings the list of its learners, and lets everybody choose a password of their own. */
export const enrolment = (demoClass: DemoClass, at: Date): Entry => ({
  at,
  write: async () => {
    const { name, notes, learners } = demoClass;
    const [first, ...others] = await Promise.all(demoClass.tutors.map(personOf));
    const tutor = callerAt(first, at);
    if (!(await groupOf(demoClass))) await done(makeClass(tutor, { name, notes }));
    const group = await groupOf(demoClass);
    if (!group) throw new Error(`the class ${name} is not there`);
    for (const other of others) await done(addClassTutor(tutor, group.id, other.id));
    if (!group.joinCode) await done(changeJoinCode(tutor, group.id, true));
    const list = ["Name;Sign-in name", ...learners.map((one) => `${one.name};${one.signInName}`)].join("\n");
    const preview = await done(previewList(tutor, group.id, list));
    if (preview) await done(enrolList(tutor, group.id, list, preview.rows));
    for (const { person } of await listMembers(group.id)) {
      const learner = learners.find(({ signInName }) => signInName === person.signInName);
      if (learner && learner.factor !== 1) await done(setTimeFactor(tutor, group.id, person.id, learner.factor));
      // nobody is told it: a tutor gives whoever is to be played a new code
      if (person.hasOneTimeCode) await choosePassword(person.signInName, minutesAfter(at, 30));
    }
  },
});

async function choosePassword(signInName: string, at: Date): Promise<void> {
  const person = await personOf(signInName);
  const { actor, clock } = callerAt(person, at);
  if (!actor) return;
  const password = randomBytes(18).toString("base64url");
  await done(
    chooseOwnPassword({ actor: { ...actor, hasOneTimeCode: true }, clock }, { password, confirmation: password }),
  );
}

/** The id of a paper of the demo; null before it is written. */
export async function paperIdOf(paper: DemoPaper): Promise<string | null> {
  const { name } = DEMO_PAPERS[paper]("none");
  return (await listPapers()).find(({ current }) => current.paper.name === name)?.id ?? null;
}

/** The workshop's own criteria and the papers. */
export const papers = (tutorName: string, at: Date): Entry => ({
  at,
  write: async () => {
    const tutor = callerAt(await personOf(tutorName), at);
    const houseRules = async () => (await listCriteriaSets()).find(({ own }) => own.name === HOUSE_RULES.own.name);
    if (!(await houseRules())) await done(addCriteria(tutor, HOUSE_RULES));
    const houseId = (await houseRules())?.own.id ?? "";
    for (const paper of Object.keys(DEMO_PAPERS) as DemoPaper[]) {
      if (await paperIdOf(paper)) continue;
      await done(savePaper(tutor, null, { paper: DEMO_PAPERS[paper](houseId), seen: null }));
    }
  },
});
