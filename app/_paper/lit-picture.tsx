import type { Highlight, WantedPicture } from "@/app/_bench";
import { faceOf, upOnScreen } from "@/lib/weld";

interface LitPictureProps {
  readonly picture: WantedPicture;
  /** Where the painted picture is; undefined while it is being painted. */
  readonly address: string | undefined;
  /** Millimetres of paper for each mm of the piece. */
  readonly scale: number;
  readonly highlights: readonly Highlight[];
  readonly label: string;
}

/** A part of the piece on paper with outlines over it: unbroken what was there, broken what was called. */
export function LitPicture({ picture, address, scale, highlights, label }: LitPictureProps) {
  const { aspect, from, to, low, high } = picture;
  const up = upOnScreen(aspect);
  const [width, height] = [to - from, high - low];
  const top = up === 1 ? -high : low;
  const seen = highlights.filter(({ face }) => face === faceOf(aspect));
  return (
    <div className="relative" style={{ width: `${width * scale}mm`, height: `${height * scale}mm` }}>
      {address ? (
        // biome-ignore lint/performance/noImgElement: painted in this browser a moment ago
        <img src={address} alt={label} className="block size-full" />
      ) : (
        <div className="size-full bg-paper-2" />
      )}
      <svg
        viewBox={`${from} ${top} ${width} ${height}`}
        className="absolute inset-0 size-full overflow-hidden"
        aria-hidden="true"
      >
        {seen.map((highlight) => (
          <Outline key={`${highlight.style} ${highlight.id}`} highlight={highlight} up={up} scale={scale} />
        ))}
      </svg>
    </div>
  );
}

interface OutlineProps {
  readonly highlight: Highlight;
  readonly up: 1 | -1;
  readonly scale: number;
}

function Outline({ highlight, up, scale }: OutlineProps) {
  const { outline, style, label } = highlight;
  const isTruth = style === "truth";
  const points = outline.map(([x, y]) => `${x},${-y * up}`).join(" ");
  const lefts = outline.map(([x]) => x);
  const tops = outline.map(([, y]) => -y * up);
  const size = 3 / scale;
  return (
    <g fill="none">
      <polygon points={points} stroke="#fff" strokeWidth={0.9 / scale} />
      <polygon
        points={points}
        stroke="#000"
        strokeWidth={0.4 / scale}
        strokeDasharray={isTruth ? undefined : `${1.6 / scale} ${1 / scale}`}
      />
      <text
        x={(Math.min(...lefts) + Math.max(...lefts)) / 2}
        y={isTruth ? Math.min(...tops) - 0.8 / scale : Math.max(...tops) + size}
        textAnchor="middle"
        fontSize={size}
        fontWeight="700"
        fill="#000"
        stroke="#fff"
        strokeWidth={0.8 / scale}
        paintOrder="stroke"
      >
        {label}
      </text>
    </g>
  );
}
