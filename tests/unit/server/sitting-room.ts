import type { Caller } from "@/app/_server/caller";
import { hashPassword } from "@/app/_server/passwords";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import { beginSitting, openSitting } from "@/app/_server/use-cases/govern-sitting";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { startSection } from "@/app/_server/use-cases/start-section";
import { builtInCriteria } from "@/lib/criteria";
import type { Report } from "@/lib/report";
import type { Section } from "@/lib/results";
import { defaultPaper, type Paper } from "@/lib/sittings";
import { createClass, enrol, setTimeFactor } from "@/prisma/stores/classes";
import { createPaper } from "@/prisma/stores/papers";
import { createPerson } from "@/prisma/stores/people";
import { readSitting } from "@/prisma/stores/sittings";
import { finishSpecimen, takeOrder } from "@/prisma/stores/specimens";
import { createWorkshop } from "@/prisma/stores/workshops";
import { CAP_ONLY, ENDS, FILLET_SURFACES, FILLET_TRUTH, SURFACES, TRUTH, testSource, visitor } from "./workshop";

/** A day at the test workshop: a clock that is set by hand. */
export interface Room {
  readonly tutor: Caller;
  /** Of another class. */
  readonly stranger: Caller;
  readonly kim: Caller;
  readonly ola: Caller;
  readonly nobody: Caller;
  readonly source: ReturnType<typeof testSource>;
  readonly now: () => Date;
  /** Sets the clock, like "10:20:07". */
  at(time: string): void;
}

export const moment = (time: string): Date => new Date(`2026-03-02T${time.length === 5 ? `${time}:00` : time}Z`);

/** Two tutors with a class each; kim (extra time 1.5) and ola are in the first one's. It is 09:00. */
export async function openRoom(changes: Partial<Paper> = {}): Promise<Room> {
  let time = moment("09:00");
  const clock = () => time;
  const passMarks = { plate: 70, fillet: 70 };
  await createWorkshop({ name: "Test shop", allowsOwnAccounts: true, passMarks }, [], time);
  const passwordHash = await hashPassword("long enough 1");
  const add = async (id: string, role: "tutor" | "learner"): Promise<Caller> => {
    const person = { id, name: `Name of ${id}`, role, hasOneTimeCode: false };
    await createPerson({ ...person, signInName: id, passwordHash }, time);
    return { actor: person, clock };
  };
  const room = {
    tutor: await add("tutor", "tutor"),
    stranger: await add("stranger", "tutor"),
    kim: await add("kim", "learner"),
    ola: await add("ola", "learner"),
    nobody: { ...visitor, clock },
    source: testSource(),
    now: clock,
    at: (text: string) => {
      time = moment(text);
    },
  };
  await createClass({ id: "class", name: "Monday class", notes: "" }, "tutor", time);
  await createClass({ id: "other-class", name: "Other class", notes: "" }, "stranger", time);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["kim", "ola"] }, time);
  await setTimeFactor("class", "kim", 1.5);
  const criteria = builtInCriteria("iso-5817-2014-c");
  if (!criteria) throw new Error("the default criteria are gone");
  await createPaper({
    id: "paper",
    versionId: "paper-1",
    ownerId: "tutor",
    createdAt: time,
    paper: { ...defaultPaper(), ...changes },
    criteria: { plate: criteria, fillet: criteria },
  });
  return room;
}

/** Plans a sitting for the class at 10:00, and makes every piece. */
export async function plannedSitting({ tutor, source }: Room, who: "class" | "due" = "class"): Promise<string> {
  const input = { classId: "class", paperId: "paper", plannedAt: "2026-03-02T10:00:00Z", who };
  const planned = await planSitting(tutor, input, source);
  if (!planned.ok) throw new Error(planned.code);
  await makeAll();
  return planned.id;
}

/** Makes everything that is ordered: the plate and the fillet of the test workshop. */
export async function makeAll(): Promise<number> {
  for (let made = 0; ; made++) {
    const order = await takeOrder();
    if (!order) return made;
    const common = { generatorVersion: "test-generator" };
    await finishSpecimen(
      order.id,
      order.kind === "butt"
        ? { ...common, truth: TRUTH, surfaces: SURFACES, ends: null }
        : { ...common, truth: FILLET_TRUTH, surfaces: FILLET_SURFACES, ends: ENDS },
    );
  }
}

/** A sitting that has begun at 10:00, with everybody in. */
export async function begunSitting(room: Room, who: "class" | "due" = "class"): Promise<string> {
  const id = await plannedSitting(room, who);
  room.at("10:00");
  await must(openSitting(room.tutor, id));
  await must(enterSitting(room.kim, id, room.source));
  await must(enterSitting(room.ola, id, room.source));
  await must(beginSitting(room.tutor, id));
  return id;
}

/** The run of somebody in a section, with its practice. */
export async function runOf(sittingId: string, { actor }: Caller, section: Section = "plate", isBorderline = false) {
  const stored = await readSitting(sittingId);
  const found = stored?.runs.find(
    ({ run }) => run.userId === actor?.id && run.section === section && run.isBorderline === isBorderline,
  );
  if (!found) throw new Error(`${actor?.id} has no ${section}`);
  return found;
}

export const WINDOW = "window01";

/** Starts somebody's section now and says which practice it is. */
export async function started(sittingId: string, learner: Caller, section: Section = "plate") {
  const { run, practiceId } = await runOf(sittingId, learner, section);
  await must(startSection(learner, run.id, { windowId: WINDOW }));
  return { runId: run.id, practiceId };
}

/** A save as a browser sends it. */
export const save = (sequence: number, madeAt: Date, windowId = WINDOW, report: Report = CAP_ONLY) => ({
  sequence,
  report,
  window: { id: windowId, base: sequence - 1 },
  madeAt: madeAt.toISOString(),
});

/** What was answered; throws where it was refused. */
export async function must<Answer extends { readonly ok: boolean }>(
  promise: Promise<Answer>,
): Promise<Extract<Answer, { readonly ok: true }>> {
  const answer = await promise;
  if (!answer.ok) throw new Error("code" in answer ? String(answer.code) : "refused");
  return answer as Extract<Answer, { readonly ok: true }>;
}
