import { setImmediate as breathe } from "node:timers/promises";
import {
  iso,
  isoOrNull,
  type KnownPiece,
  RECORD_FORMAT,
  RECORD_VERSION,
  type RecordPart,
  recordedPiece,
  recordedProgress,
  recordedSitting,
} from "@/lib/record";
import { packTrail } from "@/lib/trail";
import { describeJoint } from "@/lib/weld";
import type { Person } from "@/lib/workshop";
import { learnerAccount } from "@/lib/xapi";
import { listMembershipsOf } from "@/prisma/stores/classes";
import { listAllDrillRounds } from "@/prisma/stores/drill-rounds";
import { readErasureRequest } from "@/prisma/stores/erasure";
import { listEyeRounds } from "@/prisma/stores/eye-rounds";
import { readHandedInPractice, readPractice } from "@/prisma/stores/practices";
import { readLearnerTally } from "@/prisma/stores/progress";
import { listSessions } from "@/prisma/stores/sessions";
import { listSetDrillIds } from "@/prisma/stores/set-drills";
import { readViewTrail } from "@/prisma/stores/view-trails";
import { readWorkshop } from "@/prisma/stores/workshops";
import { workshopPlace } from "@/prisma/xapi-outbox";
import { buildTallies } from "../progress/build";
import { logOf } from "./log-of";
import { type OwnPiece, piecesOf } from "./pieces-of";

/** Whose record, for whom: a learner's own, or for a tutor with the classes that they may read of. */
export interface RecordAsked {
  readonly person: Person;
  /** Null for the person's own. */
  readonly classIds: readonly string[] | null;
  readonly now: Date;
}

/**
 * Everything kept of somebody that whoever asks may know, part by part: pieces are read one after the other, with a breath
 * between, so that hundreds of them hold nobody else up.
 */
export async function* recordParts(asked: RecordAsked): AsyncGenerator<RecordPart> {
  const { person, classIds, now } = asked;
  const isOwn = classIds === null;
  await buildTallies(person.id);
  const [workshop, memberships, sessions, rounds, eyeRounds, { tally }, askedAt, own] = await Promise.all([
    readWorkshop(),
    listMembershipsOf(person.id),
    isOwn ? listSessions(person.id, now) : [],
    isOwn ? listAllDrillRounds(person.id) : [],
    eyeRoundsFor(asked),
    readLearnerTally(person.id),
    readErasureRequest(person.id),
    piecesOf(asked),
  ]);
  const place = workshopPlace();
  const classes = memberships.filter(({ id }) => isOwn || classIds.includes(id));
  yield { field: "format", value: RECORD_FORMAT };
  yield { field: "version", value: RECORD_VERSION };
  yield { field: "madeAt", value: iso(now) };
  yield { field: "madeFor", value: isOwn ? "learner" : "tutor" };
  yield { field: "workshop", value: { name: workshop?.name ?? "", address: place.home } };
  const { id, name, signInName, role, createdAt } = person;
  yield {
    field: "person",
    value: {
      id,
      name,
      signInName,
      role,
      createdAt: iso(createdAt),
      xapiAccountName: learnerAccount(place, id).account.name,
      askedToBeErasedAt: isoOrNull(askedAt),
    },
  };
  yield { field: "leftOut", value: leftOut(own.pieces, isOwn, memberships.length - classes.length) };
  yield {
    field: "classes",
    value: classes.map(({ joinedAt, leftAt, ...rest }) => ({
      ...rest,
      joinedAt: iso(joinedAt),
      leftAt: isoOrNull(leftAt),
    })),
  };
  yield {
    field: "devices",
    value: sessions.map(({ since, userAgent, address }) => ({
      signedInSince: iso(since),
      browser: userAgent,
      networkAddress: address,
    })),
  };
  yield { field: "sittings", value: own.sittings.map(recordedSitting) };
  yield { begins: "pieces" };
  for (const piece of own.pieces) {
    const value = await pieceOf(piece, isOwn);
    if (value) yield { list: "pieces", value };
    await breathe();
  }
  yield {
    field: "drillRounds",
    value: rounds.map(({ gauges, medianError, finishedAt, ...round }) => ({
      ...round,
      gauges: [...gauges],
      medianErrorMm: medianError,
      finishedAt: iso(finishedAt),
    })),
  };
  yield {
    field: "eyeRounds",
    value: eyeRounds.map(({ id, drill, naming, isTimed, begunAt, finishedAt, results }) => ({
      id,
      drill,
      naming,
      isTimed,
      begunAt: iso(begunAt),
      finishedAt: iso(finishedAt),
      tasks: results.map(({ error, ...result }) => ({ ...result, errorMm: error })),
    })),
  };
  yield { field: "progress", value: recordedProgress(tally) };
  yield { field: "log", value: await logOf(person.id, own, isOwn) };
}

/** A tutor knows the rounds of drills that were set in their classes; the rest was promised to the learner alone. */
async function eyeRoundsFor({ person, classIds }: RecordAsked) {
  const rounds = await listEyeRounds(person.id);
  if (classIds === null) return rounds;
  const set = new Set(await listSetDrillIds(classIds));
  return rounds.filter(({ setDrillId }) => setDrillId !== null && set.has(setDrillId));
}

async function pieceOf({ practiceId, isKnown }: OwnPiece, isOwn: boolean) {
  const handedIn = isKnown ? await readHandedInPractice(practiceId) : null;
  const practice = handedIn?.practice ?? (await readPractice(practiceId));
  if (!practice) return null;
  const trail = isOwn || handedIn ? await readViewTrail(practiceId) : null;
  const known: KnownPiece | null = handedIn && {
    joint: describeJoint(handedIn.truth.joint),
    generatorVersion: handedIn.generatorVersion,
    truths: handedIn.truth.items,
    sections: handedIn.sections,
  };
  return recordedPiece({
    practice,
    // a report that is still being written is the learner's own
    withReport: isOwn || handedIn !== null,
    known,
    trail: trail && packTrail(trail),
  });
}

function leftOut(pieces: readonly OwnPiece[], isOwn: boolean, otherClasses: number): string[] {
  const isVoid = (piece: OwnPiece) => piece.isVoid && !piece.isKnown;
  const ofVoid = pieces.filter(isVoid).length;
  const unknown = pieces.filter((piece) => piece.isHandedIn && !piece.isKnown && !isVoid(piece)).length;
  const open = pieces.filter((piece) => !piece.isHandedIn && !isVoid(piece)).length;
  return [
    unknown > 0 &&
      `Marks and answers of ${unknown} handed-in pieces: their sitting is not over, or its marks are not released.`,
    ofVoid > 0 && `Marks and answers of ${ofVoid} pieces of sections that are void: they do not count.`,
    open > 0 && isOwn && `What there is to find on ${open} pieces that are not handed in.`,
    open > 0 && !isOwn && `Reports and answers of ${open} pieces that are not handed in.`,
    otherClasses > 0 && "Classes of other tutors, and what was sat in them.",
    !isOwn && "Where the learner is signed in.",
    !isOwn && "Rounds of drills, except for those that were set in a class of yours: they are the learner's own.",
    "Rounds of drills for the eye that were not finished.",
    "What is reckoned from all this: what to inspect next, and the piece that is kept for it, of which it would tell what is on it.",
    "Statements that wait for a record store: they say the same again.",
    "The password, which nobody can read.",
  ].filter((sentence) => typeof sentence === "string");
}
