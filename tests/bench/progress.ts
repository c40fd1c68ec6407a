import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Caller } from "@/app/_server/caller";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { CLUTTER, IMPERFECTION_TYPES, imperfection } from "@/lib/imperfections";
import {
  addSections,
  classStanding,
  EMPTY_LEARNER_TALLY,
  NEW_IN_ORDER,
  readinessOf,
  type SectionObservations,
  takenIn,
} from "@/lib/progress";
import { type RandomStream, randomStream } from "@/lib/random";
import type { Section } from "@/lib/results";
import { DEFAULT_PASS_MARKS } from "@/lib/workshop";
import { closeDatabase, database } from "@/prisma/client";
import { createClass, enrol } from "@/prisma/stores/classes";
import { createPerson } from "@/prisma/stores/people";
import { beginBuilding, storeBuilt } from "@/prisma/stores/progress";
import { createWorkshop } from "@/prisma/stores/workshops";
import { migrate } from "@/prisma/tools/migrate.mjs";
import { percentile } from "./percentile";

const LEARNERS = 200;
const SECTIONS_EACH = 200;
const INDICATIONS_EACH = 25;
const NOW = new Date("2026-03-02T08:00:00Z");

/** How long the progress of a class takes to open that has a million indications behind it: 200 learners with 200 sections each. */
export async function benchProgress(): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), "toeline-bench-"));
  process.env.DATABASE_URL = `file:${join(folder, "bench.db")}`;
  try {
    migrate(process.env.DATABASE_URL);
    return await measure(await fillClass());
  } finally {
    await closeDatabase();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Filled {
  readonly tutor: Caller;
  readonly foldMs: number;
  readonly storeMs: number;
}

/** Tallies are built by the fold of the program and stored as it stores them. */
async function fillClass(): Promise<Filled> {
  const tutor = { id: "tutor", name: "Tutor", role: "tutor" as const, hasOneTimeCode: false };
  await createWorkshop({ name: "Bench", allowsOwnAccounts: false, passMarks: DEFAULT_PASS_MARKS }, [], NOW);
  await createPerson({ ...tutor, signInName: "tutor", passwordHash: "" }, NOW);
  await createClass({ id: "class", name: "Large class", notes: "" }, "tutor", NOW);
  const ids = Array.from({ length: LEARNERS }, (_, n) => `learner-${n}`);
  const account = { role: "learner" as const, hasOneTimeCode: false, passwordHash: "" };
  const accounts = ids.map((id) => ({ ...account, id, name: `Learner ${id.slice(8)}`, signInName: id }));
  await enrol({ groupId: "class", accounts, learnerIds: [] }, NOW);
  let [foldMs, storeMs] = [0, 0];
  for (const id of ids) {
    const observed = Array.from({ length: SECTIONS_EACH }, (_, n) => sectionOf(randomStream(`progress/${id}/${n}`)));
    const begun = performance.now();
    const tally = addSections(EMPTY_LEARNER_TALLY, observed);
    foldMs += performance.now() - begun;
    const folded = performance.now();
    const learner = takenIn(
      NEW_IN_ORDER,
      observed.map((observations, at) => ({ id: `${at}`, at, observations })),
    );
    if (!learner || !(await storeBuilt(id, await beginBuilding(id), { tally, learner })))
      throw new Error(`${id} was not stored`);
    storeMs += performance.now() - folded;
    await storeMarks(id, observed);
  }
  return { tutor: { actor: tutor, clock: () => NOW }, foldMs, storeMs };
}

/** The rows that marks are read from; a result is as long as one of few lines, where a real one is several times as long. */
async function storeMarks(userId: string, observed: readonly SectionObservations[]): Promise<void> {
  const idOf = (n: number) => `${userId}-${n}`;
  const at = (n: number) => new Date(NOW.getTime() + n * 60_000);
  await database().specimen.createMany({
    data: [{ id: userId, seed: userId, state: "taken", createdAt: NOW }],
  });
  await database().practice.createMany({
    data: observed.map(({ section }, n) => ({
      id: idOf(n),
      userId,
      section: section as Section,
      specimenId: userId,
      state: "handedIn" as const,
      report: { filling: "x".repeat(4000) },
      startedAt: at(n),
      handedInAt: at(n),
    })),
  });
  await database().attempt.createMany({
    data: observed.map(({ section, mark, passed }, n) => ({
      id: idOf(n),
      practiceId: idOf(n),
      section,
      passMark: 70,
      markThousandths: mark,
      isPassed: passed,
      ruleVersion: "1",
      result: { filling: "x".repeat(4000) },
      handedInAt: at(n),
    })),
  });
}

async function measure({ tutor, foldMs, storeMs }: Filled): Promise<string[]> {
  const times: number[] = [];
  for (let n = 0; n < 20; n++) {
    const begun = performance.now();
    const read = await readClassProgress(tutor, "class");
    if (!read.ok || read.learners.length !== LEARNERS) throw new Error("the class could not be read");
    const { missed } = classStanding(read.learners.map(({ overview }) => overview));
    const ready = readinessOf(
      read.learners.map(({ marks }) => marks),
      read.passMarks,
    );
    times.push(performance.now() - begun);
    if (missed.length !== IMPERFECTION_TYPES.length || ready.length !== 2) throw new Error("something is missing");
  }
  const [first, ...others] = times;
  const indications = LEARNERS * SECTIONS_EACH * INDICATIONS_EACH;
  return [
    `${LEARNERS} learners with ${SECTIONS_EACH} sections each, ${indications} indications`,
    `fold ${(foldMs / (LEARNERS * SECTIONS_EACH)).toFixed(2)} ms a section, store ${(storeMs / LEARNERS).toFixed(0)} ms a learner`,
    `progress of the class: first ${first.toFixed(0)} ms, then median ${percentile(others, 0.5)} ms, longest ${percentile(others, 1)} ms`,
  ];
}

/** A section with something of everything, as quickly as it can be drawn. */
function sectionOf(random: RandomStream): SectionObservations {
  const passed = random.chance(0.6);
  return {
    version: 3,
    section: random.chance(0.5) ? "plate" : "fillet",
    mark: random.integer(100_001),
    passMark: 70,
    passed,
    weldLength: 600,
    seconds: 1800 + random.integer(3600),
    notCounted: 0,
    leftOpen: 0,
    truths: Array.from({ length: INDICATIONS_EACH }, (_, n) => truthOf(random, n)),
    falseCalls: Array.from({ length: random.integer(4) }, (_, n) => ({
      callId: `false-${n}`,
      face: "cap" as const,
      namedAs: random.pick(IMPERFECTION_TYPES),
      start: random.uniform(0, 300),
      across: 0,
      on: random.chance(0.5) ? random.pick(CLUTTER) : null,
    })),
    clutter: CLUTTER.slice(0, 4).map((kind) => ({
      clutterId: kind,
      kind,
      face: "cap" as const,
      called: random.chance(0.2),
    })),
    dimensions: [
      { dimension: "cap-height", station: null, written: 2 + random.uniform(-0.4, 0.4), actual: 2 },
      { dimension: "weld-width", station: null, written: null, actual: 14 },
    ],
    questions: Array.from({ length: 10 }, (_, n) => ({
      question: `question-${n}`,
      kind: `kind-${random.integer(30)}`,
      key: 1,
      written: random.integer(4),
    })),
    pieceSentence: "right",
  };
}

function truthOf(random: RandomStream, n: number): SectionObservations["truths"][number] {
  const type = random.pick(IMPERFECTION_TYPES);
  const found = random.chance(0.7);
  const [start, value] = [random.uniform(0, 280), random.logNormal(1, 0.6)];
  const isSized = found && imperfection(type).size !== null;
  const difference = (by: number) => (found ? Math.round(1000 * random.uniform(-by, by)) / 1000 : null);
  return {
    truthId: `truth-${n}`,
    type,
    face: "cap",
    start,
    end: start + 10,
    across: 0,
    size: value,
    eye: { measure: "size", value },
    difficulty: 0,
    neutral: random.chance(0.1),
    found,
    placed: found ? 1 : 0,
    order: found ? n + 1 : null,
    namedAs: found ? (random.chance(0.8) ? type : random.pick(IMPERFECTION_TYPES)) : null,
    sizeWritten: isSized ? value : null,
    sizeError: isSized ? difference(0.3) : null,
    startError: difference(2),
    endError: difference(2),
    acrossError: difference(1),
    sentence: found ? "right" : null,
  };
}
