interface ProgressDotsProps {
  readonly marks: readonly (boolean | null)[];
  /** Number of the task on the screen, from 1. */
  readonly number: number;
}

/** One sign a task: a disc where it was right, an open diamond where it was not, a ring for the one at hand, a point to come. */
export function ProgressDots({ marks, number }: ProgressDotsProps) {
  const now = marks.indexOf(null);
  const answered = marks.filter((mark) => mark !== null);
  const right = answered.filter(Boolean).length;
  return (
    <p className="flex flex-wrap items-center gap-x-4 gap-y-1 tabular-nums" data-tally="">
      <span className="font-semibold">
        {number} of {marks.length}
      </span>
      <span className="flex flex-wrap gap-1" aria-hidden="true">
        {marks.map((mark, n) => {
          const place = n + 1;
          return <Dot key={place} mark={mark} isNow={n === now} />;
        })}
      </span>
      <span className="text-ink-2">
        {answered.length === 0 ? "Nothing answered yet" : `${right} of ${answered.length} right`}
      </span>
    </p>
  );
}

function Dot({ mark, isNow }: { readonly mark: boolean | null; readonly isNow: boolean }) {
  const colour = mark === null ? "text-ink-2" : mark ? "text-found" : "text-missed";
  return (
    <svg viewBox="0 0 12 12" className={`size-3.5 ${colour}`} aria-hidden="true">
      {mark === true && <circle cx="6" cy="6" r="5" fill="currentColor" />}
      {mark === false && <path d="M6 1 11 6 6 11 1 6Z" fill="none" stroke="currentColor" strokeWidth="2" />}
      {mark === null && isNow && <circle cx="6" cy="6" r="4.5" fill="none" stroke="currentColor" strokeWidth="2" />}
      {mark === null && !isNow && <circle cx="6" cy="6" r="1.8" fill="currentColor" />}
    </svg>
  );
}
