"use client";
import type { LeafFit } from "@/lib/gauges";
import type { EndView } from "@/lib/weld";

/** What is seen of an end, mm: from behind the standing plate to past the weld, from below the base plate upwards. */
const SEEN = { left: -36, right: 22, bottom: -16, top: 24 };
/** Around the place where the leaf goes in, mm. */
const CLOSE = 5;
/** A leaf that does not go in is held so far before the gap; one that goes in stops so far before the root, mm. */
const HELD_BEFORE = 0.6;
const BEFORE_ROOT = 1.2;
const LEAF_LENGTH = 26;

export interface EndPictureProps {
  readonly end: EndView;
  /** Seen from its own side, the far end shows the weld to the left. */
  readonly isMirrored: boolean;
  readonly leaf: { readonly thickness: number; readonly fit: LeafFit } | null;
  readonly label: string;
}

/** One end of the joint as an eye along the weld sees it, and the leaf that is tried under the standing plate. */
export function EndPicture({ end, isMirrored, leaf, label }: EndPictureProps) {
  const back = Math.min(...end.standing.map(({ along }) => along));
  const picture = (
    <g transform={`scale(${isMirrored ? -1 : 1} -1)`}>
      <Plate outline={end.base} />
      <Plate outline={end.standing} />
      <path d={pathOf(end.weld)} fill="#7d7568" stroke="#20241f" strokeWidth="1" vectorEffect="non-scaling-stroke" />
      {leaf && <Leaf thickness={leaf.thickness} tip={leaf.fit === "does-not-go" ? back - HELD_BEFORE : -BEFORE_ROOT} />}
    </g>
  );
  const [left, right] = isMirrored ? [-SEEN.right, -SEEN.left] : [SEEN.left, SEEN.right];
  const mouth = (isMirrored ? -1 : 1) * (back + 1.5);
  return (
    <div className="relative">
      <svg
        viewBox={`${left} ${-SEEN.top} ${right - left} ${SEEN.top - SEEN.bottom}`}
        className="block w-full rounded bg-[#e9e5da]"
        role="img"
        aria-label={label}
      >
        {picture}
      </svg>
      {leaf && (
        <svg
          viewBox={`${mouth - CLOSE} ${-CLOSE - 0.5} ${2 * CLOSE} ${2 * CLOSE}`}
          className={`absolute top-1 aspect-square w-[38%] rounded-full border-2 border-[#0c0e0f] bg-[#e9e5da] ${isMirrored ? "left-1" : "right-1"}`}
          role="img"
          aria-label="Where the leaf goes in, close to"
        >
          {picture}
        </svg>
      )}
    </div>
  );
}

function Plate({ outline }: { outline: EndView["base"] }) {
  return <path d={pathOf(outline)} fill="#8b9397" stroke="#20241f" strokeWidth="1" vectorEffect="non-scaling-stroke" />;
}

/** It lies on the base plate and comes from the side that is not welded. */
function Leaf({ thickness, tip }: { thickness: number; tip: number }) {
  return (
    <rect
      x={tip - LEAF_LENGTH}
      y="0"
      width={LEAF_LENGTH}
      height={thickness}
      fill="#f2c14e"
      stroke="#20241f"
      strokeWidth="0.8"
      vectorEffect="non-scaling-stroke"
    />
  );
}

const pathOf = (outline: EndView["base"]): string =>
  outline.length === 0 ? "" : `M${outline.map(({ along, up }) => `${along} ${up}`).join("L")}Z`;
