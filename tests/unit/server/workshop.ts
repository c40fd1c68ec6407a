import type { Caller } from "@/app/_server/caller";
import { outlookOf } from "@/app/_server/forecast";
import type { SpecimenSource } from "@/app/_server/generation/specimen-source";
import { foreseePieces } from "@/app/_server/next/foresee-pieces";
import { hashPassword } from "@/app/_server/passwords";
import type { ImperfectionType } from "@/lib/imperfections";
import type { Report } from "@/lib/report";
import type { Section } from "@/lib/results";
import type { PaperPiece } from "@/lib/sittings";
import type { ButtTruth, FilletTruth, Truth } from "@/lib/specimen";
import type { EndViews, JointKind } from "@/lib/weld";
import { DEFAULT_PASS_MARKS, type Role } from "@/lib/workshop";
import { createPerson } from "@/prisma/stores/people";
import { createPractice } from "@/prisma/stores/practices";
import {
  finishSpecimen,
  hurrySpecimen,
  type MadeSpecimen,
  type OrderedFor,
  orderSpecimen,
  readSpecimenProgress,
  takeReadySpecimen,
} from "@/prisma/stores/specimens";
import { createWorkshop } from "@/prisma/stores/workshops";

export const NOW = new Date("2026-03-02T08:00:00.000Z");
export const clock = () => NOW;
export const visitor: Caller = { actor: null, clock };

/** A workshop with one tutor and two learners, each as a caller of use cases. */
export async function openTestWorkshop(): Promise<{ tutor: Caller; learner: Caller; other: Caller }> {
  await createWorkshop({ name: "Test shop", allowsOwnAccounts: true, passMarks: DEFAULT_PASS_MARKS }, [], NOW);
  const passwordHash = await hashPassword("long enough 1");
  const add = async (id: string, role: Role): Promise<Caller> => {
    const person = { id, name: `Name of ${id}`, role, hasOneTimeCode: false };
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
export const TRUTH: ButtTruth = {
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
    {
      dimension: "cap-height",
      station: null,
      value: 2.4,
      at: 120,
      along: { from: 0, step: 100, values: [1, 2.1, 2.3, null] },
    },
  ],
  statements: [],
};

/** One crack on a fillet from 60 to 90 mm; one throat, the smallest leg, and a weld that is surely convex and large enough. */
export const FILLET_TRUTH: FilletTruth = {
  version: 1,
  generator: "test-generator",
  joint: {
    kind: "fillet",
    process: "135",
    position: "PB",
    length: 200,
    baseThickness: 12,
    standingThickness: 8,
    size: { symbol: "a", value: 4 },
    angle: 90,
  },
  items: [
    {
      id: "fillet-1",
      face: "fillet",
      type: "longitudinal-crack",
      start: 60,
      end: 90,
      across: -1.25,
      size: null,
      width: 0.3,
      worst: [75.5, -1.25],
      outline: [
        [60, -1.5],
        [90, -1.5],
        [75.5, -1],
      ],
      neutral: false,
    },
  ],
  clutter: [],
  dimensions: [
    { dimension: "throat", station: 1, value: 4.61, at: 41, along: null },
    {
      dimension: "smallest-leg",
      station: null,
      value: 5.93,
      at: 117,
      along: { from: 12, step: 1, values: [6.37, 6.29] },
    },
  ],
  statements: [
    { statement: "profile", right: ["convex"], value: 0.74, limit: 0.3 },
    { statement: "size", right: ["met"], value: 4.43, limit: 4 },
  ],
  stations: [41, 103, 158],
  gap: { datum: 0.27, farEnd: 0.48 },
};

/** What is seen at the ends of it. */
export const ENDS: EndViews = {
  datum: { base: [{ along: -8, up: -0.01 }], standing: [{ along: 0, up: 0.26 }], weld: [{ along: 6.1, up: 0 }] },
  farEnd: { base: [{ along: -8, up: -0.02 }], standing: [{ along: 0, up: 0.46 }], weld: [{ along: 6.2, up: 0 }] },
};

/** Reports the pore as it is and how high the cap is where that is not its highest, and nothing on the root. */
export const CAP_ONLY: Report = {
  version: 1,
  calls: [{ id: "a", face: "cap", type: "surface-pore", start: 100, end: null, across: 1, size: 1.5, sentence: null }],
  measures: [{ dimension: "cap-height", station: null, value: 2, at: 104 }],
  statements: [],
  pieceSentence: null,
  answers: {},
};

export const SURFACES = { cap: new Uint8Array([1, 2, 3]), root: new Uint8Array([4, 5]) };
export const FILLET_SURFACES = { fillet: new Uint8Array([6, 7, 8, 9]) };

/** What the generator makes for each section. */
const MADE: Readonly<Record<Section, { readonly kind: JointKind } & MadeSpecimen>> = {
  plate: { kind: "butt", ...madeOf(TRUTH), surfaces: SURFACES, ends: null },
  fillet: { kind: "fillet", ...madeOf(FILLET_TRUTH), surfaces: FILLET_SURFACES, ends: ENDS },
};

function madeOf(truth: Truth) {
  return { truth, generatorVersion: truth.generator };
}

/** Makes a specimen with a truth from above, as the generator would. */
export async function makeSpecimen(id: string, isReserved = true, section: Section = "plate"): Promise<string> {
  const { kind, ...made } = MADE[section];
  await orderSpecimen({ id, kind, seed: `secret-seed-of-${id}`, asked: null }, isReserved ? "awaited" : "stock", NOW);
  await finishSpecimen(id, made);
  return id;
}

/** An open practice of somebody on a made specimen. */
export async function openPractice({ actor }: Caller, id = "practice", section: Section = "plate"): Promise<string> {
  if (!actor) throw new Error("a visitor has no practice");
  const specimenId = await makeSpecimen(`specimen-of-${id}`, true, section);
  await createPractice({
    id,
    userId: actor.id,
    specimenId,
    section,
    passMark: 60.5,
    criteria: null,
    book: "open",
    startedAt: NOW,
  });
  return id;
}

/** Specimens from the database alone: nobody makes the ones that are asked for. */
export function testSource(
  named = "asked",
): SpecimenSource & { readonly wantedForDrills: readonly (readonly ImperfectionType[])[] } {
  let asked = 0;
  const wantedForDrills: (readonly ImperfectionType[])[] = [];
  const order = async (kind: JointKind, piece: PaperPiece | null, orderedFor: OrderedFor, given?: string) => {
    const specimenId = `${named}-${asked++}`;
    const seed = given ?? `secret-seed-of-${specimenId}`;
    await orderSpecimen({ id: specimenId, kind, seed, asked: piece }, orderedFor, NOW);
    return { specimenId };
  };
  return {
    wantedForDrills,
    async takeReady(kind) {
      const specimenId = await takeReadySpecimen(kind);
      return specimenId ? { specimenId } : null;
    },
    requestOne: (kind, piece) => order(kind, piece ?? null, "awaited"),
    orderAhead: (kind, piece, seed) => order(kind, piece, "ahead", seed),
    async orderForDrills(wanted) {
      wantedForDrills.push(wanted);
      await order("butt", null, "drills");
    },
    hurry: async (id) => void (await hurrySpecimen(id)),
    foresee: async (order) => outlookOf(order),
    drawAhead: async (order) => foreseePieces(order),
    stageOf: async (id) => (await readSpecimenProgress(id)) ?? { state: "failed", stage: "" },
  };
}
