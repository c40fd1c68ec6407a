import type { ReadingTask, StandingTask } from "@/lib/drills";
import { type Corner, type Drawing, drawGauge, drawRule, type Label, type Stroke } from "@/lib/gauges";

/**
 * Reads a drawn scale as an eye does, from its lines and figures alone; no reading of the project is used. Tenths on a
 * vernier, tenths on a dial, half millimetres on a rule.
 */
export function readByEye(task: ReadingTask): number {
  if (task.kind === "steel-rule") return readRuleAt(drawRule(), task.position);
  const drawing = drawGauge(task.placement, task.position, task.noise);
  return task.kind === "depth-gauge" ? readDial(drawing) : readVernierOf(drawing, axisOf(task));
}

/** The leg gauge's scale runs along the blade, the others square to it. */
const axisOf = ({ placement }: StandingTask): 0 | 1 =>
  placement.kind === "fillet-gauge" && placement.use === "leg" ? 0 : 1;

const strokesOf = ({ marks }: Drawing, role: Stroke["role"]): readonly Stroke[] =>
  marks.flatMap((mark) => (mark.kind === "stroke" && mark.role === role ? [mark] : []));
const labelsOf = ({ marks }: Drawing): readonly Label[] =>
  marks.flatMap((mark) => (mark.kind === "label" ? [mark] : []));
const number = ({ text }: Label): number => Number(text.replace("−", "-"));
const isNumber = ({ text }: Label): boolean => /^−?\d+$/.test(text);

/** The figure before the vernier's nought and the line of the vernier that stands nearest to one of the main scale. */
function readVernierOf(drawing: Drawing, along: 0 | 1): number {
  const across = along === 1 ? 0 : 1;
  const lines = strokesOf(drawing, "engraved");
  const edge = lines[0].from[across];
  const side = (point: Corner) => Math.sign(point[across] - edge);
  const figures = labelsOf(drawing).filter(isNumber);
  const main = figures.filter(({ at }) => side(at) > 0);
  const own = figures.filter(({ at }) => side(at) < 0);
  const at = (labels: readonly Label[], value: number): number => {
    const found = labels.find((one) => number(one) === value);
    if (!found) throw new Error(`no figure ${value}`);
    return found.at[along];
  };
  const perMm = (at(main, 10) - at(main, 5)) / 5;
  const valueAt = (place: number) => (place - at(main, 5)) / perMm + 5;
  const direction = Math.sign(at(own, 10) - at(own, 0));
  const vernier = lines
    .filter(({ from, to }) => from[across] === edge && side(to) < 0)
    .map(({ from }) => from[along])
    .sort((a, b) => direction * (a - b));
  // the eleventh line stands where the first does, one millimetre on
  const misses = vernier.slice(0, 10).map((place) => Math.abs(valueAt(place) - Math.round(valueAt(place))));
  const line = misses.indexOf(Math.min(...misses));
  return Math.round(10 * (Math.round(valueAt(vernier[line])) - line + line / 10)) / 10;
}

/** Where two lines cross: what a dial's lines point to. */
function crossing(one: Stroke, other: Stroke): Corner {
  const [du, dw] = [one.to[0] - one.from[0], one.to[1] - one.from[1]];
  const [eu, ew] = [other.to[0] - other.from[0], other.to[1] - other.from[1]];
  const share = ((other.from[0] - one.from[0]) * ew - (other.from[1] - one.from[1]) * eu) / (du * ew - dw * eu);
  return [one.from[0] + share * du, one.from[1] + share * dw];
}

/** The line that the hand stands nearest to as it turns about the middle of the dial, counted from the figures. */
function readDial(drawing: Drawing): number {
  const engraved = strokesOf(drawing, "engraved");
  // a quarter of the dial apart
  const [u0, w0] = crossing(engraved[0], engraved[35]);
  const angle = ([u, w]: Corner) => (Math.atan2(w - w0, u - u0) * 180) / Math.PI;
  const turned = (from: number, to: number) => ((((from - to) % 360) + 540) % 360) - 180;
  const hand = angle(strokesOf(drawing, "index")[0].to);
  const figures = labelsOf(drawing).filter(isNumber);
  const [nought, one] = [0, 1].map((value) => {
    const found = figures.find((figure) => number(figure) === value);
    if (!found) throw new Error(`no figure ${value}`);
    return angle(found.at);
  });
  const perMm = turned(nought, one);
  const lines = engraved.map(({ from }) => angle(from));
  const nearest = lines.reduce((a, b) => (Math.abs(turned(hand, a)) <= Math.abs(turned(hand, b)) ? a : b));
  // from the figure that is nearest, so that no turn is counted twice
  const figure = figures.reduce((a, b) =>
    Math.abs(turned(nearest, angle(a.at))) <= Math.abs(turned(nearest, angle(b.at))) ? a : b,
  );
  return Math.round(10 * (number(figure) + turned(angle(figure.at), nearest) / perMm)) / 10;
}

/** Lines counted from the figure before. */
function readRuleAt(drawing: Drawing, place: number): number {
  const lines = [...new Set(strokesOf(drawing, "engraved").map(({ from }) => from[0]))].sort((a, b) => a - b);
  const nearest = lines.reduce((a, b) => (Math.abs(a - place) <= Math.abs(b - place) ? a : b));
  const figures = labelsOf(drawing)
    .filter(isNumber)
    .filter(({ at }) => at[0] <= nearest + 1e-9);
  const before = figures.reduce<{ value: number; at: number }>(
    (best, label) => (label.at[0] >= best.at ? { value: number(label), at: label.at[0] } : best),
    { value: 0, at: 0 },
  );
  return before.value + lines.filter((line) => line > before.at + 1e-9 && line <= nearest + 1e-9).length / 2;
}
