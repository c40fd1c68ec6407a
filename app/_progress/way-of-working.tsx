import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { findsEarlyAndLate, stepsAlong, THIRDS } from "@/lib/progress";
import { DEFAULT_PAPER, MARKED_SECTIONS } from "@/lib/results";
import { ShareChart } from "./charts/share-chart";
import { Figure } from "./figure";
import { inPercent } from "./found-figures";
import { NOT_ENOUGH_NOTE, percent } from "./words";

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

const THIRD_NAMES = { first: "First third", middle: "Middle third", last: "Last third" } as const;

/** Whether more is missed early or late in a report. */
export function EarlyAndLateFigure({ latest }: Pick<LearnerProgress, "latest">) {
  const thirds = findsEarlyAndLate(latest);
  const rows = THIRDS.map((third) => ({ name: THIRD_NAMES[third], ...thirds[third] }));
  const charted = rows.flatMap(({ name, count, of, share, interval, needed }) =>
    share === null || interval === null ? [] : [{ name, count, of, share, ...interval, needed }],
  );
  return (
    <Figure
      title="Early and late in a report"
      says={
        <>
          <p>{earlyAndLateWords(thirds)}</p>
          <p className="mt-1">
            The indications of a face are taken in the order in which they were written. What was missed counts where
            the nearest find along the weld was written. From {pieces(latest.length)}. {NOT_ENOUGH_NOTE}
          </p>
        </>
      }
      fileName="early-and-late"
      table={{
        headers: ["Of the report", "Found", "Of", "Share, %", "From, %", "To, %", "More needed"],
        rows: rows.map(({ name, count, of, share, interval, needed }) => [
          name,
          count,
          of,
          inPercent(share),
          inPercent(interval?.low),
          inPercent(interval?.high),
          needed,
        ]),
      }}
    >
      {charted.length > 0 && (
        <ShareChart
          label="Share found in each third of a report; the table has the figures"
          axis="found"
          rows={charted}
        />
      )}
    </Figure>
  );
}

const pieces = (count: number): string => (count === 1 ? "the latest piece" : `the latest ${count} pieces`);

function earlyAndLateWords({ first, last }: ReturnType<typeof findsEarlyAndLate>): string {
  if (first.of === 0) return "Whether you miss more early or late shows once a face has three finds.";
  if (first.needed > 0 || last.needed > 0) return "Whether you miss more early or late in a report cannot be said yet.";
  const [early, late] = [first.interval, last.interval];
  if (early && late && late.high < early.low)
    return "You find less towards the end of a report: walk the weld once more before you hand in, from the other end.";
  if (early && late && early.high < late.low)
    return "You find less at the beginning of a report: walk the first stretch once more before you hand in.";
  return "You find about as much early in a report as late.";
}
