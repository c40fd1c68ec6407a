"use client";
import { FACE_NAMES } from "@/app/_ui/section-names";
import { BIN, LEAST_LOOK, type Trail, timeOnStretch } from "@/lib/trail";
import { type JointKind, PIECES, type SurfaceFace } from "@/lib/weld";
import { AfarPattern, FaceStrip, SHADES } from "./face-strip";
import { useTrail } from "./trail-context";
import { TrailTable } from "./trail-table";

/**
 * Under the plate: how long each stretch of either face was in sight, close and with the torch low, as a strip and as a table.
 * `at` is the place of the chosen line.
 */
export function WhereYouLooked({
  kind,
  at,
}: {
  readonly kind: JointKind;
  readonly at: { readonly face: SurfaceFace; readonly x: number } | null;
}) {
  const trail = useTrail();
  if (!trail) {
    return <p className="text-ink-2 text-sm">Where you looked on this piece was not recorded.</p>;
  }
  const { faces, length } = PIECES[kind];
  return (
    <section aria-labelledby="where-looked" className="rounded-md border border-line bg-sheet p-3 text-sm">
      <h2 id="where-looked" className="font-semibold">
        Where you looked
      </h2>
      <AfarPattern />
      {faces.map((face) => (
        <FaceStrip
          key={face}
          trail={trail}
          face={face}
          at={at?.face === face ? at.x : null}
          words={`${FACE_NAMES[face]}: ${lengthWords(trail, face, length)}`}
        />
      ))}
      <Legend />
      <p className="mt-2 text-ink-2">
        It gives no marks and changes none. The bench noted what was on your screen while you moved the torch, the plate
        or the lens; where your eyes were nobody knows.
      </p>
      <details className="mt-1">
        <summary className="cursor-pointer py-3 font-medium">The same as a table</summary>
        {faces.map((face) => (
          <TrailTable key={face} trail={trail} face={face} />
        ))}
      </details>
    </section>
  );
}

/** How much of the weld was looked at, mm. */
function lengthWords(trail: Trail, face: SurfaceFace, length: number): string {
  const bins = Array.from({ length: length / BIN }, (_, bin) =>
    timeOnStretch(trail, { face, start: bin * BIN, end: (bin + 1) * BIN }, 0),
  );
  const close = BIN * bins.filter((time) => time.close >= LEAST_LOOK).length;
  const low = BIN * bins.filter((time) => time.low >= LEAST_LOOK).length;
  if (close === 0) return `none of the ${length} mm of weld looked at close up`;
  return `${close} of ${length} mm of weld looked at close up, ${low} mm of it with the torch low`;
}

function Legend() {
  return (
    <ul className="mt-2 flex flex-wrap gap-x-4 gap-y-1 text-ink-2">
      {SHADES.map(({ words, ...shade }) => (
        <li key={words} className="flex items-center gap-1.5">
          <svg viewBox="0 0 18 12" className="h-3 w-[18px]" aria-hidden="true">
            <rect width="18" height="12" {...shade} stroke="currentColor" />
          </svg>
          {words}
        </li>
      ))}
      <li className="flex items-center gap-1.5">
        <svg viewBox="0 0 18 12" className="h-3 w-[18px]" aria-hidden="true">
          <rect y="4" width="18" height="4" fill="currentColor" className="text-ink" />
        </svg>
        with the torch low
      </li>
    </ul>
  );
}
