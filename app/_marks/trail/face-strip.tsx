import { BIN, LEAST_LOOK, lookKind, type TimeInSight, type Trail, timeOnStretch } from "@/lib/trail";
import { jointOf, PIECES, type SurfaceFace, upOnScreen } from "@/lib/weld";

/** Dots on the ground of the sheet; once on a page, and all strips take it from there. */
export function AfarPattern() {
  return (
    <svg className="absolute size-0" aria-hidden="true">
      <pattern id="from-afar" width="4" height="4" patternUnits="userSpaceOnUse">
        <rect width="4" height="4" fill="var(--color-sheet)" />
        <rect width="1" height="1.4" fill="var(--color-ink)" />
      </pattern>
    </svg>
  );
}

/** How a bin is filled, by how long it was in sight close up; told apart by lightness and by a pattern, not by colour. */
export const SHADES = [
  { words: "not", fill: "var(--color-sheet)" },
  { words: "only from afar", fill: "url(#from-afar)" },
  { words: `from ${LEAST_LOOK} s`, fill: "var(--color-ink)", fillOpacity: 0.22 },
  { words: "from 10 s", fill: "var(--color-ink)", fillOpacity: 0.48 },
  { words: "from 30 s", fill: "var(--color-ink)", fillOpacity: 0.8 },
] as const;

function shadeOf(time: TimeInSight) {
  if (time.close >= LEAST_LOOK) return SHADES[time.close >= 30 ? 4 : time.close >= 10 ? 3 : 2];
  return SHADES[lookKind(time) === "afar" ? 1 : 0];
}

const ROW = 12;
const BAR = 3;
const GAP = 2;

interface FaceStripProps {
  readonly trail: Trail;
  readonly face: SurfaceFace;
  /** mm from the datum; null where nothing is chosen on this face. */
  readonly at: number | null;
  readonly words: string;
}

/** One face as it lies on the screen: the weld, and the plate on either side of it, bin by bin from the datum. */
export function FaceStrip({ trail, face, at, words }: FaceStripProps) {
  const { length } = PIECES[jointOf(face)];
  // the first side is plate A's or the base plate's
  const rows = upOnScreen(face) === 1 ? [1, 0, 2] : [2, 0, 1];
  const names = face === "fillet" ? ["weld", "base", "standing"] : ["weld", "A", "B"];
  const height = rows.length * (ROW + GAP);
  const bins = Array.from({ length: length / BIN }, (_, bin) => bin * BIN);
  const hundreds = Array.from({ length: Math.floor(length / 50) + 1 }, (_, index) => index * 50);
  const percent = (x: number) => `${(100 * x) / length}%`;
  return (
    <figure className="mt-2">
      <figcaption>{words}.</figcaption>
      <div className="mt-1 grid grid-cols-[auto_minmax(0,1fr)] gap-x-2">
        <div className="flex flex-col text-ink-2 text-xs" aria-hidden="true">
          {rows.map((line) => (
            <span key={line} style={{ height: ROW + GAP }} className="leading-[14px]">
              {names[line]}
            </span>
          ))}
        </div>
        <div>
          <svg
            viewBox={`0 0 ${length} ${height}`}
            preserveAspectRatio="none"
            className="block w-full"
            style={{ height }}
            data-looked={face}
            aria-hidden="true"
          >
            {rows.map((line, row) => (
              <g key={line} transform={`translate(0 ${row * (ROW + GAP)})`}>
                {bins.map((start) => {
                  const time = timeOnStretch(trail, { face, start, end: start + BIN }, line);
                  const { words: _, ...shade } = shadeOf(time);
                  return (
                    <g key={start}>
                      <rect x={start} width={BIN} height={ROW} {...shade} />
                      {time.low >= LEAST_LOOK && (
                        <rect x={start} y={ROW - BAR} width={BIN} height={BAR} fill="var(--color-ink)" />
                      )}
                    </g>
                  );
                })}
                <rect
                  width={length}
                  height={ROW}
                  fill="none"
                  stroke="var(--color-ink-2)"
                  vectorEffect="non-scaling-stroke"
                />
              </g>
            ))}
          </svg>
          <div className="relative h-4 text-ink-2 text-xs" aria-hidden="true">
            {hundreds.map((x) => (
              <span
                key={x}
                className={`absolute ${x === 0 ? "" : x === length ? "-translate-x-full" : "-translate-x-1/2"}`}
                style={{ left: percent(x) }}
              >
                {x}
              </span>
            ))}
            {at !== null && (
              <span
                className="-translate-x-1/2 absolute -top-1 bg-sheet px-0.5 text-ink leading-none"
                style={{ left: percent(at) }}
              >
                ▲
              </span>
            )}
          </div>
        </div>
      </div>
    </figure>
  );
}
