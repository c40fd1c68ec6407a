import { setImmediate as breathe } from "node:timers/promises";
import { countingAnswers, pooledQuestions, wholeTally } from "@/lib/progress";
import type { QuestionLine } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { learnerAccount } from "@/lib/xapi";
import { countKept, eraseLearner as erase, type KeptOfLearner, readErasureRequest } from "@/prisma/stores/erasure";
import { isSittingOn } from "@/prisma/stores/file-care";
import { readLearnerTally } from "@/prisma/stores/progress";
import { readMarkings } from "@/prisma/stores/reviews";
import { listCountedAttempts } from "@/prisma/stores/xapi";
import { workshopPlace } from "@/prisma/xapi-outbox";
import type { Caller } from "../caller";
import { requireOwnLearner } from "../permissions";
import { buildTallies } from "../progress/build";
import { refuse } from "../refusal";
import { auditEntry } from "../sittings/audit-entry";

/** So many marked sections are read at once. */
const AT_ONCE = 10;

/** What goes and what stays if a learner is erased, in numbers. */
export async function previewErasure(caller: Caller, learnerId: string) {
  const own = await requireOwnLearner(caller, learnerId);
  if (!own.ok) return own;
  const { learner, actor } = own;
  await buildTallies(learner.id);
  const [kept, askedAt, { tally }, isOn] = await Promise.all([
    countKept(learner.id, actor.id),
    readErasureRequest(learner.id),
    readLearnerTally(learner.id),
    isSittingOn(),
  ]);
  const { pieces, types } = wholeTally(tally);
  return {
    ok: true,
    learner,
    askedAt,
    goes: kept,
    /** Why it cannot be done now. */
    hindrance: hindranceOf(kept, isOn),
    stays: {
      sections: pieces.pieces,
      imperfections: Object.values(types).reduce((sum, { total }) => sum + total, 0),
      answers: Object.values(pieces.questions).reduce((sum, { total }) => sum + total, 0),
    },
    /** By which a record store knows the learner; null where none is told of anybody. */
    recordStoreName: process.env.XAPI_ENDPOINT ? learnerAccount(workshopPlace(), learner.id).account.name : null,
  } as const;
}

/**
 * Erases a learner for good, once their sign-in name was typed as a confirmation. Nothing while a section of theirs is being sat or
 * its marks are not released, which may be another tutor's, nor while any sitting is on, which it would hold up. What they did is added to what is kept of everybody erased, and an audit entry says when and by whom, not who.
 */
export async function eraseLearner(caller: Caller, learnerId: string, input: { readonly signInName?: string }) {
  const own = await requireOwnLearner(caller, learnerId);
  if (!own.ok) return own;
  const { learner, actor } = own;
  if (input.signInName?.trim().toLowerCase() !== learner.signInName) return refuse("name-differs");
  const kept = await countKept(learner.id, actor.id);
  const hindrance = hindranceOf(kept, await isSittingOn());
  if (hindrance) return refuse(hindrance);
  await buildTallies(learner.id);
  const details = { practices: kept.handedIn + kept.open, sections: kept.sections };
  const became = await erase({
    person: learner,
    questions: pooledQuestions(await questionsOf(learner.id)),
    audit: auditEntry(actor, caller.clock(), "erase-learner", { kind: "person", id: "erased" }, details),
  });
  if (became === "erased") return { ok: true } as const;
  return refuse(became === "gone" ? "no-such-learner" : became);
}

function hindranceOf({ beingSat, unreleased }: KeptOfLearner, isOn: boolean) {
  if (beingSat > 0) return "being-sat";
  if (isOn) return "sitting-on";
  return unreleased > 0 ? "marks-unreleased" : null;
}

/** The answers that count of everything that counts of a learner, section by section: those that their tally adds up. */
async function questionsOf(learnerId: string): Promise<readonly (readonly QuestionLine[])[]> {
  const ids = await listCountedAttempts(learnerId, null);
  const found: (readonly QuestionLine[])[] = [];
  for (let from = 0; from < ids.length; from += AT_ONCE) {
    const markings = await readMarkings(ids.slice(from, from + AT_ONCE));
    found.push(...markings.map(({ first, acts }) => countingAnswers(reviewed(first, acts)).map(({ line }) => line)));
    await breathe();
  }
  return found;
}
