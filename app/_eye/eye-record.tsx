import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import { type EyeRound, type FinishedEyeRound, rightOf } from "@/lib/eye";
import { EyeSums } from "./eye-sums";
import { EYE_WORDS } from "./eye-words";

/** So many rounds are listed one by one. */
const LISTED = 5;

/** A round that was left before its end, to go on with. */
export function LeftRound({
  round,
  answered,
  asked,
}: {
  readonly round: EyeRound;
  readonly answered: number;
  readonly asked: number;
}) {
  const { title } = EYE_WORDS[round.drill];
  return (
    <p className="mt-3 flex flex-wrap items-center gap-x-4 gap-y-1 rounded border-l-4 border-l-action bg-paper-2 px-4 py-2">
      <span>
        You left “{title}”{asked > 0 && ` with ${answered} of ${asked} answered`}. Everything answered is kept.
      </span>
      <Link
        href={`/drills/eye/${round.id}`}
        className="inline-flex min-h-11 items-center font-medium text-action underline underline-offset-4"
      >
        Go on with it
      </Link>
    </p>
  );
}

/** How the last rounds went, together and one by one. */
export function EyeRecord({ rounds }: { readonly rounds: readonly FinishedEyeRound[] }) {
  if (rounds.length === 0) return <p className="mt-4 text-ink-2">How your rounds went is shown here.</p>;
  const results = rounds.flatMap((round) => round.results);
  return (
    <div className="mt-5 border-line border-t pt-4">
      <h3 className="font-medium">
        {rounds.length === 1 ? "Your last round" : `Your last ${rounds.length} rounds together`}
      </h3>
      <div className="mt-2">
        <EyeSums results={results} caption="Your last rounds" />
      </div>
      <table className="mt-4 w-full max-w-2xl text-left text-sm tabular-nums">
        <caption className="sr-only">Your last rounds, one by one</caption>
        <tbody>
          {rounds.slice(0, LISTED).map(({ id, drill, finishedAt, results: own }) => {
            const { asked, right } = rightOf(own);
            return (
              <tr key={id} className="border-line border-t">
                <th scope="row" className="py-2 pr-4 font-normal">
                  {EYE_WORDS[drill].title}
                </th>
                <td className="py-2 pr-4">
                  <LocalTime at={finishedAt} />
                </td>
                <td className="whitespace-nowrap py-2">
                  <b>{right}</b> of {asked}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** One line for the page of progress; nothing where there are no rounds. */
export function EyeLine({ rounds }: { readonly rounds: readonly FinishedEyeRound[] }) {
  if (rounds.length === 0) return null;
  const { asked, right } = rightOf(rounds.flatMap(({ results }) => results));
  return (
    <p className="mt-3 max-w-3xl text-ink-2 print:hidden">
      In your last {rounds.length === 1 ? "round" : `${rounds.length} rounds`} of{" "}
      <Link href="/drills" className="text-action underline underline-offset-4">
        drills for the eye
      </Link>{" "}
      {right} of {asked} answers were right. Drills are in none of the figures here.
    </p>
  );
}
