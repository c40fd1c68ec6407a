import { asked } from "@/lib/questions";
import { readQuestions } from "@/prisma/stores/practices";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { factsOf } from "../joint-facts";
import { followProgress } from "./follow-progress";

/**
 * The caller's practice with how far its piece is, and what a drawing would say of the joint; that is null while the piece
 * is not made. Nothing else of the truth leaves. Once the report is closed the questions go with it, without their keys.
 */
export async function openBench(caller: Caller, id: string, specimens: SpecimenSource) {
  const followed = await followProgress(caller, id, specimens);
  if (!followed.ok) return followed;
  const made = followed.plate.state === "made" ? await readTruth(followed.practice.specimenId) : null;
  const questions = followed.practice.reportClosedAt ? (await readQuestions(id)).map(asked) : null;
  return { ...followed, questions, joint: made && factsOf(made.truth) };
}
