import { ClockTime } from "./clock-time";
import type { Line } from "./use-live-board";

/** Whether what is on the board is as it is now; said by shape and words. */
export function LineState({ line }: { readonly line: Line }) {
  return (
    <p role="status" className="flex items-start gap-2 text-ink-2 text-sm">
      <svg viewBox="0 0 12 12" className="mt-1 size-3 shrink-0" aria-hidden="true">
        {line.state === "live" ? (
          <circle cx="6" cy="6" r="5" className="fill-found" />
        ) : line.state === "asking" ? (
          <circle cx="6" cy="6" r="4.5" fill="none" strokeWidth="2" className="stroke-partly" />
        ) : (
          <path d="M1 1 11 11M11 1 1 11" strokeWidth="2.5" className="stroke-missed" />
        )}
      </svg>
      <span>
        <Words line={line} />
      </span>
    </p>
  );
}

function Words({ line }: { readonly line: Line }) {
  switch (line.state) {
    case "live":
      return "Live: the board changes by itself.";
    case "asking":
      return "Not live: the board is asked for every few seconds until the live line is back.";
    case "cut":
      return (
        <>
          <strong className="font-semibold text-ink">Not live.</strong> The server was last heard at{" "}
          <ClockTime at={line.heardAt} withSeconds />, so this may be old. The sitting goes on by the server&rsquo;s
          clock; this page keeps trying.
        </>
      );
    case "refused":
      return (
        <>
          <strong className="font-semibold text-ink">Not live.</strong> {line.message} Reload the page.
        </>
      );
  }
}
