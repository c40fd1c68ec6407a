import type { Highlight, WantedPicture } from "@/app/_bench";
import { FACE_NAMES } from "@/app/_ui/section-names";
import { type Aspect, faceOf, upOnScreen } from "@/lib/weld";
import { LitPicture } from "./lit-picture";

interface PieceStripProps {
  readonly picture: WantedPicture;
  readonly address: string | undefined;
  /** Of the piece, mm. */
  readonly length: number;
  readonly highlights: readonly Highlight[];
}

const NAMES: Readonly<Record<Aspect, string>> = {
  ...FACE_NAMES,
  base: "Square on the base plate",
  standing: "Square on the standing plate",
};

/** A strip of the piece at true scale: stamped with its plates, over a rule with its nought at the datum. */
export function PieceStrip({ picture, address, length, highlights }: PieceStripProps) {
  const { aspect, from, to } = picture;
  const name = `${NAMES[aspect]}, ${from} to ${to} mm`;
  const [upper, lower] = stampsOf(aspect);
  return (
    <figure>
      <figcaption className="flex justify-between gap-3 pl-[6mm]">
        <strong>{name}</strong>
        <span>
          {from === 0 ? "Datum end on the left" : "Continues from the page before"}
          {to === length ? ", far end on the right" : ", continues on the next page"}
        </span>
      </figcaption>
      <div className="flex">
        <div className="flex w-[6mm] flex-col justify-between py-[2mm] text-[12pt] font-bold" aria-hidden="true">
          <span>{upper}</span>
          <span>{lower}</span>
        </div>
        <LitPicture picture={picture} address={address} scale={1} highlights={highlights} label={name} />
      </div>
      <RuleOnPaper from={from} to={to} />
    </figure>
  );
}

/** What is stamped on the upper and the lower plate as they lie. */
function stampsOf(aspect: Aspect): readonly [string, string] {
  if (faceOf(aspect) === "fillet") return ["", ""];
  return upOnScreen(aspect) === 1 ? ["A", "B"] : ["B", "A"];
}

const LONG = 4;

/** A rule in mm, right under the strip that it belongs to. */
function RuleOnPaper({ from, to }: { readonly from: number; readonly to: number }) {
  const lines = Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, n) => Math.ceil(from) + n);
  return (
    <svg
      className="ml-[6mm] block overflow-visible"
      style={{ width: `${to - from}mm`, height: "8mm" }}
      viewBox={`${from} 0 ${to - from} 8`}
      role="img"
      aria-label={`Rule from ${from} to ${to} mm`}
    >
      <path
        d={lines.map((at) => `M${at} 0V${at % 10 === 0 ? LONG : at % 5 === 0 ? 3 : 1.8}`).join("")}
        stroke="#000"
        strokeWidth="0.15"
      />
      {lines
        .filter((at) => at % 10 === 0)
        .map((at) => (
          <text key={at} x={at} y="7.2" textAnchor="middle" fontSize="2.8" fill="#000">
            {at}
          </text>
        ))}
    </svg>
  );
}
