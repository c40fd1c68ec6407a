import { memo } from "react";
import type { Corner, Mark, Shape, Stroke } from "@/lib/gauges";

/** Paint of each role: ground steel for what is fixed, brass for what moves. */
const FILLS: Readonly<Record<Shape["role"], string>> = {
  body: "#c6cbcd",
  leg: "#aab1b5",
  moving: "#dcc888",
  recess: "#8d9599",
  screw: "#7f888d",
  "screw-face": "#b4bbbf",
  bore: "#e9e5da",
};
const STROKES: Readonly<Record<Stroke["role"], string>> = { engraved: "#14181a", index: "#a3231f", slot: "#2b3134" };

/** Height of a capital of the page's letters, as a share of their size. */
const CAPITAL = 0.727;

const pathOf = (outline: readonly Corner[]): string =>
  `M${outline.map(([u, w]) => `${u.toFixed(3)} ${w.toFixed(3)}`).join("L")}Z`;

/** A drawing's marks in a frame of mm whose second axis goes up. */
export const DrawnMarks = memo(function DrawnMarks({ marks }: { marks: readonly Mark[] }) {
  // biome-ignore lint/suspicious/noArrayIndexKey: the marks of a drawing keep their order
  return marks.map((mark, n) => <DrawnMark key={`${mark.kind}${n}`} mark={mark} />);
});

function DrawnMark({ mark }: { mark: Mark }) {
  switch (mark.kind) {
    case "shape":
      return (
        <path
          d={pathOf(mark.outline)}
          fill={FILLS[mark.role]}
          stroke="#20262a"
          strokeWidth="1"
          vectorEffect="non-scaling-stroke"
        />
      );
    case "stroke":
      return (
        <path
          d={`M${mark.from[0]} ${mark.from[1]}L${mark.to[0]} ${mark.to[1]}`}
          stroke={STROKES[mark.role]}
          strokeWidth={mark.width}
        />
      );
    case "label":
      return (
        <text
          transform={`translate(${mark.at[0]} ${mark.at[1] - mark.size / 2}) scale(1 -1)`}
          fontSize={mark.size / CAPITAL}
          textAnchor={mark.anchor}
          fill="#14181a"
          fontWeight="550"
        >
          {mark.text}
        </text>
      );
  }
}
