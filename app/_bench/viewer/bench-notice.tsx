import type { FaceState } from "./specimen-link";

/** What is going on while there is no picture, in words. */
export function BenchNotice({ state, brokenBecause }: { state?: FaceState; brokenBecause: string | null }) {
  const text = noticeOf(state, brokenBecause);
  if (!text) return null;
  return (
    <p
      role="status"
      className="pointer-events-none absolute left-1/2 top-1/2 z-10 w-max max-w-[80%] -translate-x-1/2 -translate-y-1/2 rounded-md bg-bench-2/95 px-4 py-3 text-center text-bench-text text-sm shadow-lg"
    >
      {text}
    </p>
  );
}

function noticeOf(state: FaceState | undefined, brokenBecause: string | null): string | null {
  if (brokenBecause) {
    return `The picture could not be painted (${brokenBecause}). Your report is kept. Reload the page to try again.`;
  }
  if (state?.kind === "failed") {
    return `This face could not be fetched: ${state.reason}. Your report is kept. Reload the page to try again.`;
  }
  return state?.kind === "ready" ? null : "Laying the plate on the bench...";
}
