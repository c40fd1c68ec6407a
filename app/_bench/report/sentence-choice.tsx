"use client";
import { SENTENCE_SIGNS } from "@/app/_ui/sentence-signs";
import { OFFERED_SENTENCES, SENTENCE_NAMES, type WrittenSentence } from "@/lib/report";

interface SentenceChoiceProps {
  /** Unlike any other group on the page. */
  readonly name: string;
  readonly label: string;
  readonly value: WrittenSentence | null;
  readonly onChange: (value: WrittenSentence | null) => void;
}

/** Accept, reject or refer, or nothing yet. */
export function SentenceChoice({ name, label, value, onChange }: SentenceChoiceProps) {
  return (
    <div>
      <div className="flex gap-2" role="radiogroup" aria-label={label} data-sentence={name}>
        {OFFERED_SENTENCES.map((sentence) => (
          <label
            key={sentence}
            className="relative flex h-11 flex-1 cursor-pointer items-center justify-center gap-1.5 rounded border border-line px-1 text-sm has-checked:border-ink has-checked:bg-ink has-checked:text-sheet has-focus-visible:outline-3 has-focus-visible:outline-lamp"
          >
            <input
              type="radio"
              name={name}
              checked={value === sentence}
              onChange={() => onChange(sentence)}
              className="sr-only"
            />
            <span aria-hidden="true">{SENTENCE_SIGNS[sentence].sign}</span>
            {SENTENCE_NAMES[sentence]}
          </label>
        ))}
      </div>
      {value && (
        <button
          type="button"
          className="mt-1 min-h-11 text-action text-xs underline"
          onClick={(event) => {
            // the button goes away: the focus belongs on the group
            event.currentTarget.parentElement?.querySelector("input")?.focus();
            onChange(null);
          }}
        >
          Take this sentence back
        </button>
      )}
    </div>
  );
}
