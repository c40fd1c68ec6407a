import type { RandomStream } from "../../random";
import type { Region } from "../measure";
import type { Feature, FeatureBuilder, FeatureRequest } from "../work";
import { besideWeld } from "./beside-weld";
import { cutScoops, drawScoops, type GrindingMark, paintScoops } from "./grinding-scoops";
import { measuredDepression } from "./measured-mark";
import { plateAround } from "./plate-plane";

const WIDTH = { least: 4.5, most: 7.5 };
/** The box that is looked at, beyond what was asked, mm. */
const MARGIN = 1.5;

/** A ground hollow on the plate, its depth as given; `harmless` makes its truth neutral. */
function groundHollow(request: FeatureRequest, random: RandomStream, depth: number, harmless: boolean): Feature {
  const draw = random.child("scoops");
  const width = draw.uniform(WIDTH.least, WIDTH.most);
  const length = Math.max(request.length, width);
  const mark: GrindingMark = drawScoops(draw, length, width, depth, harmless);
  const x = request.x + length / 2;
  let box: Region | null = null;
  let trace: ReturnType<typeof cutScoops> | null = null;
  return {
    id: request.id,
    cut(work) {
      const high = width / 2 + 0.15 * length + MARGIN;
      const y = besideWeld(work, request, x, width / 2 + 0.12 * length, 1);
      const reach = 0.68 * length + MARGIN;
      box = { x0: x - reach, x1: x + reach, y0: y - high, y1: y + high };
      trace = cutScoops(work.strip, mark, x, y, plateAround(work.strip, box));
    },
    paint(work) {
      if (trace) paintScoops(work.strip, mark, trace);
    },
    measure: (work) => (box ? measuredDepression(work, request.id, "grinding-mark", box, harmless) : null),
  };
}

/**
 * Hollow ground into the plate beside the weld from `x` over `length` mm (9 to 28), `severity` mm deep at its deepest.
 * Truth: size = greatest depth below the plane of the plate round it; extent = where it lies 0.08 mm or more below.
 */
export const grindingMark: FeatureBuilder = (request, random) => groundHollow(request, random, request.severity, false);

const LIGHTEST = 0.12;

/**
 * Harmless: the plate dressed with a disc to take off spatter; bright and scratched, at most 0.15 mm deep. Its truth is
 * neutral, or nothing where no hollow can be measured.
 */
export const lightGrinding: FeatureBuilder = (request, random) =>
  groundHollow(request, random, Math.min(request.severity > 0 ? request.severity : LIGHTEST, 0.15), true);
