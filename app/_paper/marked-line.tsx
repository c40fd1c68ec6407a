import type { WantedPicture } from "@/app/_bench";
import { callHighlight, clutterHighlight, truthHighlight } from "@/app/_marks/highlights";
import { lineWords } from "@/app/_marks/line-words";
import { PartTable } from "@/app/_marks/part-table";
import type { SheetView } from "@/app/_marks/sheet-view";
import { SIGNS, Sign } from "@/app/_marks/sign";
import { CLUTTER_WORDS } from "@/lib/imperfections";
import { type AccountLine, marksInHundredths } from "@/lib/results";
import { LitPicture } from "./lit-picture";

interface MarkedLineProps {
  readonly sheet: SheetView;
  readonly line: AccountLine;
  /** Null where the line is about no place. */
  readonly picture: WantedPicture | null;
  readonly address: string | undefined;
}

/** Paper for each mm of the piece. */
const SCALE = 1.5;

/** One line of the account on paper: what happened, its arithmetic, and its place under the torch. */
export function MarkedLine({ sheet, line, picture, address }: MarkedLineProps) {
  const truths = sheet.truths.filter(({ id }) => line.truthIds.includes(id));
  const calls = sheet.calls.filter(({ id }) => line.callIds.includes(id));
  const clutter = sheet.clutter.filter(({ id }) => id === line.clutter?.id);
  const { title, story } = lineWords(line, truths, calls);
  const { letter, words } = SIGNS[line.kind];
  const highlights = [
    ...truths.map((truth) => truthHighlight(truth, letter)),
    ...clutter.map((item) => clutterHighlight(item, letter)),
    ...calls.flatMap((call) => callHighlight(call, `No. ${sheet.calls.indexOf(call) + 1}`) ?? []),
  ];
  return (
    <div className="paper-entry flex gap-4">
      <div className="min-w-0 flex-1">
        <div className="flex items-start gap-2">
          <Sign kind={line.kind} />
          <p className="min-w-0 flex-1">
            <strong>{title}</strong>
            <br />
            {line.clutter ? `no imperfection, but ${CLUTTER_WORDS[line.clutter.kind].name}` : words}
          </p>
          <p className="text-right whitespace-nowrap">
            <strong>{marksInHundredths(line.earned)}</strong>
            {line.worth > 0 && ` of ${marksInHundredths(line.worth)}`}
          </p>
        </div>
        <p className="mt-1">{story}</p>
        {(line.parts.length > 0 || line.cost !== 0) && <PartTable line={line} />}
      </div>
      {picture && (
        <figure>
          <LitPicture picture={picture} address={address} scale={SCALE} highlights={highlights} label={title} />
          <figcaption className="text-[7.5pt]">
            {picture.from < 0 ? "0" : picture.from.toFixed(0)} to {picture.to.toFixed(0)} mm, {SCALE} times its size
          </figcaption>
        </figure>
      )}
    </div>
  );
}
