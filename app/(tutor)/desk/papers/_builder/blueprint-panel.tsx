"use client";

import type { BlueprintFace, BlueprintView, Forecast } from "@/app/_server/blueprint-view";
import { FACE_NAMES } from "@/app/_ui/section-names";
import type { Section } from "@/lib/results";
import { familyWords, PLACE_WORDS, rangeWords, SIZE_WORDS } from "./blueprint-words";
import type { SectionDraft } from "./draft";
import { useBlueprint } from "./use-blueprint";

/** What a section's piece is made to: its table, whether it can be had, how hard it is, and how sure its mark will be. */
export function BlueprintPanel({ draft }: { readonly draft: SectionDraft }) {
  const { blueprint, message } = useBlueprint(draft.section, draft.piece);
  return (
    <div className="text-sm" data-blueprint={draft.section}>
      <h3 className="font-semibold">The blueprint</h3>
      <p className="mt-1 text-ink-2">For you alone: learners never see what there is to find.</p>
      <div aria-live="polite" aria-busy={!blueprint && !message}>
        {blueprint ? (
          <Blueprint view={blueprint} draft={draft} />
        ) : (
          <p className="mt-3">{message || "Pieces are being drawn to see how hard they are …"}</p>
        )}
      </div>
    </div>
  );
}

function Blueprint({ view, draft }: { readonly view: BlueprintView; readonly draft: SectionDraft }) {
  const { faces, refusal, unmet, fewer, forecast } = view;
  return (
    <>
      {faces.map((face) => (
        <FaceTable key={face.face} face={face} />
      ))}
      <dl className="mt-4 grid gap-2.5 border-line border-t pt-3">
        <Line name="Indications">
          {countWords(faces)}
          {fewer > 0 &&
            ` That is ${fewer} fewer than by the blueprint: there are not enough of the types that alone may come.`}
        </Line>
        <Line name="Can it be had?">
          {unmet && <Unmet reason={unmet} />}
          {refusal ? <Refused reason={refusal} /> : forecast && feasibleWords(forecast, unmet !== null)}
        </Line>
        {forecast && <ForecastLines forecast={forecast} draft={draft} />}
      </dl>
      {forecast && <HowWorkedOut pieces={forecast.pieces} section={draft.section} />}
    </>
  );
}

function HowWorkedOut({ pieces, section }: { readonly pieces: number; readonly section: Section }) {
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-3 font-medium text-action">How this is worked out</summary>
      <p>
        Every size and place has a difficulty, fitted to blind trials; somebody who just passes finds each indication
        with the chance that follows from it, and makes false calls at a steady rate. The mark is the mean of that, the
        standard error its variance: finds and misses as independent events, false calls as a Poisson count. Both are
        means over {pieces} pieces that were drawn and not welded. Marks of simulated inspectors scatter up to a fifth
        more, since naming and measuring vary as well; dimensions, sentences and questions are not in it
        {section === "fillet"
          ? ", nor are a gap, a throat too small and unequal legs, which show once it is welded"
          : ""}
        . An estimate of our own, no source.
      </p>
    </details>
  );
}

