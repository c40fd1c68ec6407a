import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { Reason } from "@/lib/progress";

const named = (type: ImperfectionType): string => imperfection(type).name.toLowerCase();
const listed = (types: readonly ImperfectionType[]): string => types.map(named).join(" and ");

/** Why a piece was chosen, in one sentence to the learner. It tells what is on the piece. */
export function reasonWords(reason: Reason): string {
  switch (reason.kind) {
    case "clean":
      return "This piece had nothing to report: about every fifth has, so that a sound weld is left alone.";
    case "warm-up":
      return "This was one of your first pieces, chosen to see what you find.";
    case "new":
      return `This piece was chosen because ${listed(reason.types)} had not been on any of yours before.`;
    case "weak":
      return `This piece was chosen because you found ${named(reason.type)} too seldom.`;
    case "due":
      return `This piece was chosen because it was time to meet ${named(reason.type)} again.`;
    case "look-alikes":
      return `This piece was chosen because it has ${listed(reason.pair)}, which are easily taken for each other.`;
    case "uncertain":
      return `This piece was chosen because little was known yet of how you do with ${named(reason.type)}.`;
    case "change":
      return "This piece was chosen because it has other kinds than the one before it.";
  }
}

/** The types that the sentence names. */
export function typesNamed(reason: Reason): readonly ImperfectionType[] {
  switch (reason.kind) {
    case "new":
      return reason.types;
    case "look-alikes":
      return reason.pair;
    case "weak":
    case "due":
    case "uncertain":
      return [reason.type];
    default:
      return [];
  }
}
