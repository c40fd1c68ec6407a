import Link from "next/link";
import type { OwnSection, OwnSitting } from "@/app/_server/sitting-views";
import { LocalTime } from "@/app/_ui/local-time";
import { MarkBar } from "@/app/_ui/mark-bar";
import { SECTION_NAMES, SECTION_WORDS } from "@/app/_ui/section-names";
import type { ReviewedMark, SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import { SectionTime } from "./section-time";
import { StartSection } from "./start-section";

interface SectionRowsProps {
  readonly sitting: OwnSitting;
  /** Whether sections can be started now. */
  readonly mayStart: boolean;
  /** The server's time. */
  readonly now: Date;
}

/** The learner's sections of a sitting: how each stands, and the one thing to do with it. */
export function SectionRows({ sitting, mayStart, now }: SectionRowsProps) {
  const { sections, wasClosed } = sitting;
  const open = sections.find(isOpen);
  return (
    <ul className="mt-4 grid gap-3">
      {sections.map((section) => (
        <li
          key={section.runId}
          data-section={section.section}
          className="flex flex-wrap items-center justify-between gap-x-6 gap-y-3 rounded border border-line bg-sheet p-4 text-ink"
        >
          <div className="min-w-0 flex-1 basis-80">
            <h3 className="font-semibold">
              {SECTION_NAMES[section.section]}
              {section.isBorderline && ", second piece"}
            </h3>
            <p className="mt-1 text-ink-2">
              <HowItStands
                section={section}
                sitting={sitting}
                other={open && open !== section ? open : null}
                now={now}
              />
            </p>
            {section.mark && (
              <div className="mt-3">
                <MarkBar mark={section.mark} />
                {section.mark.reviewed && (
                  <p className="mt-1 text-ink-2 text-sm">
                    <MarkChange mark={section.mark} reviewed={section.mark.reviewed} releasedAt={sitting.releasedAt} />
                  </p>
                )}
              </div>
            )}
          </div>
          {isOpen(section) && (
            <Link
              href={`/practice/${section.practiceId}`}
              prefetch={false}
              className="inline-flex min-h-11 items-center rounded bg-lamp px-5 font-medium text-ink hover:brightness-95"
            >
              Go on at the bench
            </Link>
          )}
          {mayStart && !open && !wasClosed && section.state === "waiting" && section.piece === "ready" && (
            <StartSection
              runId={section.runId}
              practiceId={section.practiceId}
              words={`Start the ${SECTION_WORDS[section.section]}`}
            />
          )}
          {section.mayKnowMarks && (
            <Link
              href={`/practice/${section.practiceId}/marks`}
              prefetch={false}
              className="inline-flex min-h-11 items-center rounded border border-ink-2 px-5 font-medium hover:bg-paper-2"
            >
              Mark sheet
            </Link>
          )}
        </li>
      ))}
    </ul>
  );
}

interface MarkChangeProps {
  readonly mark: SectionMark;
  readonly reviewed: ReviewedMark;
  readonly releasedAt: Date | null;
}

/** That a tutor has reviewed a mark, and on which date it was changed where the learner had seen another one. */
function MarkChange({ mark, reviewed, releasedAt }: MarkChangeProps) {
  const computed = shownMark(mark.markThousandths).toFixed(1);
  const isAsComputed = mark.markThousandths === reviewed.markThousandths;
  const isLater = releasedAt !== null && reviewed.at > releasedAt && !isAsComputed;
  return (
    <>
      {isLater ? "Your mark was changed by a tutor on " : "Reviewed by a tutor on "}
      <LocalTime at={reviewed.at} />. {isAsComputed ? "It stands as computed." : `Computed: ${computed}.`} Your mark
      sheet says what, when and why.
    </>
  );
}

const isOpen = ({ state }: OwnSection) => state === "running" || state === "paused";

interface HowItStandsProps {
  readonly section: OwnSection;
  readonly sitting: OwnSitting;
  /** Another section that is on the bench. */
  readonly other: OwnSection | null;
  readonly now: Date;
}

function HowItStands({ section, sitting, other, now }: HowItStandsProps) {
  const { state, clock, closedBy, closedAt, savedAt, piece, voidReason, mayKnowMarks } = section;
  const left = clock.deadline ? Math.max(0, Date.parse(clock.deadline) - now.getTime()) : (clock.remaining ?? 0);
  switch (state) {
    case "waiting":
      return <>{waitingWords({ left, piece, other, sitting })}</>;
    case "running":
    case "paused":
      return (
        <>
          On the bench: <SectionTime left={left} isGoing={clock.state === "going"} />
          {clock.state === "going" ? ", and the clock goes on while you are here." : ". The clock stands."}
        </>
      );
    case "handed-in":
    case "expired":
      return (
        <>
          {CLOSED_WORDS[closedBy ?? "clock"]} {closedAt && <LocalTime at={closedAt} />}
          {closedBy !== "learner" && savedAt && (
            <>
              {" "}
              with your last save of <LocalTime at={savedAt} />
            </>
          )}
          {closedBy !== "learner" && !savedAt && " with nothing written"}.
          {mayKnowMarks ? "" : ` ${marksWords(sitting)}`}
        </>
      );
    case "void":
      return <>It does not count{voidReason ? `: ${voidReason}` : ""}. What you wrote is kept.</>;
  }
}

const CLOSED_WORDS = {
  learner: "Handed in",
  clock: "Time was over: closed",
  tutor: "Your tutor closed it",
} as const;

const marksWords = ({ feedback }: OwnSitting): string =>
  feedback === "at-once"
    ? "Its marks are there in a moment."
    : "You see its marks when your tutor releases them, after the sitting.";

function waitingWords({
  left,
  piece,
  other,
  sitting: { state, wasClosed },
}: {
  readonly left: number;
  readonly piece: OwnSection["piece"];
  readonly other: OwnSection | null;
  readonly sitting: OwnSitting;
}): string {
  if (wasClosed || state === "closed" || state === "released" || state === "void") return "Not sat.";
  const minutes = Math.round(left / 60_000);
  const time = `You have ${minutes} ${minutes === 1 ? "minute" : "minutes"} for it.`;
  if (state === "planned" || state === "open") return time;
  if (other) return `${time} It comes after the ${SECTION_WORDS[other.section]}: one section is sat at a time.`;
  if (piece === "failed") return `${time} Its piece could not be made, and another one is ordered. No clock goes.`;
  if (piece === "making")
    return `${time} Its piece is still being made. No clock goes; it can be started as soon as the piece is there.`;
  return `${time} Its piece is ready, and its clock goes from when you start it.`;
}
