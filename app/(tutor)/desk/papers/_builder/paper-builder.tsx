"use client";

import { useEffect, useId, useMemo, useRef, useState } from "react";
import { PaperCautions } from "@/app/_papers/paper-cautions";
import { PaperFront } from "@/app/_papers/paper-front";
import { Button } from "@/app/_ui/button";
import { LeftBehind } from "@/app/_ui/left-behind";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { useKeptDraft } from "@/app/_ui/use-kept-draft";
import type { CriteriaGroup } from "@/lib/criteria";
import { SECTIONS, type Section } from "@/lib/results";
import { defaultPaper, type Paper } from "@/lib/sittings";
import { draftOf, draftOfSection, type PaperDraft, readDraft, type SectionDraft } from "./draft";
import { ProblemLines, ProblemsAtFields, useField } from "./problems";
import { RulesCard } from "./rules-card";
import { SaveBar } from "./save-bar";
import { SectionCard } from "./section-card";
import { type Kept, type Sent, sendPaper } from "./send-paper";
import { useLeaveWarning } from "./use-leave-warning";

interface PaperBuilderProps {
  readonly first: Paper;
  /** Null for a paper that is not saved yet. */
  readonly firstKept: Kept | null;
  /** Whether a sitting uses the version that `firstKept` is. */
  readonly isUsed: boolean;
  /** Whether it is put away, so that it cannot be saved. */
  readonly isAway: boolean;
  /** Whether it was made this moment of what a class misses. */
  readonly isOfClass?: boolean;
  readonly criteria: readonly CriteriaGroup[];
}

