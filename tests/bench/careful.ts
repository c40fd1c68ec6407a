import type { JointKind } from "@/lib/weld";
import { type Inspected, inspected } from "../support/careful/inspected";

const COUNT = { usual: 12, long: 60 };

/** What a careful inspector with the gauges measures and earns: marks, and errors of every dimension and size. */
export function benchCareful({ long }: { long: boolean }): string[] {
  const count = long ? COUNT.long : COUNT.usual;
  return (["butt", "fillet"] as const).flatMap((kind) => linesOf(kind, count));
}

function linesOf(kind: JointKind, count: number): string[] {
  const all = Array.from({ length: count }, (_, n) => inspected(kind, `careful ${n}`));
  const marks = all.map(({ mark }) => mark);
  return [
    `${count} ${kind === "butt" ? "butt plates" : "fillets"}: mean mark ${meanOf(marks).toFixed(2)}, least ${Math.min(...marks).toFixed(2)}`,
    ...dimensionLines(all),
    ...sizeLines(all),
  ];
}

function dimensionLines(all: readonly Inspected[]): string[] {
  const errors = new Map<string, number[]>();
  let outside = 0;
  for (const { dimension, written, actual, tolerance } of all.flatMap(({ dimensions }) => dimensions)) {
    const error = (written ?? Number.NaN) - actual;
    if (!(Math.abs(error) <= tolerance + 1e-9)) outside++;
    errors.set(dimension, [...(errors.get(dimension) ?? []), error]);
  }
  const wrong = all.flatMap(({ statements }) => statements.filter(({ worth, earned }) => earned < worth)).length;
  return [
    ...[...errors].map(([name, found]) => `  ${name}: ${spread(found)}`),
    `  outside their tolerance: ${outside} dimensions, ${wrong} statements`,
  ];
}

function sizeLines(all: readonly Inspected[]): string[] {
  const sizes = all.flatMap((one) => one.sizes.map((size) => ({ seed: one.seed, ...size })));
  const outside = sizes.filter(({ isWithin }) => !isWithin);
  return [
    `  sizes outside their tolerance: ${outside.length} of ${sizes.length}`,
    ...outside.map(({ seed, what, written, actual }) => `    ${seed}: ${what}, ${written} for ${actual.toFixed(2)}`),
  ];
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
const spread = (errors: readonly number[]): string =>
  `mean error ${meanOf(errors).toFixed(2)}, largest ${Math.max(...errors.map(Math.abs)).toFixed(2)} of ${errors.length}`;
