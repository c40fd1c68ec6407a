"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";

const ASK_AGAIN_MS = 5000;

interface DemoNoticeProps {
  /** Entries written, of all there are; 0 of 0 before the first. */
  readonly done: number;
  readonly total: number;
}

/** How far the past of the demo workshop is written; the desk fills up while a tutor looks at it. */
export function DemoNotice({ done, total }: DemoNoticeProps) {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => document.visibilityState === "visible" && router.refresh(), ASK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [router]);
  return (
    <div className="mt-4 max-w-3xl rounded border-found border-l-4 bg-paper-2 px-4 py-3 text-sm print:hidden">
      <p>
        The demo's history is being written: {total === 0 ? "it begins in a moment" : `${done} of ${total} entries`}.
        Classes, practice and sittings come up here day by day. Until it is done, please leave the two classes, their
        people and sittings, and the three papers as they are. You can use everything else.
      </p>
      {total > 0 && (
        <progress
          value={done}
          max={total}
          aria-label="Entries of the demo's history"
          className="mt-2 block h-2 w-full appearance-none [&::-moz-progress-bar]:bg-found [&::-webkit-progress-bar]:bg-line [&::-webkit-progress-value]:bg-found"
        />
      )}
    </div>
  );
}
