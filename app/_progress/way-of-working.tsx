import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { stepsAlong } from "@/lib/progress";
import { DEFAULT_PAPER, MARKED_SECTIONS } from "@/lib/results";
import { Figure } from "./figure";
import { percent } from "./words";

/** Time at the pieces, and in which order they are walked. */
export function WayOfWorking({ tally: { sections }, latest }: Pick<LearnerProgress, "tally" | "latest">) {
  const timed = MARKED_SECTIONS.flatMap((section) => {
    const tally = sections[section];
    if (!tally || tally.timed === 0) return [];
    const usual = section === "plate" || section === "fillet" ? DEFAULT_PAPER[section].minutes : null;
    return [{ section, timed: tally.timed, minutes: Math.round(tally.seconds / tally.timed / 60), usual }];
  });
  const { along, all } = stepsAlong(latest);
  return (
    <Figure
      title="Time and order"
      says={
        <>
          {timed.map(({ section, timed: count, minutes, usual }) => (
            <p key={section}>
              {SECTION_NAMES[section]}: {minutes} minutes on average, over {count} {count === 1 ? "piece" : "pieces"}
              {usual !== null && ` (the usual paper gives ${usual})`}.
            </p>
          ))}
          <p className="mt-1">
            {all === 0
              ? "In which order you walk a weld shows once a face has two finds."
              : `In the ${latest.length === 1 ? "latest piece" : `latest ${latest.length} pieces`}, ${along} of ${all} steps from one find to the next on a face go away from the datum (${percent(along / all)}).`}
          </p>
          <p className="mt-1">Practice that lay for more than three hours counts without its time.</p>
        </>
      }
      fileName="time"
      table={{
        headers: ["Section", "Pieces timed", "Minutes on average", "Minutes in the usual paper"],
        rows: timed.map(({ section, timed: count, minutes, usual }) => [SECTION_NAMES[section], count, minutes, usual]),
      }}
    />
  );
}
