"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { postJson } from "./post-json";

interface StartSectionProps {
  readonly runId: string;
  readonly practiceId: string;
  readonly words: string;
}

/** Starts the clock of a section and goes to its bench. */
export function StartSection({ runId, practiceId, words }: StartSectionProps) {
  const [problem, setProblem] = useState("");
  const [isSending, setIsSending] = useState(false);
  const start = async () => {
    setIsSending(true);
    const sent = await postJson(`/api/runs/${runId}/start`, { windowId: newWindowId() });
    // the bench is a window of its own and takes over there
    if (!sent.problem) return window.location.assign(`/practice/${practiceId}`);
    setIsSending(false);
    setProblem(sent.problem);
  };
  return (
    <div>
      <Button look="lamp" onClick={start} disabled={isSending}>
        {words}
      </Button>
      {problem && (
        <div className="mt-3 text-ink">
          <Notice>{problem}</Notice>
        </div>
      )}
    </div>
  );
}

// crypto.randomUUID is missing where a workshop's server has no TLS
const newWindowId = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, "0")).join("");
