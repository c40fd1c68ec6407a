import { countingMark } from "@/lib/practice";
import { analyseSection, itemsOf } from "@/lib/progress";
import { SECTIONS, type Section, shownMark } from "@/lib/results";
import { listMembers } from "@/prisma/stores/classes";
import { readPooledAnswers } from "@/prisma/stores/erasure";
import { listAccounts, listLatestPractices } from "@/prisma/stores/marks";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";
import { satInClass } from "../sittings/sat-sections";

/** An account is large: no more than so many are read, the latest. */
const AT_MOST = 200;

/** What somebody handed a section in for: a paper by its name, or practice. */
export interface Handed {
  readonly key: string;
  readonly section: Section;
  /** Null for practice. */
  readonly paperName: string | null;
}

/**
 * How one section works in a class, for its tutors: its marks, its reliability and its questions, over what was sat of one paper in
 * sittings that are over, or over practice. Without a choice it is the paper that was sat last.
 */
export async function readClassQuestions(caller: Caller, classId: string, chosen: string | null = null) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const sat = (await satInClass(classId, caller.clock())).filter(({ isVoid }) => !isVoid);
  const papers = new Map<string, Handed & { practiceIds: string[] }>();
  for (const { paperId, paperName, practiceId, mark } of sat) {
    const section = SECTIONS.find((one) => one === mark.section);
    if (!section) continue;
    const key = `${section} ${paperId}`;
    const paper = papers.get(key) ?? { key, section, paperName, practiceIds: [] };
    paper.practiceIds.push(practiceId);
    papers.set(key, paper);
  }
  const practice = SECTIONS.map((section): Handed => ({ key: `${section}`, section, paperName: null }));
  const choices: readonly Handed[] = [...papers.values(), ...practice];
  const choice = choices.find(({ key }) => key === chosen) ?? choices[0];
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const ids =
    papers.get(choice.key)?.practiceIds.slice(0, AT_MOST) ??
    (await listLatestPractices(
      members.map(({ person }) => person.id),
      choice.section,
      AT_MOST,
    ));
  const accounts = await listAccounts(ids, choice.section);
  const asked = itemsOf(accounts.map(({ result }) => result.questions?.lines ?? [])).map(({ id }) => id);
  const analysis = analyseSection(
    accounts.map(({ practiceId, mark, result, acts }) => {
      const { markThousandths, isPassed } = countingMark(mark);
      return { practiceId, shown: shownMark(markThousandths), passed: isPassed, result, acts };
    }),
    await readPooledAnswers(asked),
  );
  const listed = choices.map(({ key, section, paperName }): Handed => ({ key, section, paperName }));
  return { ok: true, group: own.group, choices: listed, choice, analysis } as const;
}
