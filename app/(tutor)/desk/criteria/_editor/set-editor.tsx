"use client";

import Link from "next/link";
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { LeftBehind } from "@/app/_ui/left-behind";
import { NewerKept } from "@/app/_ui/newer-kept";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { useKeptDraft } from "@/app/_ui/use-kept-draft";
import { builtInCriteria, type Problem } from "@/lib/criteria";
import { CHANGE_LEAD, CriteriaPage, NEW_CRITERIA } from "../criteria-page";
import { type Draft, isOfRow, problemText, readDraft, soundCriteria } from "./draft";
import { TextLine } from "./fields";
import { FileLinks } from "./file-links";
import { ProblemsAtFields } from "./problems";
import { RowList } from "./row-list";
import { type Kept, type Sent, sendCriteria } from "./send-criteria";
import { TryIt } from "./try-it";

interface SetEditorProps {
  readonly first: Draft;
  /** Null for a set that is not stored yet. */
  readonly firstKept: Kept | null;
  /** What there is to say of the set above it. */
  readonly notice?: ReactNode;
}

/** The page of one set while it is written: what it is called, its rows, and on the side what it says of an imperfection. */
export function SetEditor({ first, firstKept, notice }: SetEditorProps) {
  const [draft, setDraft] = useState(first);
  const [kept, setKept] = useState(firstKept);
  /** The draft as it was stored last; a new set has none. */
  const [stored, setStored] = useState<Draft | null>(firstKept ? first : null);
  const [open, setOpen] = useState<number | null>(firstKept ? null : (first.rows[0]?.key ?? null));
  const [left, setLeft] = useState<ReadonlySet<string> | null>(new Set());
  const [sent, setSent] = useState<Sent | null>(null);
  const [isSending, setIsSending] = useState(false);
  const [tries, setTries] = useState(0);
  const form = useRef<HTMLDivElement>(null);

  const read = useMemo(() => readDraft(draft), [draft]);
  const sound = useMemo(() => soundCriteria(draft), [draft]);
  const refused = sent && !sent.ok ? sent.problems : [];
  const problems: readonly Problem[] = read.ok ? refused : read.problems;
  const isUnstored = draft !== stored && draft !== first;
  const { left: leftBehind, drop } = useKeptDraft(
    `toeline-criteria-1-${kept?.id ?? "new"}`,
    isUnstored ? draft : null,
    kept?.seen ?? null,
  );

  const change = (next: Draft) => {
    setDraft(next);
    setSent((now) => (now?.ok ? null : now && { ...now, problems: [] }));
  };

  const store = async (over: Kept | null) => {
    if (isSending) return;
    if (!read.ok) {
      setLeft(null);
      const row = Number(/^rows (\d+)/.exec(read.problems[0].field)?.[1] ?? 0);
      if (row > 0) setOpen(draft.rows[row - 1].key);
      setTries(tries + 1);
      setSent(null);
      return;
    }
    setIsSending(true);
    const answer = await sendCriteria(draft, over);
    setIsSending(false);
    setSent(answer);
    if (!answer.ok) return;
    setKept(answer.kept);
    setStored(draft);
    setLeft(new Set());
    drop();
    window.history.replaceState(null, "", `/desk/criteria/${answer.kept.id}`);
  };

  // after a try that found something wrong, to the first field that is
  useEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [tries]);

  const base = draft.basedOn === null ? null : (builtInCriteria(draft.basedOn) ?? null);
  const leftOut = draft.rows.flatMap((_, n) =>
    read.ok || !read.problems.some((one) => isOfRow(one, n + 1)) ? [] : [n + 1],
  );
  const hasTried = left === null && !read.ok;
  return (
    <CriteriaPage title={stored?.name ?? NEW_CRITERIA.title} lead={stored ? CHANGE_LEAD : NEW_CRITERIA.lead}>
      {notice}
      <ProblemsAtFields
        problems={problems}
        left={left}
        leave={(field) => setLeft((now) => now && new Set([...now, field]))}
      >
        <div
          ref={form}
          className="mt-4 grid items-start gap-4 lg:grid-cols-[minmax(0,1fr)_22rem] [&_:is(input,select,textarea,button)]:scroll-mb-44"
        >
          <div className="grid min-w-0 gap-4">
            {leftBehind && (
              <LeftBehind
                notDone="stored"
                onTakeUp={() => {
                  setDraft(leftBehind.draft);
                  if (kept && leftBehind.seen) setKept({ ...kept, seen: leftBehind.seen });
                  drop();
                }}
                onDrop={drop}
              />
            )}
            <Sheet title="The set">
              <div className="mt-3 grid gap-3">
                <div className="grid gap-3 sm:grid-cols-2">
                  <TextLine
                    fields={["name"]}
                    label="Name"
                    value={draft.name}
                    onChange={(name) => change({ ...draft, name })}
                  />
                  <TextLine
                    fields={["edition"]}
                    label="Document and edition"
                    hint="As it should be quoted, such as “Workshop sheet 4 of March 2026”."
                    value={draft.edition}
                    onChange={(edition) => change({ ...draft, edition })}
                  />
                </div>
                <TextLine
                  fields={["notes"]}
                  label="Notes"
                  isLong
                  value={draft.notes}
                  onChange={(notes) => change({ ...draft, notes })}
                />
                <p className="text-sm">
                  {base ? (
                    <>
                      It builds on <strong>{base.name}</strong>, {base.edition}. What your rows speak of, an
                      imperfection on a face, goes by your rows alone, also at thicknesses that they leave out.
                      Everything else goes by that set.
                    </>
                  ) : (
                    "It builds on no other set: what no row speaks of has no limit, and is never accepted."
                  )}
                </p>
              </div>
            </Sheet>
            <RowList
              draft={draft}
              base={base}
              open={open}
              problems={left === null ? problems : []}
              onOpen={setOpen}
              onChange={change}
            />
            <div className="sticky bottom-0 z-10 grid gap-3 rounded-md border border-line bg-sheet p-4 shadow-md">
              {hasTried && (
                <Notice>
                  {read.problems.length === 1 ? "One thing has" : `${read.problems.length} things have`} to be put
                  right, so nothing was stored. What you wrote stands as it is; look for what is marked.
                  {read.problems
                    .filter(({ field }) => field === "" || field === "rows" || field.startsWith("sections"))
                    .map((problem) => ` ${problem.field || "The set"}: ${problemText(problem)}`)}
                </Notice>
              )}
              {sent && !sent.ok && (
                <Notice>
                  {sent.message}
                  {sent.problems.map((problem) => ` ${problem.field || "The set"}: ${problemText(problem)}`)}
                </Notice>
              )}
              {sent && !sent.ok && sent.newer !== null && kept && (
                <NewerKept
                  href={`/desk/criteria/${kept.id}`}
                  at={sent.newer}
                  look="Look at the newer ones"
                  inPlace="Store mine in their place"
                  asOwn="Store mine as a set of its own"
                  onInPlace={() => store({ id: kept.id, seen: sent.newer as string })}
                  onAsOwn={() => store(null)}
                />
              )}
              <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
                <Button onClick={() => store(kept)} disabled={isSending}>
                  {isSending ? "Storing…" : "Store"}
                </Button>
                <span className="text-sm" role="status">
                  {isUnstored && "Not stored yet."}
                  {sent?.ok && !isUnstored && "Stored. Practices begun before keep the criteria they began with."}
                </span>
                <Link
                  href="/desk/criteria"
                  className="ml-auto inline-flex min-h-11 items-center text-action underline underline-offset-4"
                >
                  Back to the sets
                </Link>
              </div>
            </div>
            <Sheet title="As a file">
              <FileLinks draft={draft} own={read.ok ? read.criteria : null} />
            </Sheet>
          </div>
          <div className="min-w-0 lg:sticky lg:top-4 lg:max-h-[calc(100vh-2rem)] lg:overflow-y-auto">
            <Sheet title="Try it">
              <TryIt criteria={sound} leftOut={leftOut} row={draft.rows.find(({ key }) => key === open)} />
            </Sheet>
          </div>
        </div>
      </ProblemsAtFields>
    </CriteriaPage>
  );
}
