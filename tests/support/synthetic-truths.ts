import { CLUTTER, type ImperfectionType, imperfection, typesOn } from "../../lib/imperfections";
import type { RandomStream } from "../../lib/random";
import type {
  ButtTruth,
  ClutterItem,
  DimensionTruth,
  FilletTruth,
  StatementTruth,
  TruthItem,
} from "../../lib/specimen";
import {
  type Dimension,
  FILLET_PROCESSES,
  type FilletPosition,
  POSITIONS,
  PROCESSES,
  type SurfaceFace,
} from "../../lib/weld";

/** Truths as generated pieces have them, drawn in no time: no surface stands behind them. */

const ACROSS = { cap: 8, root: 3, fillet: 6 } as const;

function items(face: SurfaceFace, length: number, random: RandomStream): TruthItem[] {
  const types = typesOn(face).filter((type) => imperfection(type).family !== "misalignment");
  const undercuts = types.filter((type) => type.endsWith("undercut") && type !== "inter-run-undercut");
  const all: TruthItem[] = [];
  let x = random.uniform(4, 60);
  while (x < length - 60) {
    const isPores = random.chance(0.15);
    const type: ImperfectionType = isPores
      ? "surface-pore"
      : undercuts.length > 0 && random.chance(0.25)
        ? random.pick(undercuts)
        : random.pick(types);
    const isLine = imperfection(type).extent === "line";
    const long = isLine ? random.uniform(4, 56) : 0;
    const count = isPores ? 1 + random.integer(4) : 1;
    const neutral = random.chance(0.12);
    for (let n = 0; n < count; n++) {
      const across = (random.chance(0.5) ? 1 : -1) * random.uniform(ACROSS[face] - 2, ACROSS[face] + 2);
      all.push({
        id: `${face}-${all.length + 1}`,
        face,
        type,
        start: x,
        end: x + long,
        across: isPores ? 0 : across,
        size: imperfection(type).size === null ? null : random.uniform(0.3, 3),
        width: null,
        worst: [x, across],
        outline: [],
        neutral,
      });
      x += isPores ? random.uniform(2, 7) : 0;
    }
    x += long + random.uniform(2, 60);
  }
  return all;
}

function clutter(face: SurfaceFace, length: number, random: RandomStream): ClutterItem[] {
  return Array.from({ length: random.integer(4) }, (_, n) => {
    const start = random.uniform(5, length - 40);
    const end = start + random.uniform(0, 30);
    return {
      id: `clutter-${n}`,
      face,
      kind: random.pick(CLUTTER),
      start,
      end,
      across: random.uniform(-30, 30),
      outline: [],
    };
  });
}

/** A dimension that wanders between a least and a largest value, the one of which counts that is asked for. */
function wandering(
  dimension: Dimension,
  low: number,
  high: number,
  taken: "least" | "largest",
  random: RandomStream,
): DimensionTruth {
  const values = Array.from({ length: 30 }, () => Math.round(random.uniform(low, high) * 100) / 100);
  const value = taken === "largest" ? Math.max(...values) : Math.min(...values);
  return { dimension, station: null, value, at: 10 + values.indexOf(value), along: { from: 10, step: 1, values } };
}

export function syntheticPlate(random: RandomStream): ButtTruth {
  const thickness = random.pick([3, 6, 8, 10, 12, 15, 20]);
  const [low, high] = [random.uniform(0.5, 2), random.uniform(2.5, 6)];
  return {
    version: 1,
    generator: "synthetic",
    joint: {
      kind: "butt",
      process: random.pick(PROCESSES),
      position: random.pick(POSITIONS),
      length: 300,
      width: 150,
      thickness,
      grooveAngle: 60,
      rootGap: 3,
      rootFace: 1.5,
    },
    items: [...items("cap", 300, random), ...items("root", 300, random)],
    clutter: [...clutter("cap", 300, random), ...clutter("root", 300, random)],
    dimensions: [
      {
        dimension: "plate-thickness",
        station: null,
        value: thickness + random.uniform(-0.3, 0.3),
        at: null,
        along: null,
      },
      wandering("weld-width", 10, random.uniform(14, 24), "largest", random),
      wandering("cap-height", low, high, "largest", random),
      wandering("root-height", 0.3, random.uniform(1, 4), "largest", random),
      wandering("linear-misalignment", 0, random.uniform(0.2, 2), "largest", random),
    ],
    statements: [],
  };
}

export function syntheticFillet(random: RandomStream): FilletTruth {
  const stations = [50, 100, 150];
  const size = random.chance(0.5)
    ? ({ symbol: "a", value: random.pick([3, 4, 5, 6]) } as const)
    : ({ symbol: "z", value: random.pick([5, 6, 7, 8]) } as const);
  const at = stations.flatMap((x, n): DimensionTruth[] => {
    const [base, standing] = [random.uniform(4, 10), random.uniform(4, 10)];
    const throat = (base * standing) / Math.hypot(base, standing) + random.uniform(-0.6, 0.8);
    const one = (dimension: Dimension, value: number) => ({
      dimension,
      station: n + 1,
      value: Math.round(100 * value) / 100,
      at: x,
      along: null,
    });
    return [one("base-leg", base), one("standing-leg", standing), one("throat", throat)];
  });
  const [bulge, difference, least] = [
    random.uniform(-1.5, 1.5),
    random.uniform(0, 4),
    size.value + random.uniform(-1, 1),
  ];
  const profile = Math.abs(bulge) < 0.5 ? "mitre" : bulge > 0 ? "convex" : "concave";
  const statements: StatementTruth[] = [
    {
      statement: "profile",
      right: Math.abs(Math.abs(bulge) - 0.5) <= 0.2 ? ["mitre", bulge > 0 ? "convex" : "concave"] : [profile],
      value: bulge,
      limit: bulge < 0 ? -0.5 : 0.5,
    },
    {
      statement: "asymmetry",
      right: Math.abs(difference - 2) <= 0.2 ? ["equal", "unequal"] : [difference < 2 ? "equal" : "unequal"],
      value: difference,
      limit: 2,
    },
    {
      statement: "size",
      right: Math.abs(least - size.value) <= 0.2 ? ["not-met", "met"] : [least < size.value ? "not-met" : "met"],
      value: least,
      limit: size.value,
    },
  ];
  return {
    version: 1,
    generator: "synthetic",
    joint: {
      kind: "fillet",
      process: random.pick(FILLET_PROCESSES),
      position: random.pick(["PA", "PB", "PF"] as const satisfies readonly FilletPosition[]),
      length: 200,
      baseThickness: random.pick([6, 8, 10, 12]),
      standingThickness: random.pick([6, 8, 10]),
      size,
      angle: 90,
    },
    items: items("fillet", 200, random),
    clutter: clutter("fillet", 200, random),
    dimensions: [
      ...at,
      wandering("smallest-leg", 4, 9, "least", random),
      wandering("smallest-throat", 2.5, 6, "least", random),
    ],
    statements,
    stations,
    gap: { datum: random.uniform(0, 3), farEnd: random.uniform(0, 3) },
  };
}
