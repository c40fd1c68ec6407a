import type { ImperfectionType } from "@/lib/imperfections";
import { addPieceTallies, EMPTY_PIECE_TALLY, type PieceTally } from "@/lib/progress";
import { MARKED_SECTIONS, type MarkedSection } from "@/lib/results";
import { listMembers } from "@/prisma/stores/classes";
import { type LearnerCounts, readCountsOf, type TypeCounts } from "@/prisma/stores/progress";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";

const NONE: LearnerCounts = { isCurrent: true, sections: {}, types: {} };

/**
 * How everybody in a class gets on, for its tutors, and the class together. It reads tallies and nothing else, so that it opens
 * as fast after years; whoever's are being built anew is there with what there is, and counted in `beingBuilt`.
 */
export async function readClassProgress(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const counts = await readCountsOf(members.map(({ person }) => person.id));
  const learners = members.map(({ person: { id, name } }) => ({ person: { id, name }, ...(counts.get(id) ?? NONE) }));
  return {
    ok: true,
    group: own.group,
    learners,
    beingBuilt: learners.filter(({ isCurrent }) => !isCurrent).length,
    together: { sections: sectionsTogether(learners), types: typesTogether(learners) },
  } as const;
}

function sectionsTogether(learners: readonly LearnerCounts[]): LearnerCounts["sections"] {
  const sums: { [section in MarkedSection]?: PieceTally } = {};
  for (const section of MARKED_SECTIONS) {
    const all = learners.flatMap(({ sections }) => sections[section] ?? []);
    if (all.length > 0) sums[section] = all.reduce(addPieceTallies, EMPTY_PIECE_TALLY);
  }
  return sums;
}

function typesTogether(learners: readonly LearnerCounts[]): LearnerCounts["types"] {
  const sums: { [type in ImperfectionType]?: TypeCounts } = {};
  for (const { types } of learners) {
    for (const [type, { total, found, namedRight }] of Object.entries(types) as [ImperfectionType, TypeCounts][]) {
      const sum = sums[type] ?? { total: 0, found: 0, namedRight: 0 };
      sums[type] = {
        total: sum.total + total,
        found: sum.found + found,
        namedRight: sum.namedRight + namedRight,
      };
    }
  }
  return sums;
}
