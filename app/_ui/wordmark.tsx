/** A cap between its two toes, and the name. */
export function Wordmark() {
  return (
    <span className="inline-flex items-center gap-2.5 font-semibold tracking-tight">
      <svg viewBox="0 0 40 20" className="h-5 w-10" aria-hidden="true">
        <path d="M0 14h11c3-9 15-9 18 0h11v4H0z" fill="currentColor" opacity="0.45" />
        <path d="M11 14c3-9 15-9 18 0" fill="none" stroke="var(--color-lamp)" strokeWidth="2" />
        <path d="M11 8v10M29 8v10" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      </svg>
      Toeline
    </span>
  );
}
