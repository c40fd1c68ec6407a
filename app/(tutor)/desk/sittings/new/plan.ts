import type { DueInClass } from "@/app/_server/sitting-views";
import type { Section } from "@/lib/results";
import type { Paper } from "@/lib/sittings";

export interface Choices {
  readonly classes: readonly {
    readonly id: string;
    readonly name: string;
    readonly members: readonly { readonly id: string; readonly name: string; readonly timeFactor: number }[];
  }[];
  readonly papers: readonly { readonly id: string; readonly paper: Paper }[];
  readonly dues: readonly DueInClass[];
}

export type Who = "class" | "chosen" | "due";

/** A sitting as it is being planned. */
export interface Plan {
  readonly classId: string;
  readonly paperId: string;
  readonly who: Who;
  /** Ids of members. */
  readonly chosen: ReadonlySet<string>;
  /** Ids of those with something due. */
  readonly chosenDue: ReadonlySet<string>;
  readonly sections: ReadonlySet<Section>;
  /** As the field for day and time has it; empty where nothing is filled in. */
  readonly plannedAt: string;
}

interface Asked {
  readonly classId: string | null;
  readonly paperId: string | null;
  readonly isDue: boolean;
  readonly plannedAt?: string;
}

/** A plan to begin with: everybody, or all who have something due where that is asked for, and every section. */
export function planOf({ classes, papers, dues }: Choices, asked: Asked): Plan {
  const group = classes.find(({ id }) => id === asked.classId) ?? classes[0];
  const kept = papers.find(({ id }) => id === asked.paperId) ?? papers[0];
  const due = dues.find((one) => one.classId === group.id && one.paperId === kept.id);
  return {
    classId: group.id,
    paperId: kept.id,
    who: asked.isDue && due ? "due" : "class",
    chosen: new Set(),
    chosenDue: new Set(due?.learners.map(({ id }) => id)),
    sections: new Set(kept.paper.sections.map(({ section }) => section)),
    plannedAt: asked.plannedAt ?? "",
  };
}

/** Somebody who is expected, with what they sit. */
export interface Expected {
  readonly id: string;
  readonly name: string;
  readonly timeFactor: number;
  readonly sections: readonly Section[];
}

/** Who would be expected at a sitting. */
export function expectedOf(
  { who, chosen, chosenDue, sections }: Plan,
  { members }: Choices["classes"][number],
  paper: Paper,
  due: DueInClass | undefined,
): readonly Expected[] {
  const asked = paper.sections.map(({ section }) => section).filter((section) => sections.has(section));
  return members
    .map((member) => {
      if (who === "class") return { ...member, sections: asked };
      if (who === "chosen") return { ...member, sections: chosen.has(member.id) ? asked : [] };
      const own = due?.learners.find(({ id }) => id === member.id)?.sections ?? [];
      const isAsked = (one: Section) => chosenDue.has(member.id) && own.some(({ section }) => section === one);
      return { ...member, sections: asked.filter(isAsked) };
    })
    .filter((one) => one.sections.length > 0);
}

/** The plan as it is sent, or what is missing in words. */
export function writtenPlan(
  { classId, paperId, who, chosen, chosenDue, sections, plannedAt }: Plan,
  paper: Paper,
): object | string {
  const at = new Date(plannedAt);
  if (Number.isNaN(at.getTime())) return "Fill in the day and the time of the sitting. Nothing was planned yet.";
  return {
    classId,
    paperId,
    plannedAt: at.toISOString(),
    who: who === "due" ? "due" : "class",
    ...(who === "chosen" && { learnerIds: [...chosen] }),
    ...(who === "due" && { learnerIds: [...chosenDue] }),
    ...(sections.size < paper.sections.length && { sections: [...sections] }),
  };
}
