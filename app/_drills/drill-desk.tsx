"use client";
import dynamic from "next/dynamic";
import type { Drill } from "@/lib/drills";
import "../_bench/bench.css";
import "./drills.css";

const DrillRounds = dynamic(() => import("./drill-rounds").then(({ DrillRounds }) => DrillRounds), {
  ssr: false,
  loading: () => (
    <p className="mt-6 text-ink-2" role="status">
      Laying out the gauges...
    </p>
  ),
});

/** The desk of one drill. It lives in the browser only: what is drawn there comes from the numbers of this machine. */
export function DrillDesk({ drill, name }: { readonly drill: Drill; readonly name: string }) {
  return <DrillRounds drill={drill} name={name} />;
}
