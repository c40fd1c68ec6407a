"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import type { JointKind } from "@/lib/weld";

const LOOK_AGAIN_MS = 250;

/** What is done one after the other, as the maker names it, and in words. Both faces of a plate are made at once. */
const STAGES = [
  {
    stage: "cutting the plates",
    words: { butt: "two plates are cut, bevelled and tacked", fillet: "two plates are cut and tacked square" },
  },
  {
    stage: "welding",
    words: { butt: "the runs are laid, root first", fillet: "the corner is welded, on one side" },
  },
  {
    stage: "cleaning",
    words: { butt: "slag is chipped off and the plate is brushed", fillet: "slag is chipped off and it is brushed" },
  },
  { stage: "measuring", words: bothSay("the finished surface is measured, for the marks later") },
  { stage: "packing", words: bothSay("it is brought to your bench") },
] as const;

function bothSay(words: string): Readonly<Record<JointKind, string>> {
  return { butt: words, fillet: words };
}

const NAMES: Readonly<Record<JointKind, string>> = { butt: "plate", fillet: "fillet weld" };

interface PreparingPieceProps {
  readonly id: string;
  readonly kind: JointKind;
  readonly stage: string;
  readonly hasFailed: boolean;
}

/** Shown while the piece is being made; opens the bench as soon as it is there. */
export function PreparingPiece({ id, kind, stage: firstStage, hasFailed }: PreparingPieceProps) {
  const router = useRouter();
  const [stage, setStage] = useState(() => stageIndex(firstStage));
  const [trouble, setTrouble] = useState("");

  useEffect(() => {
    if (hasFailed) return;
    const timer = setInterval(async () => {
      const progress = await readProgress(id);
      setTrouble(
        progress ? "" : "The workshop's server does not answer just now. Your practice is kept; this page asks again.",
      );
      if (!progress) return;
      // one face may be behind the other: what is told never goes back
      setStage((before) => Math.max(before, stageIndex(progress.stage)));
      if (progress.state !== "making") router.refresh();
    }, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [id, hasFailed, router]);

  const renew = async () => {
    const response = await fetch(`/api/practice/${id}/specimen`, { method: "POST" }).catch(() => null);
    if (response?.ok) router.refresh();
    else setTrouble("No other piece could be asked for. Your practice is kept; try again in a moment.");
  };

  return (
    <main
      id="main"
      tabIndex={-1}
      className="grid min-h-screen place-items-center bg-bench p-8 text-bench-text outline-none"
    >
      <div className="w-full max-w-xl">
        <h1 className="text-2xl font-semibold">
          {hasFailed ? `This ${NAMES[kind]} could not be made` : `Your ${NAMES[kind]} is being welded`}
        </h1>
        {hasFailed ? (
          <>
            <p className="mt-2 text-bench-dim">
              That is no fault of yours. Your practice is kept; take another one for it.
            </p>
            <div className="mt-6">
              <Button onClick={renew}>Take another {NAMES[kind]}</Button>
            </div>
          </>
        ) : (
          <>
            <WeldInProgress />
            <p className="mt-4 min-h-6" role="status">
              {stage < 0
                ? "It waits for its turn; pieces are made one after another."
                : `Step ${stage + 1} of ${STAGES.length}: ${STAGES[stage].words[kind]}.`}
            </p>
            <p className="mt-1 text-bench-dim">
              This usually takes some seconds, up to a minute when many take one at once. The bench opens by itself; if
              you leave, it waits for you on Today.
            </p>
          </>
        )}
        {trouble && (
          <div className="mt-4 text-ink">
            <Notice>{trouble}</Notice>
          </div>
        )}
        <Link href="/" className="mt-8 inline-block rounded py-2 text-bench-dim underline underline-offset-4">
          Back to Today
        </Link>
      </div>
    </main>
  );
}

function stageIndex(stage: string): number {
  return STAGES.findIndex((candidate) => candidate.stage === stage);
}

/** A weld that grows along the plate; it shows that something goes on, not how far it is. */
function WeldInProgress() {
  return (
    <svg viewBox="0 0 400 40" className="mt-6 w-full" aria-hidden="true">
      <rect width="400" height="40" rx="2" className="fill-bench-2" />
      <rect y="16" width="400" height="8" className="fill-bench-line motion-safe:animate-pulse" />
      <path d="M0 14h400M0 26h400" className="stroke-lamp" strokeWidth="1" opacity="0.6" />
    </svg>
  );
}

async function readProgress(id: string): Promise<{ readonly state: string; readonly stage: string } | null> {
  try {
    const response = await fetch(`/api/practice/${id}/progress`);
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}
