import { CLOSE_LOOK_SCALE, eighthOfTorch, heightOfTorch, lightFrom, type Torch, type Viewport } from "../bench";
import { clamp, type Mm } from "../math";
import { upOnScreen } from "../weld";
import { BIN } from "./thresholds";
import { AFAR, binsOf, CLOSE, countAt, countsOf, FIRST_LOW, linesBetween, type Trail } from "./trail";

/** What is on the screen at a moment. */
export interface Look {
  readonly view: Viewport;
  readonly torch: Torch;
  /** What is seen in the lens; null while none is held. */
  readonly lens: Viewport | null;
}

/**
 * Adds that a look lasted so many beats. A bin is in sight if its middle is, and one that lies under the lens is seen close.
 * The torch is held low where that is the nearest of its named heights.
 */
export function noteLook(trail: Trail, { view, torch, lens }: Look, beats: number): Trail {
  if (beats <= 0) return trail;
  const { aspect } = view;
  const counts = [...(trail[aspect] ?? new Array<number>(countsOf(aspect)).fill(0))];
  const light = lightFrom(torch, aspect);
  const low = heightOfTorch(light) === "low" ? FIRST_LOW + eighthOfTorch(light) : null;
  const add = (channel: number, cells: readonly Cell[]) => {
    for (const { line, bin } of cells) counts[countAt(aspect, channel, line, bin)] += beats;
  };

  const inView = cellsIn(view, view.width, view.height);
  const inLens = lens ? cellsIn(lens, lens.width * INSIDE, lens.height * INSIDE) : [];
  const isClose = view.scale >= CLOSE_LOOK_SCALE;
  const beside = inView.filter((cell) => !inLens.some(({ line, bin }) => line === cell.line && bin === cell.bin));
  const close = isClose ? [...inLens, ...beside] : inLens;
  add(CLOSE, close);
  if (low !== null) add(low, close);
  if (!isClose) add(AFAR, beside);
  return { ...trail, [aspect]: counts };
}

/** Side of the square inside a round lens, share of its diameter. */
const INSIDE = Math.SQRT1_2;

interface Cell {
  readonly line: number;
  readonly bin: number;
}

/** Bins whose middle lies within a view, this many px wide and high. */
function cellsIn({ aspect, x, up, scale }: Viewport, width: number, height: number): readonly Cell[] {
  const across = up * upOnScreen(aspect);
  const half = { along: width / scale / 2, across: height / scale / 2 };
  const [first, last] = binsBetween(x - half.along, x + half.along, binsOf(aspect));
  return linesBetween(aspect, across - half.across, across + half.across).flatMap((line) =>
    Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => ({ line, bin: first + at })),
  );
}

/** First and last bin with their middle between two places; the last is before the first where there is none. */
function binsBetween(from: Mm, to: Mm, bins: number): readonly [first: number, last: number] {
  return [clamp(Math.ceil(from / BIN - 0.5), 0, bins), clamp(Math.floor(to / BIN - 0.5), -1, bins - 1)];
}
