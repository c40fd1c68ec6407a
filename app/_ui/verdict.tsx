/** Passed or not, by shape and word besides colour. */
export function Verdict({ isPassed }: { readonly isPassed: boolean }) {
  return (
    <span
      className={`inline-flex items-center gap-1.5 whitespace-nowrap font-medium ${isPassed ? "text-found" : "text-missed"}`}
    >
      <svg viewBox="0 0 12 12" className="size-3" aria-hidden="true">
        {isPassed ? (
          <circle cx="6" cy="6" r="5" fill="currentColor" />
        ) : (
          <path d="M6 1 11 6 6 11 1 6Z" fill="none" stroke="currentColor" strokeWidth="2" />
        )}
      </svg>
      {isPassed ? "passed" : "not passed"}
    </span>
  );
}
