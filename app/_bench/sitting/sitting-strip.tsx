"use client";
import { timeOf } from "../report/call-words";

interface SittingStripProps {
  /** When the server was last heard of; null while there is a connection. */
  readonly lostAt: Date | null;
  /** What is said about the time just now. */
  readonly said: string;
}

/** Under the strip above the bench: that the connection is gone, and what is to be known about the time. */
export function SittingStrip({ lostAt, said }: SittingStripProps) {
  return (
    <>
      <p
        role="status"
        data-time-said=""
        className={
          said
            ? // in the place of the words on the joint, so that nothing moves under the hand
              "bg-lamp px-5 py-2 font-semibold text-ink text-sm md:absolute md:top-1 md:left-32 md:z-20 md:flex md:min-h-11 md:max-w-md md:items-center md:rounded"
            : "sr-only"
        }
      >
        {said}
      </p>
      <p
        role="status"
        data-offline={lostAt ? "" : undefined}
        className={
          lostAt ? "flex items-center gap-2 border-lamp border-y-2 bg-paper px-5 py-2 text-ink text-sm" : "sr-only"
        }
      >
        {lostAt && (
          <>
            <BrokenLine />
            <span>
              <b>No connection since {timeOf(lostAt.toISOString())}.</b> What you write is kept in this browser and sent
              as soon as the connection is back. Your clock goes on.
            </span>
          </>
        )}
      </p>
    </>
  );
}

function BrokenLine() {
  return (
    <svg
      viewBox="0 0 20 20"
      className="size-5 shrink-0"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      aria-hidden="true"
    >
      <path d="M2 10h5M13 10h5M8 6l-1 8M12 6l1 8" />
    </svg>
  );
}
