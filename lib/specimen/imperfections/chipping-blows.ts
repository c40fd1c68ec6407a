import { clamp } from "../../math";
import type { RandomStream } from "../../random";

/** One blow of an edge, about the middle of the mark; mm and radians. */
export interface Blow {
  readonly x: number;
  readonly y: number;
  /** Of the edge that went in, and its direction. */
  readonly length: number;
  readonly turn: number;
  readonly depth: number;
  /** How far the wall runs out per mm of depth, where the edge pushed and where it came from: far for a glancing blow. */
  readonly steep: number;
  readonly gentle: number;
  /** 0 the edge went in flat .. 1 with one corner. */
  readonly corner: number;
  /** Of the edge, per mm. */
  readonly bend: number;
  readonly seed: number;
}

/** With what was struck: lengths of the edge that goes in, mm; how much the directions differ, radians; share of corner blows. */
interface Tool {
  readonly length: readonly [number, number];
  readonly shaky: number;
  readonly corner: number;
}

const TOOLS: Readonly<Record<"blade" | "chisel" | "point", Tool>> = {
  blade: { length: [1.8, 4.6], shaky: 0.22, corner: 0.65 },
  chisel: { length: [1.5, 3.4], shaky: 0.32, corner: 0.45 },
  point: { length: [0.9, 1.7], shaky: 0.7, corner: 0.8 },
};

/** Share of blows that slid over the plate, and of those struck from the other side. */
const GLANCING = 0.32;
const TURNED = 0.14;

/** A loose group of blows along `length` mm, struck by one hand with one tool: the first is the deepest. */
export function drawBlows(random: RandomStream, length: number, depth: number): Blow[] {
  const tool = TOOLS[random.pick(["blade", "blade", "chisel", "chisel", "point"] as const)];
  const heading = random.uniform(0.35, 1.35) * random.pick([-1, 1]) + (random.chance(0.5) ? Math.PI : 0);
  const count = 2 + Math.round(length * random.uniform(0.2, 0.55));
  const drift = random.normal(0, 0.12);
  const clump = random.uniform(-0.3, 0.3);
  const longest = Math.max(1, 0.75 * length);
  return Array.from({ length: count }, (_, n) => {
    const isDeepest = n === 0;
    const glances = !isDeepest && random.chance(GLANCING);
    // two stand near the ends, the others gather somewhere between
    const share = n === 0 ? -0.36 : n === 1 ? 0.36 : clamp(clump + random.normal(0, 0.2), -0.42, 0.42);
    const x = share * length + random.normal(0, 0.05) * length;
    const corner = random.chance(tool.corner) ? random.uniform(0.7, 1) : random.uniform(0.15, 0.5);
    const drawn = Math.min(longest, random.uniform(...tool.length));
    return {
      x,
      y: drift * x + random.normal(0, 0.55),
      length: (isDeepest ? Math.max(1.5, drawn) : drawn) * (glances ? 0.8 : 1),
      turn: heading + random.normal(0, tool.shaky) + (random.chance(TURNED) ? Math.PI : 0),
      depth: depth * (isDeepest ? 1 : glances ? random.uniform(0.12, 0.34) : random.uniform(0.3, 0.92)),
      steep: random.uniform(0.5, 0.95),
      gentle: glances ? random.uniform(6, 12) : random.uniform(1.3, 2.8),
      corner,
      bend: random.normal(0, 0.05),
      seed: random.seed(),
    };
  });
}
