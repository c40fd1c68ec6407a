import { FACE_NAMES } from "@/app/_ui/section-names";
import { lookKind, type Trail, timeOnStretch } from "@/lib/trail";
import { jointOf, PIECES, type SurfaceFace } from "@/lib/weld";
import { seconds, sideWords } from "./trail-words";

/** One row so far along the weld, mm. */
const STEP = 50;

/** What at least half of each stretch was in sight for. */
export function TrailTable({ trail, face }: { readonly trail: Trail; readonly face: SurfaceFace }) {
  const { length } = PIECES[jointOf(face)];
  const sides = face === "fillet" ? ["base plate", "standing plate"] : ["plate A", "plate B"];
  const starts = Array.from({ length: length / STEP }, (_, row) => row * STEP);
  return (
    <table className="mb-3 w-full text-left text-xs">
      <caption className="py-1 text-left font-medium">
        {FACE_NAMES[face]}: how long half of each stretch or more was in sight close up
      </caption>
      <thead>
        <tr className="border-line border-b">
          <th scope="col" className="py-1 pr-2">
            mm
          </th>
          {["weld", ...sides].map((name) => (
            <th key={name} scope="col" className="py-1 pr-2">
              {name}
            </th>
          ))}
          <th scope="col" className="py-1">
            weld, torch low from
          </th>
        </tr>
      </thead>
      <tbody>
        {starts.map((start) => {
          const on = (line: number) => timeOnStretch(trail, { face, start, end: start + STEP }, line);
          const weld = on(0);
          return (
            <tr key={start} className="border-line border-b">
              <th scope="row" className="py-1 pr-2 font-normal">
                {start} to {start + STEP}
              </th>
              {[weld, on(1), on(2)].map((time, line) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the lines have a fixed order
                <td key={line} className="py-1 pr-2">
                  {timeWords(time)}
                </td>
              ))}
              <td className="py-1">{sideWords(weld) || "no side"}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function timeWords(time: ReturnType<typeof timeOnStretch>): string {
  const kind = lookKind(time);
  if (kind === "never") return "not";
  return kind === "afar" ? "from afar" : seconds(time.close);
}
