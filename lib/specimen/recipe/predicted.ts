import { CLUTTER, type Clutter, type ImperfectionType, imperfection } from "../../imperfections";
import type { Face } from "../../weld";
import type { SectionTruth } from "../difficulty";
import { VISIBILITY } from "../difficulty";
import { boxOutline } from "../imperfections/found";
import type { ClutterItem, TruthItem } from "../truth";
import type { WorkedJoint } from "../work";
import { yieldOf } from "./expected-sizes";
import { kindOf } from "./feature-rows";
import type { Planted } from "./place-row";
import type { PlateItem } from "./plate-items";
import { goesByLength } from "./sizing";

/** What will most likely be measured on a face of what is planted on it and of how its plates stand. */
export function predictedTruth(
  face: Face,
  joint: WorkedJoint,
  planted: readonly Planted[],
  plates: readonly PlateItem[],
): SectionTruth {
  const real = planted.filter(({ row }) => kindOf(row) === "imperfection");
  return {
    face,
    joint,
    items: [...real.map((one) => predictedItem(face, joint, one)), ...plates.map((one) => predictedPlates(joint, one))],
    clutter: planted.filter(({ row }) => kindOf(row) === "clutter").map((one) => predictedClutter(face, one)),
  };
}

/** Half the width that is guessed where nothing depends on it, mm. */
const SLENDER = 0.5;

function predictedItem(face: Face, joint: WorkedJoint, { row, request, zone }: Planted): TruthItem {
  const type = request.type as ImperfectionType;
  const entry = imperfection(type);
  const { perSeverity, perLength, lengthGain } = yieldOf(row, request.variant, joint.process);
  const seen = request.severity * perSeverity;
  const gain = entry.extent === "point" ? 0 : Math.max(0, request.length * perLength + lengthGain) - request.length;
  const start = request.x - gain / 2;
  const end = request.x + request.length + gain / 2;
  const across = request.y ?? (zone.y0 + zone.y1) / 2;
  const byWidth = !goesByLength(row) && VISIBILITY[type].measure === "width";
  const half = entry.extent === "point" ? seen / 2 : 0;
  return {
    id: request.id,
    face,
    type,
    start,
    end,
    across,
    size: entry.size === null ? null : seen,
    width: byWidth ? seen : null,
    worst: [(start + end) / 2, across],
    outline: boxOutline({ x0: start - half, x1: end + half, y0: across - SLENDER, y1: across + SLENDER }),
    neutral: false,
  };
}

function predictedPlates({ length }: WorkedJoint, { type, size }: PlateItem): TruthItem {
  const outline = boxOutline({ x0: 0, x1: length, y0: -SLENDER, y1: SLENDER });
  return {
    id: type,
    face: "cap",
    type,
    start: 0,
    end: length,
    across: 0,
    size,
    width: null,
    worst: [0, 0],
    outline,
    neutral: false,
  };
}

function predictedClutter(face: Face, { request, zone }: Planted): ClutterItem {
  const kind = request.type as Clutter;
  if (!CLUTTER.includes(kind)) throw new Error(`no clutter: ${request.type}`);
  const { x0, x1, y0, y1 } = zone;
  return {
    id: request.id,
    face,
    kind,
    start: x0,
    end: x1,
    across: (y0 + y1) / 2,
    outline: boxOutline({ x0, x1, y0, y1 }),
  };
}
