"use client";
import type { AccountLine } from "@/lib/results";
import { timeAtPlace } from "@/lib/trail";
import type { TruthView } from "../sheet-view";
import { useTrail } from "./trail-context";
import { lookWords, missesWords } from "./trail-words";

/** Beside a miss that is not covered: whether its place was looked at. Nothing where no trail was recorded. */
export function LookAtMiss({ line, truths }: { readonly line: AccountLine; readonly truths: readonly TruthView[] }) {
  const trail = useTrail();
  if (!trail || line.kind !== "missed" || truths.length === 0) return null;
  return <p className="mt-2 border-ink-2 border-l-4 pl-2 text-sm">{lookWords(timeAtPlace(trail, truths[0]))}</p>;
}

/** Over all misses: how many were never looked at, and how many were passed over. */
export function LooksAtMisses({
  misses,
  truths,
}: {
  readonly misses: readonly AccountLine[];
  readonly truths: readonly TruthView[];
}) {
  const trail = useTrail();
  if (!trail) return null;
  const times = misses.flatMap(({ truthIds }) => {
    const truth = truths.find(({ id }) => id === truthIds[0]);
    return truth ? [timeAtPlace(trail, truth)] : [];
  });
  if (times.length === 0) return null;
  return <p data-misses-looked="">{missesWords(times)}</p>;
}
