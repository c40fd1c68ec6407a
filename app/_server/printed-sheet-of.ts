import type { PrintedSheet, Work } from "@/lib/printing";
import { reviewed } from "@/lib/review";
import { describeJoint } from "@/lib/weld";
import type { Person } from "@/lib/workshop";
import type { HandedInPractice } from "@/prisma/stores/practices";

/** A handed-in practice with everything that its files say of it. */
export function printedSheetOf(
  { practice, truth, sections }: HandedInPractice,
  { name, signInName }: Pick<Person, "name" | "signInName">,
  work: Work,
): PrintedSheet {
  const { id, startedAt, handedInAt, criteria, report } = practice;
  if (!handedInAt) throw new Error(`practice ${id} was handed in at no time`);
  const reviews = sections.map(({ result, acts }) => reviewed(result, acts));
  return {
    practiceId: id,
    learner: { name, signInName },
    work,
    startedAt,
    handedInAt,
    joint: describeJoint(truth.joint),
    criteria: criteria && `${criteria.name} (${criteria.edition})`,
    sections: reviews.map(({ base }) => base),
    reviews,
    truths: truth.items,
    calls: report.calls,
  };
}
