"use client";
import dynamic from "next/dynamic";
import type { EyeRoundProps } from "./eye-round";
import "./eye.css";

const EyeRound = dynamic(() => import("./eye-round").then(({ EyeRound }) => EyeRound), {
  ssr: false,
  loading: () => (
    <p className="mt-6 text-ink-2" role="status">
      Laying out the drill...
    </p>
  ),
});

/** One round of a drill for the eye. It lives in the browser only, where its pictures are painted. */
export function EyeDesk(props: EyeRoundProps) {
  return <EyeRound {...props} />;
}
