import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { CLUTTER_WORDS } from "@/lib/imperfections";
import { detectionAgainstClutter, type FalseCallRate, falseCallsOf, wholeTally } from "@/lib/progress";
import { ShareChart } from "./charts/share-chart";
import { Figure } from "./figure";
import { inPercent } from "./found-figures";
import { falseCallWords, NOT_ENOUGH_NOTE, shareWords, tellingWords } from "./words";

/** Calls where nothing is to be called: how many a metre, on what, and what that says of telling one from the other. */
export function FalseCallsFigure({ tally }: Pick<LearnerProgress, "tally">) {
  const { pieces } = wholeTally(tally);
  const telling = tellingWords(detectionAgainstClutter(tally.types, pieces));
  return <FalseCallRateFigure calls={falseCallsOf(pieces, tally.types)} telling={telling} />;
}

interface FalseCallRateFigureProps {
  readonly calls: FalseCallRate;
  /** How well imperfections are told from what is harmless, in words; null where that is not worked out. */
  readonly telling: string | null;
}

/** Calls where nothing is to be called: how many a metre, and on what. */
export function FalseCallRateFigure({ calls, telling }: FalseCallRateFigureProps) {
  const rows = calls.on.flatMap(({ kind, called: { count, of, share, interval, needed } }) =>
    share === null || interval === null
      ? []
      : [{ name: clutterName(kind), count, of, share, low: interval.low, high: interval.high, needed }],
  );
  return (
    <Figure
      title="False calls"
      says={
        <>
          <p>{falseCallWords(calls)}</p>
          {telling !== null && <p className="mt-1">{telling}</p>}
          {calls.onNothing > 0 && <p className="mt-1">On bare metal or sound weld: {calls.onNothing}.</p>}
          {calls.cleanPieces.of > 0 && (
            <p className="mt-1">Pieces with nothing to find that got a call: {shareWords(calls.cleanPieces)}.</p>
          )}
          {rows.length > 0 && (
            <p className="mt-1">How often harmless features are taken for imperfections. {NOT_ENOUGH_NOTE}</p>
          )}
        </>
      }
      fileName="false-calls"
      table={{
        headers: ["Harmless feature", "Called", "Of", "Share, %", "From, %", "To, %", "More needed"],
        rows: rows.map(({ name, count, of, share, low, high, needed }) => [
          name,
          count,
          of,
          inPercent(share),
          inPercent(low),
          inPercent(high),
          needed,
        ]),
      }}
    >
      {rows.length > 0 && (
        <ShareChart
          label="Share of each harmless feature that was called; the table has the figures"
          axis="called"
          rows={rows}
        />
      )}
    </Figure>
  );
}

/** "a chalk mark" to "Chalk mark". */
export function clutterName(kind: keyof typeof CLUTTER_WORDS): string {
  const name = CLUTTER_WORDS[kind].name.replace(/^(a|an|the) /, "");
  return name.charAt(0).toUpperCase() + name.slice(1);
}