function FaceTable({ face: { face, lines, cleanLength, harmless, indications } }: { readonly face: BlueprintFace }) {
  const extras = indications[1] - lines.reduce((sum, { count }) => sum + count, 0);
  return (
    <table className="mt-3 w-full text-left">
      <caption className="pb-1 text-left font-medium">{FACE_NAMES[face]}</caption>
      {lines.length > 0 && (
        <thead className="text-ink-2 text-xs">
          <tr>
            <th scope="col" className="w-14 py-1 pr-2 font-medium">
              Count
            </th>
            <th scope="col" className="py-1 pr-2 font-medium">
              What
            </th>
            <th scope="col" className="w-20 py-1 pr-2 font-medium">
              Size
            </th>
            <th scope="col" className="w-24 py-1 font-medium">
              Place
            </th>
          </tr>
        </thead>
      )}
      <tbody className="[&_td]:align-top">
        {lines.map((line) => (
          <tr key={JSON.stringify(line)} className="border-line/70 border-t">
            <td className="py-1 pr-2">{line.count}</td>
            <td className="py-1 pr-2">{familyWords(line)}</td>
            <td className="py-1 pr-2">{SIZE_WORDS[line.size]}</td>
            <td className="py-1 whitespace-nowrap">{PLACE_WORDS[line.place]}</td>
          </tr>
        ))}
        <tr className="border-line/70 border-t text-ink-2">
          <td colSpan={4} className="py-1">
            {[
              lines.length === 0 &&
                (indications[1] === 0 ? "nothing to report" : `${rangeWords(indications)} of any kind`),
              lines.length > 0 && extras > 0 && extraWords(face, extras, indications),
              cleanLength !== null && `at least ${cleanLength} mm of clean weld`,
              harmless[1] > 0 && `${rangeWords(harmless)} harmless features`,
            ]
              .filter(Boolean)
              .join("; ")}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

/** On a fillet the lines are what was asked for, and the rest is drawn; on a plate they are all, but for what comes by itself. */
const extraWords = (face: BlueprintFace["face"], extras: number, indications: BlueprintFace["indications"]): string =>
  face === "fillet" ? `${rangeWords(indications)} in all` : `up to ${extras} more that come by themselves`;

function Line({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt className="font-medium">{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function countWords(faces: readonly BlueprintFace[]): string {
  const least = faces.reduce((sum, { indications }) => sum + indications[0], 0);
  const most = faces.reduce((sum, { indications }) => sum + indications[1], 0);
  return most === 0
    ? "None: whoever reports something reports what is not there."
    : `${rangeWords([least, most])} on a piece.`;
}

function Refused({ reason }: { readonly reason: string }) {
  return (
    <span className="font-medium text-missed">
      <span aria-hidden="true">✕ </span>No piece can be made so: {reason}.
    </span>
  );
}

function Unmet({ reason }: { readonly reason: string }) {
  return (
    <span className="block font-medium text-partly">
      <span aria-hidden="true">! </span>Not everything that must be on it: {reason}. Pieces are made without.
    </span>
  );
}

function feasibleWords({ pieces, failed }: Forecast, isRest: boolean): string {
  if (isRest) return `The rest can: ${pieces} of ${pieces + failed} pieces that were drawn had room for it.`;
  if (failed === 0) return `Yes: ${pieces} of ${pieces} pieces that were drawn had room for everything.`;
  return `Yes, though making takes longer: ${pieces} of ${pieces + failed} pieces that were drawn had room for everything.`;
}

function ForecastLines({
  forecast: { mark, sem },
  draft,
}: {
  readonly forecast: Forecast;
  readonly draft: SectionDraft;
}) {
  const share = shareOfIndications(draft);
  return (
    <>
      <Line name="How hard is it?">
        Somebody who just passes can expect {mark.mean.toFixed(1)} of 100 marks for indications.{" "}
        <Spread mark={mark} section={draft.section} />
      </Line>
      <Line name="How sure will the mark be?">
        One standard error (SEM) is {sem.toFixed(1)} marks for indications
        {share === null
          ? "."
          : `. They are ${Math.round(share * 100)}\u00a0% of this section, so its mark scatters by at least ${(sem * share).toFixed(1)} by chance alone.`}
      </Line>
    </>
  );
}

/** Two pieces of one paper should not differ by more marks than that in what can be expected on them. */
const EQUALLY_HARD = 2;

function Spread({ mark: { least, most }, section }: { readonly mark: Forecast["mark"]; readonly section: Section }) {
  if (most - least < 0.05) return null;
  const range = `${least.toFixed(1)} to ${most.toFixed(1)} from piece to piece`;
  if (most - least <= EQUALLY_HARD) return <>Pieces are equally hard: {range}.</>;
  return (
    <span className="font-medium text-partly">
      <span aria-hidden="true">! </span>Pieces are not equally hard: {range}.{" "}
      {section === "plate"
        ? "Take the blueprint for assessment, or give everybody the same piece, if marks are to be compared."
        : "Give everybody the same piece if marks are to be compared: no fillet is made to one measure yet."}
    </span>
  );
}

/** Null where the weights are not what they should be yet. */
function shareOfIndications({ weights }: SectionDraft): number | null {
  const values = Object.values(weights).map(Number);
  const sum = values.reduce((total, value) => total + value, 0);
  return sum > 0 && values.every((value) => value >= 0) ? Number(weights.indications) / sum : null;
}
