"use client";

import { useId, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { type CriteriaGroup, type Problem, readCriteriaText } from "@/lib/criteria";
import { CriteriaPage, NEW_CRITERIA } from "../criteria-page";
import { type Draft, draftOf, emptyDraft, withNewRow } from "./draft";
import { SetEditor } from "./set-editor";

interface NewSetProps {
  /** Built-in sets to build on. */
  readonly groups: readonly CriteriaGroup[];
}

/** First what a new set starts from, then the set itself. */
export function NewSet({ groups }: NewSetProps) {
  const [draft, setDraft] = useState<Draft | null>(null);
  if (draft) return <SetEditor first={draft} firstKept={null} />;
  return (
    <CriteriaPage {...NEW_CRITERIA}>
      <div className="mt-4 grid items-start gap-4 lg:grid-cols-2">
        <FromBuiltIn groups={groups} onStart={(basedOn) => setDraft(withNewRow(emptyDraft(basedOn)))} />
        <FromText onStart={setDraft} />
      </div>
    </CriteriaPage>
  );
}

interface FromBuiltInProps extends NewSetProps {
  readonly onStart: (basedOn: string | null) => void;
}

function FromBuiltIn({ groups, onStart }: FromBuiltInProps) {
  const id = useId();
  const [basedOn, setBasedOn] = useState(groups[0].sets[0].id);
  return (
    <Sheet title="Write it here">
      <p className="mt-2 text-ink-2 text-sm">
        Build on a set: your own rows stand in front of its rows, and what yours do not speak of goes by it. Or build on
        none, and nothing is accepted but by your rows.
      </p>
      <label htmlFor={id} className="mt-3 block font-medium text-sm">
        It builds on
      </label>
      <select
        id={id}
        value={basedOn}
        onChange={(event) => setBasedOn(event.target.value)}
        className="mt-1 h-11 w-full cursor-pointer rounded border border-ink-2 bg-white px-2"
      >
        <option value="">no other set</option>
        {groups.map(({ title, sets }) => (
          <optgroup key={title} label={title}>
            {sets.map((set) => (
              <option key={set.id} value={set.id}>
                {set.name}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      <div className="mt-4">
        <Button onClick={() => onStart(basedOn === "" ? null : basedOn)}>Begin</Button>
      </div>
    </Sheet>
  );
}

/** A message of the schema without the name of the field, which stands in front already. */
const withoutField = (problem: string): string => problem.replace(/^[a-zA-Z]+(, mm)?: /, "");

/** How many problems of a text are listed; a text that is no set at all has hundreds. */
const LISTED = 12;

function FromText({ onStart }: { readonly onStart: (draft: Draft) => void }) {
  const id = useId();
  const [text, setText] = useState("");
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const read = () => {
    const result = readCriteriaText(text);
    if (result.ok) onStart(draftOf(result.criteria, null));
    else setProblems(result.problems);
  };
  return (
    <Sheet title="Take it from a file">
      <p className="mt-2 text-ink-2 text-sm">
        JSON text as a set is saved on its page. It becomes a new set whose rows can all be changed; nothing is stored
        before you store it.
      </p>
      <label htmlFor={`${id}-file`} className="mt-3 block font-medium text-sm">
        File
      </label>
      <input
        id={`${id}-file`}
        type="file"
        accept=".json,application/json,text/plain"
        onChange={async (event) => {
          const file = event.target.files?.[0];
          if (file) setText(await file.text());
          setProblems([]);
        }}
        className="mt-1 h-11 w-full cursor-pointer rounded border border-ink-2 bg-white p-2 text-sm"
      />
      <label htmlFor={`${id}-text`} className="mt-3 block font-medium text-sm">
        Or the text itself
      </label>
      <textarea
        id={`${id}-text`}
        rows={6}
        spellCheck={false}
        value={text}
        aria-invalid={problems.length > 0}
        aria-describedby={`${id}-problems`}
        onChange={(event) => {
          setText(event.target.value);
          setProblems([]);
        }}
        className="mt-1 w-full rounded border border-ink-2 bg-white p-2 font-mono text-sm aria-invalid:border-2 aria-invalid:border-missed"
      />
      <div id={`${id}-problems`} className="mt-2 grid gap-2">
        {problems.length > 0 && (
          <Notice>
            Nothing was taken; the text stays here. There should be:
            {problems.slice(0, LISTED).map(({ field, problem }) => (
              <span key={`${field}${problem}`} className="block">
                <strong>{field || "the whole text"}</strong>: {withoutField(problem)}
              </span>
            ))}
            {problems.length > LISTED && <span className="block">and {problems.length - LISTED} more.</span>}
          </Notice>
        )}
      </div>
      <div className="mt-3">
        <Button look="quiet" onClick={read}>
          Read the text
        </Button>
      </div>
    </Sheet>
  );
}