/** A paper while it is written: as its learners will read it, with every number and choice open to change. */
export function PaperBuilder({ first, firstKept, isUsed, isAway, isOfClass = false, criteria }: PaperBuilderProps) {
  const start = useMemo(() => draftOf(first), [first]);
  const [draft, setDraft] = useState(start);
  const [kept, setKept] = useState(firstKept);
  /** The draft as it was saved last, or as the page began. */
  const [saved, setSaved] = useState<PaperDraft>(start);
  const [left, setLeft] = useState<ReadonlySet<string> | null>(new Set());
  const [sent, setSent] = useState<Sent | null>(null);
  const [isSending, setIsSending] = useState(false);
  const [isPreview, setIsPreview] = useState(false);
  const [tries, setTries] = useState(0);
  const form = useRef<HTMLDivElement>(null);

  const read = useMemo(() => readDraft(draft), [draft]);
  const problems = read.ok && sent && !sent.ok ? sent.problems : read.problems;
  const isUnsaved = draft !== saved;
  const { left: leftBehind, drop } = useKeptDraft(
    `toeline-paper-1-${kept?.id ?? "new"}`,
    isUnsaved ? draft : null,
    kept?.seen ?? null,
  );
  useLeaveWarning(isUnsaved);

  const change = (changes: Partial<PaperDraft>) => {
    setDraft({ ...draft, ...changes });
    setSent((now) => (now && !now.ok ? { ...now, problems: {} } : null));
  };
  const changeSection = (at: number, section: SectionDraft) =>
    change({ sections: draft.sections.map((one, n) => (n === at ? section : one)) });

  const showProblems = () => {
    setLeft(null);
    setTries(tries + 1);
  };
  // after a try that found something wrong, to the first field that is
  useEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [tries]);

  const save = async (over: Kept | null) => {
    if (isSending) return;
    setSent(null);
    if (!read.ok) return showProblems();
    setIsSending(true);
    const answer = await sendPaper(draft, over);
    setIsSending(false);
    setSent(answer);
    if (!answer.ok) {
      if (Object.keys(answer.problems).length > 0) showProblems();
      return;
    }
    setKept(answer.kept);
    setSaved(draft);
    setLeft(new Set());
    drop();
    window.history.replaceState(null, "", `/desk/papers/${answer.kept.id}`);
  };

  const preview = () => {
    if (read.ok) setIsPreview(!isPreview);
    else showProblems();
  };
  const missing = SECTIONS.filter((section) => draft.sections.every((one) => one.section !== section));
  const bar = (
    <SaveBar
      kept={kept}
      sent={sent}
      isUsed={isUsed && kept?.number === firstKept?.number}
      isUnsaved={isUnsaved}
      isSending={isSending}
      wrong={left === null && !read.ok ? Object.keys(read.problems).length : 0}
      isPreview={isPreview}
      onSave={save}
      onPreview={preview}
    />
  );
  if (isPreview && read.ok) {
    return (
      <PageFrame title={read.paper.name} isWide>
        <div className="mt-4 grid gap-4">
          <Notice isGood>
            This is how a learner reads the front page{isUnsaved ? ", with what you have not saved yet" : ""}.
          </Notice>
          <PaperFront paper={read.paper} criteria={namesOf(read.paper, criteria)} />
          {bar}
        </div>
      </PageFrame>
    );
  }
  return (
    <ProblemsAtFields
      problems={problems}
      left={left}
      leave={(field) => setLeft((now) => now && new Set([...now, field]))}
    >
      <PageFrame
        title={kept ? draft.name : "New paper"}
        lead="It reads as your learners will read it; change every number and choice where it stands."
        isWide
      >
        <div ref={form} className="mt-5 grid min-w-0 gap-4 [&_:is(input,select,button)]:scroll-mb-44">
          {isAway && (
            <Notice isGood>This paper is put away: take it back on the list of papers before you change it.</Notice>
          )}
          {isOfClass && (
            <Notice isGood>
              Made of what the class misses. Look it over and change what you like; then plan a sitting of it on the
              desk.
            </Notice>
          )}
          {leftBehind && (
            <LeftBehind
              notDone="saved"
              onTakeUp={() => {
                setDraft(leftBehind.draft);
                if (kept && leftBehind.seen) setKept({ ...kept, seen: leftBehind.seen });
                drop();
              }}
              onDrop={drop}
            />
          )}
          <NameLine name={draft.name} onChange={(name) => change({ name })} />
          {draft.sections.map((section, at) => (
            <SectionCard
              key={section.section}
              draft={section}
              at={at}
              criteria={criteria}
              onChange={(changed) => changeSection(at, changed)}
              onMoveUp={at > 0 ? () => change({ sections: movedUp(draft.sections, at) }) : undefined}
              onTakeOut={
                draft.sections.length > 1
                  ? () => change({ sections: draft.sections.filter((_, n) => n !== at) })
                  : undefined
              }
            />
          ))}
          {missing.map((section) => (
            <div key={section}>
              <Button look="quiet" onClick={() => change({ sections: [...draft.sections, newSection(section)] })}>
                Add a {SECTION_WORDS[section]}
              </Button>
            </div>
          ))}
          <RulesCard draft={draft} onChange={change} />
          {bar}
        </div>
        <PaperCautions />
      </PageFrame>
    </ProblemsAtFields>
  );
}

function NameLine({ name, onChange }: { readonly name: string; readonly onChange: (name: string) => void }) {
  const id = useId();
  const control = useField("name");
  return (
    <div className="grid max-w-2xl gap-1">
      <label htmlFor={id} className="font-medium text-sm">
        Name of the paper
      </label>
      <input
        {...control}
        id={id}
        value={name}
        autoComplete="off"
        onChange={(event) => onChange(event.target.value)}
        className="h-11 w-full rounded border border-ink-2 bg-white px-3 font-medium aria-invalid:border-2 aria-invalid:border-missed"
      />
      <ProblemLines of={{ name: "Name" }} />
    </div>
  );
}

function newSection(section: Section): SectionDraft {
  const [found] = defaultPaper().sections.filter((one) => one.section === section);
  return draftOfSection(found);
}

const movedUp = <T,>(list: readonly T[], at: number): readonly T[] => [
  ...list.slice(0, at - 1),
  list[at],
  list[at - 1],
  ...list.slice(at + 1),
];

/** What the criteria of each section are called. */
function namesOf({ sections }: Paper, groups: readonly CriteriaGroup[]): Partial<Record<Section, string>> {
  const sets = groups.flatMap((group) => group.sets);
  return Object.fromEntries(
    sections.map(({ section, criteriaId }) => {
      const set = sets.find(({ id }) => id === criteriaId);
      return [section, set ? `${set.name}, ${set.edition}` : criteriaId];
    }),
  );
}
