import { copyFileSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "libsql";
import { afterAll, afterEach, beforeAll, beforeEach } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { hashPassword } from "@/app/_server/passwords";
import { beginEyeRound } from "@/app/_server/use-cases/begin-eye-round";
import { handIn } from "@/app/_server/use-cases/hand-in";
import type { Criteria } from "@/lib/criteria";
import { closeDatabase, database } from "@/prisma/client";
import { createClass, enrol, setJoinCode } from "@/prisma/stores/classes";
import { createCriteriaSet } from "@/prisma/stores/criteria-sets";
import { createPerson } from "@/prisma/stores/people";
import { createSetDrill } from "@/prisma/stores/set-drills";
import { migrate } from "@/prisma/tools/migrate.mjs";
import { storeDrillPiece } from "../../../support/drill-piece";
import { begunSitting, moment, openRoom, started } from "../sitting-room";
import { CAP_ONLY, openPractice, testSource } from "../workshop";

/**
 * Everybody who could ask, in the order of the columns: nobody who is signed in; kim, whose things they are; ola, who is in her
 * class; finn, a learner of another class; their tutor; and the tutor of finn's class.
 */
export const WHO = ["nobody", "kim", "ola", "finn", "tutor", "stranger"] as const;
/** And newt, who is in kim's class and has yet to choose a password. */
export type Who = (typeof WHO)[number] | "newt";

/** What there is to ask for. */
export interface Names {
  readonly class: string;
  /** Of the tutor as well; it takes learners by a code. */
  readonly evening: string;
  readonly learner: string;
  readonly paper: string;
  readonly criteria: string;
  /** For practice, on kim's bench, and handed in. */
  readonly open: string;
  readonly done: string;
  /** Begun; kim sits her plate: her run, and its practice. */
  readonly sitting: string;
  readonly run: string;
  readonly section: string;
  /** Where kim is signed in. */
  readonly session: string;
  /** A drill that her class is set, and a round of hers with its first task. */
  readonly setDrill: string;
  readonly eyeRound: string;
  readonly eyeTask: string;
}

export const JOIN_CODE = "KMT4RW";
export const OWN_CRITERIA: Criteria = {
  version: 1,
  id: "in-house-1",
  name: "Deck plates",
  edition: "Workshop sheet 4",
  notes: "",
  rows: [
    {
      id: "own-1",
      clause: "1",
      name: "Undercut",
      types: ["continuous-undercut"],
      faces: ["cap"],
      ranges: [],
      limit: { kind: "at-most", quantity: "depth", formula: { constant: 0.3 } },
      sums: [],
      evidence: "own",
      notes: "",
    },
  ],
  sections: [],
};

/** In place of every name: nothing is called that. */
export const MISSING: Names = {
  class: "no-such-id",
  evening: "no-such-id",
  learner: "no-such-id",
  paper: "no-such-id",
  criteria: "no-such-id",
  open: "no-such-id",
  done: "no-such-id",
  sitting: "no-such-id",
  run: "no-such-id",
  section: "no-such-id",
  session: "no-such-id",
  setDrill: "no-such-id",
  eyeRound: "no-such-id",
  eyeTask: "no-such-id",
};

export interface School {
  readonly people: Readonly<Record<Who, Caller>>;
  readonly names: Names;
  /** How often anything was written since the test began, as far as that shows from outside. */
  writes(): unknown;
}

/** The school is made once, and every test begins with a copy of it. */
export function schoolForEachTest(): () => School {
  const folder = mkdtempSync(join(tmpdir(), "toeline-roles-"));
  const made = join(folder, "made.db");
  const copied = join(folder, "copy.db");
  let school: Omit<School, "writes">;
  let watching: Database.Database;

  beforeAll(async () => {
    process.env.DATABASE_URL = `file:${made}`;
    migrate(process.env.DATABASE_URL);
    school = await makeSchool();
    await closeDatabase();
  });
  beforeEach(() => {
    for (const ending of ["", "-wal", "-shm"]) {
      rmSync(copied + ending, { force: true });
      if (existsSync(made + ending)) copyFileSync(made + ending, copied + ending);
    }
    process.env.DATABASE_URL = `file:${copied}`;
    watching = new Database(copied);
  });
  afterEach(async () => {
    watching.close();
    await closeDatabase();
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  // SQLite: "data_version" is another number once another connection has committed something
  return () => ({
    ...school,
    writes: () => Reflect.get(watching.prepare("PRAGMA data_version").get() as object, "data_version"),
  });
}

async function eyeRoundOf(kim: Caller, now: Date): Promise<Pick<Names, "setDrill" | "eyeRound" | "eyeTask">> {
  await createSetDrill({ id: "set-drill", groupId: "class", setById: "tutor", drill: "spot", types: [] }, now);
  await storeDrillPiece("drill-piece", now);
  const choice = { drill: "spot", naming: "four", isTimed: false };
  const begun = await beginEyeRound(kim, choice, null, testSource("of-the-school"));
  if (!begun.ok) throw new Error(begun.code);
  const { id } = await database().eyeTask.findFirstOrThrow({ where: { roundId: begun.id, number: 1 } });
  return { setDrill: "set-drill", eyeRound: begun.id, eyeTask: id };
}

async function makeSchool() {
  const room = await openRoom();
  const now = room.now();
  const passwordHash = await hashPassword("long enough 1");
  const add = async (id: string, hasOneTimeCode: boolean): Promise<Caller> => {
    const person = { id, name: `Name of ${id}`, role: "learner", hasOneTimeCode } as const;
    await createPerson({ ...person, signInName: id, passwordHash }, now);
    return { actor: person, clock: room.now };
  };
  const finn = await add("finn", false);
  const newt = await add("newt", true);
  await createClass({ id: "evening", name: "Evening class", notes: "" }, "tutor", now);
  await setJoinCode("evening", JOIN_CODE);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["newt"] }, now);
  await enrol({ groupId: "other-class", accounts: [], learnerIds: ["finn"] }, now);
  await createCriteriaSet({ basedOn: "iso-5817-2014-c", own: OWN_CRITERIA, ownerId: "tutor", createdAt: now });
  await database().session.create({
    data: { id: "session", token: "session", userId: "kim", expiresAt: moment("23:00") },
  });
  await openPractice(room.kim, "open");
  await handIn(room.kim, await openPractice(room.kim, "done"), { sequence: 1, report: CAP_ONLY });
  const sitting = await begunSitting(room);
  const { runId, practiceId } = await started(sitting, room.kim);
  const { nobody, kim, ola, tutor, stranger } = room;
  const names: Names = {
    class: "class",
    evening: "evening",
    learner: "kim",
    paper: "paper",
    criteria: OWN_CRITERIA.id,
    open: "open",
    done: "done",
    sitting,
    run: runId,
    section: practiceId,
    session: "session",
    ...(await eyeRoundOf(room.kim, now)),
  };
  return { people: { nobody, kim, ola, finn, newt, tutor, stranger }, names };
}
