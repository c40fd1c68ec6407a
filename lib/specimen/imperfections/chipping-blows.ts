import { clamp, mix } from "../../math";
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
  blade: { length: [1.2, 4.8], shaky: 0.38, corner: 0.6 },
  chisel: { length: [1, 3.6], shaky: 0.5, corner: 0.45 },
  point: { length: [0.6, 1.9], shaky: 0.9, corner: 0.7 },
};

/** Share of blows that slid over the plate, and of those struck from the other side. */
const GLANCING = 0.4;
const TURNED = 0.22;
/** Marks up to this length, mm, may be of a single blow. */
const SINGLE = 7;

/** A single blow or a loose group along `length` mm, struck by one hand with one tool: the first is the deepest. */
export function drawBlows(random: RandomStream, length: number, depth: number): Blow[] {
  const tool = TOOLS[random.pick(["blade", "blade", "chisel", "chisel", "point"] as const)];
  const heading = random.uniform(0.35, 1.35) * random.pick([-1, 1]) + (random.chance(0.5) ? Math.PI : 0);
  const isSingle = length <= SINGLE && random.chance(0.3);
  const count = isSingle ? 1 : (length > SINGLE ? 3 : 2) + Math.round(length * random.uniform(0, 0.24));
  const drift = random.normal(0, 0.2);
  const clump = random.uniform(-0.36, 0.36);
  const gathered = random.uniform(0.06, 0.26);
  const longest = Math.max(1, 0.75 * length);
  return Array.from({ length: count }, (_, n) => {
    const isDeepest = n === 0;
    // those that hold the mark together went in
    const holds = n < (length > SINGLE ? 3 : 2);
    const glances = !holds && random.chance(GLANCING);
    // two stand near the ends, the others gather somewhere between
    const ordered = [-0.38, 0.38, random.uniform(-0.14, 0.14)] as const;
    const share = ordered[n] ?? clamp(clump + random.normal(0, gathered), -0.42, 0.42);
    const x = isSingle ? 0 : share * length + random.normal(0, 0.06) * length;
    const corner = random.chance(tool.corner) ? random.uniform(0.7, 1) : random.uniform(0.15, 0.5);
    // most edges touch with a corner, few go in over their whole length
    const drawn = Math.min(longest, mix(...tool.length, random.uniform(0, 1) ** 1.6));
    return {
      x,
      y: isSingle ? 0 : drift * x + clamp(random.normal(0, 0.5 + 0.09 * length), -2.4, 2.4),
      length:
        (isSingle ? Math.max(0.6 * length, drawn) : isDeepest ? Math.max(1.5, drawn) : drawn) * (glances ? 0.8 : 1),
      turn: heading + random.normal(0, tool.shaky) + (random.chance(TURNED) ? Math.PI : 0),
      depth: depth * (isDeepest ? 1 : glances ? random.uniform(0.1, 0.34) : random.uniform(holds ? 0.5 : 0.22, 0.95)),
      steep: random.uniform(0.5, 0.95),
      gentle: glances ? random.uniform(6, 12) : random.uniform(1.3, 2.8),
      corner,
      bend: random.normal(0, 0.09),
      seed: random.seed(),
    };
  });
}
