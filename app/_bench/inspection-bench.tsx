"use client";
import dynamic from "next/dynamic";
import type { Practice } from "./frame/practice";
import "./bench.css";

const BenchDesk = dynamic(() => import("./frame/bench-desk").then(({ BenchDesk }) => BenchDesk), {
  ssr: false,
  loading: () => (
    <p className="grid h-dvh place-items-center bg-bench text-bench-dim" role="status">
      Setting up the bench...
    </p>
  ),
});

export interface InspectionBenchProps extends Practice {
  /** Where the marks are to be seen after handing in; `/practice/{id}/marks` unless told. */
  readonly marksUrl?: string;
  /** Where "leave the bench" goes; everything written is kept. */
  readonly leaveUrl?: string;
  /** Whether the bench explains what a gauge reads when it is asked: in practice it does. */
  readonly mayAskReading: boolean;
}

/** The bench of one practice. It lives in the browser only: canvas, workers and what the browser kept. */
export function InspectionBench({ marksUrl, leaveUrl = "/", mayAskReading, ...practice }: InspectionBenchProps) {
  return (
    <BenchDesk
      practice={practice}
      marksUrl={marksUrl ?? `/practice/${practice.id}/marks`}
      leaveUrl={leaveUrl}
      mayAskReading={mayAskReading}
    />
  );
}
