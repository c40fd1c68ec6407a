import Link from "next/link";
import type { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Sheet } from "@/app/_ui/sheet";
import { Verdict } from "@/app/_ui/verdict";
import type { Section } from "@/lib/results";
import type { PlacedAttempt, TimelineRound } from "@/lib/sittings";
import { standingWords } from "../../sittings/standing-words";

type Courses = Extract<Awaited<ReturnType<typeof readClassCourses>>, { readonly ok: true }>;

interface CourseSheetProps {
  readonly course: Courses["papers"][number];
  /** The practice that holds the mark sheet, by attempt. */
  readonly practiceOf: ReadonlyMap<string, string>;
}

/** Where every member stands in one paper: round by round, sections side by side, re-sits joined to what they repeat. */
export function CourseSheet({ course: { paperName, sections, members }, practiceOf }: CourseSheetProps) {
  const begun = members.filter(({ rounds }) => rounds.some(({ attempts }) => attempts.length > 0));
  const rest = members.filter((member) => !begun.includes(member));
  return (
    <Sheet title={`Where everybody stands: ${paperName}`} className="mt-5">
      {begun.length === 0 && (
        <p className="mt-2 text-ink-2">
          Nobody has sat anything of this paper yet. Marks stand here as soon as sections are closed.
        </p>
      )}
      <ul className="mt-1">
        {begun.map(({ person, next, rounds }) => (
          <li
            key={person.id}
            className="grid gap-x-6 border-line border-t py-3 first:border-0 md:grid-cols-[13rem_1fr] [&>*]:min-w-0"
          >
            <div className="wrap-anywhere">
              <h3 className="font-medium">{person.name}</h3>
              <p className="text-ink-2 text-sm">{standingWords(next)}</p>
            </div>
            <ol>
              {rounds.map((round) => (
                <Round
                  key={round.round}
                  round={round}
                  isOnly={rounds.length === 1}
                  sections={sections}
                  practiceOf={practiceOf}
                  name={person.name}
                />
              ))}
            </ol>
          </li>
        ))}
      </ul>
      {begun.length > 0 && rest.length > 0 && (
        <p className="border-line border-t pt-3 text-ink-2 wrap-anywhere">
          Nothing sat yet: {rest.map(({ person }) => person.name).join(", ")}.
        </p>
      )}
    </Sheet>
  );
}

const ROUND_WORDS: Readonly<Record<TimelineRound["outcome"], string>> = {
  passed: "passed",
  failed: "a last re-sit was failed, so everything was due again",
  open: "open",
};

interface RoundProps {
  readonly round: TimelineRound;
  readonly isOnly: boolean;
  readonly sections: readonly Section[];
  readonly practiceOf: ReadonlyMap<string, string>;
  readonly name: string;
}

function Round({ round: { round, attempts, outcome }, isOnly, sections, practiceOf, name }: RoundProps) {
  const lines = [...new Set([...sections, ...attempts.map(({ attempt }) => attempt.section)])];
  return (
    <li className="mt-2 first:mt-0">
      {!isOnly && (
        <p className="text-ink-2 text-sm">
          Round {round}: {ROUND_WORDS[outcome]}
        </p>
      )}
      <div className="grid gap-x-6 gap-y-1 md:grid-cols-2">
        {lines.map((section) => {
          const own = attempts.filter(({ attempt }) => attempt.section === section);
          return (
            <div key={section} className="grid grid-cols-[5.5rem_1fr] items-center gap-x-3">
              <span className="text-ink-2 text-sm">{SECTION_NAMES[section]}</span>
              {own.length === 0 ? (
                <span className="py-2 text-ink-2 text-sm">not sat</span>
              ) : (
                <ol className="flex flex-wrap items-center gap-y-1">
                  {own.map((placed) => (
                    <Attempt
                      key={placed.attempt.id}
                      placed={placed}
                      practiceId={practiceOf.get(placed.attempt.id) ?? null}
                      label={`${name}, ${SECTION_NAMES[section].toLowerCase()}`}
                    />
                  ))}
                </ol>
              )}
            </div>
          );
        })}
      </div>
    </li>
  );
}

const JOINED_BY: Partial<Readonly<Record<PlacedAttempt["kind"], string>>> = {
  "re-sit": "re-sit",
  borderline: "with second piece",
};

interface AttemptProps {
  readonly placed: PlacedAttempt;
  readonly practiceId: string | null;
  readonly label: string;
}

/** One attempt with its mark and verdict; a line leads to it from what it repeats. */
function Attempt({ placed, practiceId, label }: AttemptProps) {
  const { attempt, kind, repeats, decidedOn, outcome } = placed;
  const mark = attempt.mark.toFixed(1);
  const joint = repeats === null ? undefined : JOINED_BY[kind];
  return (
    <li className="flex items-center">
      {joint && (
        <span className="flex items-center text-ink-2 text-sm">
          <span aria-hidden="true" className="w-4 border-ink-2 border-t-2" />
          <span className="px-1.5">{joint}</span>
          <span aria-hidden="true" className="w-4 border-ink-2 border-t-2" />
        </span>
      )}
      <span className="mr-3 rounded border border-line px-2 py-0.5">
        {practiceId ? (
          <Link
            href={`/practice/${practiceId}/marks`}
            aria-label={`Mark sheet of ${label}: ${mark}`}
            className="inline-flex min-h-8 items-center rounded font-semibold text-action underline underline-offset-4 pointer-coarse:min-h-11"
          >
            {mark}
          </Link>
        ) : (
          <span className="font-semibold">{mark}</span>
        )}{" "}
        <Outcome kind={kind} outcome={outcome} />
        {kind === "borderline" && decidedOn !== null && (
          <span className="text-sm"> on the mean, {decidedOn.toFixed(1)}</span>
        )}
        <span className="block text-ink-2 text-xs">
          <LocalTime at={attempt.at} withTime={false} />, {attempt.passMark} needed
        </span>
      </span>
    </li>
  );
}

function Outcome({ kind, outcome }: Pick<PlacedAttempt, "kind" | "outcome">) {
  if (kind === "void") return <span className="text-ink-2 text-sm">void</span>;
  if (kind === "extra") return <span className="text-ink-2 text-sm">had been passed before</span>;
  if (outcome === "passed" || outcome === "failed") return <Verdict isPassed={outcome === "passed"} />;
  return <span className="text-ink-2 text-sm">decided with its second piece</span>;
}
