import { type ImperfectionType, typesOn } from "@/lib/imperfections";
import type { PieceWish } from "@/lib/progress";
import { JOINT_OF, type Section } from "@/lib/results";
import { DRAWN, type PaperPiece } from "@/lib/sittings";
import { PIECES } from "@/lib/weld";

/** Everything that can be on the piece of a section. */
export const typesIn = (section: Section): readonly ImperfectionType[] => [
  ...new Set(PIECES[JOINT_OF[section]].faces.flatMap(typesOn)),
];

/** A piece for practice as it is wished; its joint is whatever comes. */
export function wishedPiece(section: Section, { isClean, look, isDense, includes, among }: PieceWish): PaperPiece {
  const joint = { process: DRAWN, position: DRAWN, thickness: DRAWN } as const;
  if (isClean) return { blueprint: "clean", ...joint };
  const plate = `${look}-${isDense ? "dense" : "sparse"}`;
  const fillet = isDense ? "practice" : "sparse";
  return { blueprint: section === "plate" ? plate : fillet, ...joint, types: { includes, among } };
}
