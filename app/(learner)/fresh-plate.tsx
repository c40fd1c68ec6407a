"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PassMarkFields } from "@/app/_ui/pass-mark-fields";
import type { PassMarks } from "@/lib/workshop";
import type { takeFreshPlate } from "./actions";

interface FreshPlateProps {
  readonly take: typeof takeFreshPlate;
  readonly passMarks: PassMarks;
  readonly canStart: boolean;
}

/** The one big thing to do. */
export function FreshPlate({ take, passMarks, canStart }: FreshPlateProps) {
  const [problem, send] = useActionState(take, null);
  return (
    <section aria-labelledby="fresh-plate" className="rounded-md bg-bench p-6 text-bench-text">
      <PlateDrawing />
      <h2 id="fresh-plate" className="mt-4 text-xl font-semibold">
        A plate nobody has seen
      </h2>
      <p className="mt-1 text-bench-dim">
        Butt weld, 300 mm, manual metal arc. It is made for you alone. Take the torch over both faces and report what
        you find; there is no clock.
      </p>
      <form action={send} className="mt-5">
        {problem && (
          <div className="mb-4 text-ink">
            <Notice>{problem.message}</Notice>
          </div>
        )}
        <Button type="submit" look="lamp" isLarge disabled={!canStart}>
          Inspect a fresh plate
        </Button>
        {!canStart && (
          <p className="mt-3 text-bench-dim">Your bench is full. Hand in one of the unfinished plates first.</p>
        )}
        <details className="mt-4">
          <summary className="cursor-pointer rounded text-sm text-bench-dim hover:text-bench-text">
            Marks needed to pass: cap face {passMarks.cap}, root face {passMarks.root}. Change
          </summary>
          <div className="mt-3 max-w-sm rounded bg-sheet p-4 text-ink">
            <PassMarkFields passMarks={passMarks} />
            <p className="mt-2 text-sm text-ink-2">For this plate only. Each face has to reach its own.</p>
          </div>
        </details>
      </form>
    </section>
  );
}

/** A plate with its weld, seen from above. */
function PlateDrawing() {
  const ripples = Array.from({ length: 46 }, (_, i) => 8 + i * 8.4);
  return (
    <svg viewBox="0 0 400 56" className="w-full" aria-hidden="true">
      <rect width="400" height="56" rx="2" className="fill-bench-2" />
      <rect y="20" width="400" height="16" fill="#6d757a" />
      {ripples.map((x) => (
        <path key={x} d={`M${x} 20.5q5 7.5 0 15`} fill="none" stroke="#4b5358" strokeWidth="1.2" />
      ))}
      <path d="M0 20h400M0 36h400" className="stroke-lamp" strokeWidth="1" opacity="0.7" />
    </svg>
  );
}
