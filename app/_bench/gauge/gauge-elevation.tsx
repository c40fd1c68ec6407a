"use client";
import { BRIDGE_GAUGE, type BridgePlacement, type BridgeReading, cutSection } from "@/lib/gauges";
import type { FaceHeights } from "../viewer/protocol";
import { withGrids } from "../viewer/with-grids";
import { type Frame, leftIn, metalPath, topIn } from "./section-drawing";

const WIDTH = 300;
const HEIGHT = 124;

export interface GaugeElevationProps {
  readonly heights: FaceHeights;
  readonly placement: BridgePlacement;
  readonly reading: BridgeReading;
}

/** The gauge seen from the side, as it stands on the metal that its blade crosses. */
export function GaugeElevation({ heights, placement, reading }: GaugeElevationProps) {
  const from = -7;
  const to = placement.offset + placement.spacing + 4;
  const seat = reading.seat;
  const frame: Frame = {
    width: WIDTH,
    height: HEIGHT,
    from,
    perMm: WIDTH / (to - from),
    middle: (seat ? (seat.near + seat.far) / 2 : 0) + 22 / (WIDTH / (to - from)),
  };
  const points = cutSection(withGrids(heights), { x: placement.x, y: placement.y, turn: placement.turn, from, to });
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      className="block w-full rounded bg-[#e9e5da]"
      role="img"
      aria-label={seat ? `The gauge leans ${seat.tilt.toFixed(1)} degrees.` : "The gauge does not stand."}
    >
      <path d={metalPath(frame, points)} fill="#6d7376" stroke="#20241f" strokeWidth="1.2" />
      {seat && <StandingGauge frame={frame} placement={placement} seat={seat} reading={reading} />}
    </svg>
  );
}

interface StandingGaugeProps {
  readonly frame: Frame;
  readonly placement: BridgePlacement;
  readonly seat: NonNullable<BridgeReading["seat"]>;
  readonly reading: BridgeReading;
}

/** Drawn level and then leaned about its near foot, as the real one leans. */
function StandingGauge({ frame, placement, seat, reading }: StandingGaugeProps) {
  const { perMm } = frame;
  const footX = leftIn(frame, placement.offset);
  const footY = topIn(frame, seat.near);
  const tipX = leftIn(frame, 0);
  const farX = leftIn(frame, placement.offset + placement.spacing);
  const slope = (seat.far - seat.near) / placement.spacing;
  const height = (seat.tip - (seat.near - slope * placement.offset)) * Math.cos(Math.atan(slope));
  const barY = footY - 34;
  const footHalf = Math.max(2, (BRIDGE_GAUGE.footWidth * perMm) / 2);
  const tipY = footY - height * perMm;
  return (
    <g transform={`rotate(${-seat.tilt} ${footX} ${footY})`} stroke="#0b0e10" strokeWidth="1.2">
      <path
        d={`M${tipX - 13} ${barY - 16}H${farX + 9}V${barY}H${farX + footHalf}V${footY}H${farX - footHalf}V${barY}H${footX + footHalf}V${footY}H${footX - footHalf}V${barY}H${tipX - 13}Z`}
        fill="#c9ced0"
      />
      <path
        d={`M${tipX - 1.8} ${barY - 27 - height * perMm}V${tipY - 6}L${tipX} ${tipY}L${tipX + 1.8} ${tipY - 6}V${barY - 27 - height * perMm}Z`}
        fill="#f2c14e"
      />
      {reading.ok && (
        <path d={`M${tipX - 12} ${footY}H${tipX + 12}`} strokeDasharray="2 2" stroke="#8f2d2a" strokeWidth="1" />
      )}
    </g>
  );
}
