import { DRAWN } from "@/app/_bench/overlay/palette";

/** What lies beside a window to measure by: ten millimetres, or a rule as long as the window. */
export type ScaleKind = "ten" | "whole";

interface WindowScaleProps {
  readonly kind: ScaleKind;
  /** Of the window, px and mm. */
  readonly width: number;
  readonly length: number;
}

const HEIGHT = 28;

/** A scale along the lower edge of a window; it covers none of the metal. */
export function WindowScale({ kind, width, length }: WindowScaleProps) {
  const perMm = width / length;
  const most = kind === "ten" ? 10 : length;
  const left = kind === "ten" ? 10 : 0;
  const lines = Array.from({ length: most + 1 }, (_, mm) => mm);
  return (
    <svg viewBox={`0 0 ${width} ${HEIGHT}`} className="eye-scale" style={{ height: HEIGHT }} aria-hidden="true">
      <rect
        x={left === 0 ? 0 : left - 6}
        y="0"
        width={left === 0 ? width : most * perMm + 12}
        height={HEIGHT}
        fill={DRAWN.ruleFill}
      />
      {lines.map((mm) => (
        <path
          key={mm}
          d={`M${left + mm * perMm} 0v${mm % 10 === 0 ? 12 : mm % 5 === 0 ? 9 : 6}`}
          stroke={DRAWN.ruleInk}
          strokeWidth="1.2"
        />
      ))}
      {kind === "ten" ? (
        <text x={left + 5 * perMm} y="24" textAnchor="middle" fontSize="12.5" fontWeight="600" fill={DRAWN.ruleInk}>
          10 mm
        </text>
      ) : (
        lines
          .filter((mm) => mm > 0 && mm % 10 === 0)
          .map((mm) => (
            <text key={mm} x={mm * perMm} y="24" textAnchor="middle" fontSize="12.5" fill={DRAWN.ruleInk}>
              {mm}
            </text>
          ))
      )}
    </svg>
  );
}
