import type { Caller } from "@/app/_server/caller";
import type { SpecimenSource } from "@/app/_server/generation/specimen-source";
import { hashPassword } from "@/app/_server/passwords";
import type { Report } from "@/lib/report";
import type { Truth } from "@/lib/specimen";
import { DEFAULT_PASS_MARKS, type Role } from "@/lib/workshop";
import { createPerson } from "@/prisma/stores/people";
import { createPractice } from "@/prisma/stores/practices";
import { finishSpecimen, orderSpecimen, readSpecimenProgress, takeReadySpecimen } from "@/prisma/stores/specimens";
import { createWorkshop } from "@/prisma/stores/workshops";

export const NOW = new Date("2026-03-02T08:00:00.000Z");
export const clock = () => NOW;
export const visitor: Caller = { actor: null, clock };

/** A workshop with one tutor and two learners, each as a caller of use cases. */
export async function openTestWorkshop(): Promise<{ tutor: Caller; learner: Caller; other: Caller }> {
  await createWorkshop({ name: "Test shop", allowsOwnAccounts: true, passMarks: DEFAULT_PASS_MARKS }, [], NOW);
  const passwordHash = await hashPassword("long enough 1");
  const add = async (id: string, role: Role): Promise<Caller> => {
    const person = { id, name: `Name of ${id}`, role };
    await createPerson({ ...person, signInName: id, passwordHash }, NOW);
    return { actor: person, clock };
  };
  return {
    tutor: await add("tutor", "tutor"),
    learner: await add("learner", "learner"),
    other: await add("other", "learner"),
  };
}

/** One pore on the cap at 100 mm, one hollow in the root from 50 to 80 mm. */
export const TRUTH: Truth = {
  version: 1,
  generator: "test-generator",
  joint: {
    kind: "butt",
    process: "111",
    position: "PA",
    length: 300,
    width: 150,
    thickness: 10,
    grooveAngle: 60,
    rootGap: 2.5,
    rootFace: 1.5,
  },
  items: [
    {
      id: "cap-1",
      face: "cap",
      type: "surface-pore",
      start: 100,
      end: 100,
      across: 1,
      size: 1.5,
      width: 1.5,
      worst: [100, 1],
      outline: [
        [99, 0],
        [101, 0],
        [100, 2],
      ],
      neutral: false,
    },
    {
      id: "root-1",
      face: "root",
      type: "root-concavity",
      start: 50,
      end: 80,
      across: 0,
      size: 0.8,
      width: 2,
      worst: [65, 0],
      outline: [
        [50, -1],
        [80, -1],
        [65, 1],
      ],
      neutral: false,
    },
  ],
  clutter: [],
  dimensions: [
    { dimension: "cap-height", value: 2.4, at: 120, along: { from: 0, step: 100, values: [1, 2.1, 2.3, null] } },
  ],
};

/** Reports the pore as it is and how high the cap is where that is not its highest, and nothing on the root. */
export const CAP_ONLY: Report = {
  version: 1,
  calls: [{ id: "a", face: "cap", type: "surface-pore", start: 100, end: null, across: 1, size: 1.5 }],
  measures: [{ dimension: "cap-height", value: 2, at: 104 }],
};

export const SURFACES = { cap: new Uint8Array([1, 2, 3]), root: new Uint8Array([4, 5]) };

/** Makes a specimen with the truth above, as the generator would. */
export async function makeSpecimen(id: string, isReserved = true): Promise<string> {
  await orderSpecimen({ id, seed: `secret-seed-of-${id}` }, isReserved, NOW);
  await finishSpecimen(id, { truth: TRUTH, generatorVersion: TRUTH.generator, surfaces: SURFACES });
  return id;
}

/** An open practice of somebody on a made specimen. */
export async function openPractice({ actor }: Caller, id = "practice"): Promise<string> {
  if (!actor) throw new Error("a visitor has no practice");
  const specimenId = await makeSpecimen(`specimen-of-${id}`);
  await createPractice({ id, userId: actor.id, specimenId, section: "plate", passMark: 60.5, startedAt: NOW });
  return id;
}

/** Specimens from the database alone: nobody makes the ones that are asked for. */
export function testSource(): SpecimenSource {
  let asked = 0;
  return {
    async takeReady() {
      const specimenId = await takeReadySpecimen();
      return specimenId ? { specimenId } : null;
    },
    async requestOne() {
      const specimenId = `asked-${asked++}`;
      await orderSpecimen({ id: specimenId, seed: `secret-seed-of-${specimenId}` }, true, NOW);
      return { specimenId };
    },
    stageOf: async (id) => (await readSpecimenProgress(id)) ?? { state: "failed", stage: "" },
  };
}
